import { useQueryClient } from '@tanstack/react-query';
import { useState } from 'react';
import { exchangeRestoreFolder } from '#core/contract/exchange.ts';
import type { Fault, ReplyOf } from '#core/contract/operation.ts';
import { answerTo, FaultError } from '#renderer/ask.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { FaultBox, Notice } from '#renderer/controls/Notice.tsx';
import { askAllAnew } from '#renderer/useAsk.ts';
import { exchangeWords as words } from '#renderer/words/exchangeWords.ts';
import { RemarkTable } from '../start/RemarkTable.tsx';
import { FilePick } from './FilePick.tsx';
import { handOver, letGo } from './handOver.ts';
import './exchange.css';

/**
 * An export back as a record of its own.
 * @param onDone it is laid down and open, with nothing to be told; absent: it is said here
 */
export function BringBack({ letter = 'E', onDone }: { letter?: string; onDone?: () => void }) {
  const queries = useQueryClient();
  const [share, setShare] = useState<number | null | false>(false);
  const [reply, setReply] = useState<ReplyOf<typeof exchangeRestoreFolder> | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const take = async (file: File) => {
    setReply(null);
    setFault(null);
    setShare(0);
    try {
      const from = await handOver(file, setShare);
      setShare(null);
      const answer = await answerTo(exchangeRestoreFolder, { from });
      await letGo(from);
      if (!answer.ok) setFault(answer.fault);
      else {
        setReply(answer.value);
        if (answer.value.done) await askAllAnew(queries);
        if (answer.value.done && answer.value.notes.length === 0) onDone?.();
      }
    } catch (thrown) {
      if (!(thrown instanceof FaultError)) throw thrown;
      setFault(thrown.fault);
    } finally {
      setShare(false);
    }
  };
  return (
    <section className="exchange-part" aria-label={words.back}>
      {!onDone && (
        <>
          <h2>{words.back}</h2>
          <p className="second">{words.backWhat}</p>
        </>
      )}
      <FilePick
        letter={letter}
        accept=".zip"
        text={words.chooseZip}
        disabled={share !== false}
        onPick={(file) => void take(file)}
      />
      {share !== false && <FillingRule words={share === null ? words.bringingBack : words.handingOver} share={share} />}
      {fault && <FaultBox fault={fault} />}
      {reply?.done && <Notice head={words.backDone(reply.path ?? '', reply.rows)} />}
      {reply && !reply.done && (
        <>
          <FaultBox said={{ what: words.backFaults, safe: '', next: words.backFaultsNext }} />
          <RemarkTable remarks={reply.faults} caption={words.backFaults} />
        </>
      )}
      {reply && reply.notes.length > 0 && (
        <RemarkTable remarks={reply.notes} caption={words.notesHead(reply.notes.length)} />
      )}
    </section>
  );
}
