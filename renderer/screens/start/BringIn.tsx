import { useQueryClient } from '@tanstack/react-query';
import { useRef, useState } from 'react';
import { useLocation } from 'wouter';
import type { Fault } from '#core/contract/operation.ts';
import { type ImportAccount, recordBringIn } from '#core/contract/record.ts';
import { answerTo } from '#renderer/ask.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox, Notice } from '#renderer/controls/Notice.tsx';
import { askAllAnew } from '#renderer/useAsk.ts';
import { broughtText, startWords as words } from '#renderer/words/startWords.ts';
import { type CsvFile, csvFilesOf } from './csvFiles.ts';
import { RemarkTable } from './RemarkTable.tsx';

/** Files, then the account of a dry run row by row, then all of it or nothing. */
export function BringIn({ onLeave }: { onLeave: () => void }) {
  const queries = useQueryClient();
  const [, goTo] = useLocation();
  const [files, setFiles] = useState<CsvFile[]>([]);
  const [account, setAccount] = useState<ImportAccount | null>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const [busy, setBusy] = useState<string | null>(null);
  const picker = useRef<HTMLInputElement>(null);

  const run = async (csv: readonly CsvFile[], dryRun: boolean) => {
    setBusy(dryRun ? words.reading : words.bringingIn);
    setFault(null);
    const files = csv.map(({ name, base64 }) => ({ name, base64 }));
    const answer = await answerTo(recordBringIn, { files, dryRun });
    setBusy(null);
    if (!answer.ok) return setFault(answer.fault);
    setAccount(answer.value);
    if (answer.value.done) {
      await askAllAnew(queries);
      if (answer.value.cautions.length === 0) goTo('/');
    }
  };
  const take = async (picked: Iterable<File>) => {
    const csv = await csvFilesOf(picked);
    setFiles(csv);
    setAccount(null);
    if (csv.length > 0) await run(csv, true);
  };
  return (
    <section
      className="bring-in"
      aria-label={words.bringIn}
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        void take(event.dataTransfer.files);
      }}
    >
      <input
        ref={picker}
        type="file"
        accept=".csv,text/csv"
        multiple
        className="said"
        tabIndex={-1}
        aria-label={words.pickFiles}
        onChange={(event) => {
          void take(event.target.files ?? []);
          // the same file chosen again, put right meanwhile, is a new choice
          event.target.value = '';
        }}
      />
      <div className="keys">
        <Key first={account === null} autoFocus letter="F" onPress={() => picker.current?.click()}>
          {files.length === 0 ? words.pickFiles : words.otherFiles}
        </Key>
        <span className="second">{words.orDrop}</span>
        <Key letter="Escape" onPress={onLeave}>
          {words.closeChoice}
        </Key>
      </div>
      {files.length === 0 ? (
        <p className="second">{words.filesHint}</p>
      ) : (
        <p className="file-list">
          <b>{words.chosen(files.length)}</b>{' '}
          {files.map(({ name, bytes }) => `${name} (${words.bytes(Math.max(1, Math.round(bytes / 1024)))})`).join(', ')}
        </p>
      )}
      {busy && <FillingRule words={busy} />}
      {fault && <FaultBox fault={fault} />}
      {account && !busy && <Account account={account} onBringIn={() => void run(files, false)} />}
    </section>
  );
}

function Account({ account, onBringIn }: { account: ImportAccount; onBringIn: () => void }) {
  const [, goTo] = useLocation();
  const brought = broughtText(account.brought);
  const { faults, cautions, notes } = account;
  return (
    <div className="account">
      {faults.length > 0 ? (
        <FaultBox said={{ what: words.faultsHead(faults.length), safe: words.faultsNext, next: '' }} />
      ) : (
        <Notice
          head={account.done ? words.doneHead : brought === '' ? words.nothingNew : words.readyHead}
          keys={
            account.done ? (
              <Key first letter="M" autoFocus onPress={() => goTo('/')}>
                {words.toMachines}
              </Key>
            ) : (
              brought !== '' && (
                <Key first letter="B" autoFocus onPress={onBringIn}>
                  {words.bringItIn}
                </Key>
              )
            )
          }
        >
          {brought}
        </Notice>
      )}
      {faults.length > 0 && <RemarkTable remarks={faults} caption={words.faultsTable} />}
      {cautions.length > 0 && (
        <>
          <h2>{words.cautionsHead(cautions.length)}</h2>
          <RemarkTable remarks={cautions} caption={words.cautionsHead(cautions.length)} />
        </>
      )}
      {notes.length > 0 && (
        <>
          <h2>{words.notesHead(notes.length)}</h2>
          <RemarkTable remarks={notes} caption={words.notesHead(notes.length)} />
        </>
      )}
    </div>
  );
}
