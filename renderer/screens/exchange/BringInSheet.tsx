import { useRef, useState } from 'react';
import { exchangeLookAtSheet, type GivenFile, type SheetNoun } from '#core/contract/exchange.ts';
import type { Fault } from '#core/contract/operation.ts';
import { answerTo, FaultError } from '#renderer/ask.ts';
import { Choice } from '#renderer/controls/Choice.tsx';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox, Notice } from '#renderer/controls/Notice.tsx';
import { StaysInMm } from '#renderer/controls/StaysInMm.tsx';
import { exchangeWords as words } from '#renderer/words/exchangeWords.ts';
import { ColumnTable } from './ColumnTable.tsx';
import { FilePick } from './FilePick.tsx';
import { handOver, letGo } from './handOver.ts';
import { SheetAccount } from './SheetAccount.tsx';
import { mappingOf, missingColumns, type SeenSheet, type SheetForm, sheetForm } from './sheetForm.ts';
import { useJob } from './useJob.ts';

type Waiting = { words: string; share: number | null } | null;

/** A file, what its columns are, a trial with its account, then all of it or nothing. */
export function BringInSheet() {
  const [given, setGiven] = useState<GivenFile | null>(null);
  const [seen, setSeen] = useState<SeenSheet | null>(null);
  const [form, setForm] = useState<SheetForm | null>(null);
  const [waiting, setWaiting] = useState<Waiting>(null);
  const [fault, setFault] = useState<Fault | null>(null);
  const job = useJob();
  const inHand = useRef<GivenFile | null>(null);

  const look = async (file: GivenFile, asked: { sheet?: string; noun?: SheetNoun } = {}) => {
    setWaiting({ words: words.looking, share: null });
    job.clear();
    const answer = await answerTo(exchangeLookAtSheet, {
      file,
      sheet: asked.sheet ?? null,
      noun: asked.noun ?? null,
      headRow: null,
    });
    setWaiting(null);
    if (!answer.ok) return setFault(answer.fault);
    setFault(null);
    setSeen(answer.value);
    setForm(sheetForm(answer.value));
  };
  const take = async (file: File) => {
    await leave();
    setWaiting({ words: words.handingOver, share: 0 });
    try {
      const handed = await handOver(file, (share) => setWaiting({ words: words.handingOver, share }));
      inHand.current = handed;
      setGiven(handed);
      await look(handed);
    } catch (thrown) {
      setWaiting(null);
      if (!(thrown instanceof FaultError)) throw thrown;
      setFault(thrown.fault);
    }
  };
  const leave = async () => {
    const before = inHand.current;
    inHand.current = null;
    setGiven(null);
    setSeen(null);
    setForm(null);
    setFault(null);
    job.clear();
    if (before) await letGo(before);
  };
  const run = async (dryRun: boolean) => {
    const mapping = seen && form && mappingOf(seen, form);
    if (!given || !seen || !mapping) return;
    const sheet = seen.kind === 'xlsx' ? seen.sheet : null;
    await job.start({ kind: 'bring-in-sheet', ask: { file: given, sheet, noun: seen.noun, mapping, dryRun } });
  };
  const running = job.state?.state === 'running';
  return (
    <section className="exchange-part" aria-label={words.in}>
      <h2>{words.in}</h2>
      <p className="second">{words.inWhat}</p>
      <StaysInMm why={words.inInMm} />
      <FilePick
        letter="F"
        first={seen === null}
        accept=".csv,.tsv,.txt,.xlsx"
        text={seen ? words.other : words.choose}
        disabled={running || waiting !== null}
        onPick={(file) => void take(file)}
      >
        {seen && !running && (
          <Key letter="Escape" onPress={() => void leave()}>
            {words.leave}
          </Key>
        )}
      </FilePick>
      {waiting && <FillingRule words={waiting.words} share={waiting.share} />}
      {fault && <FaultBox fault={fault} />}
      {given && seen && form && (
        <Confirm
          seen={seen}
          form={form}
          onForm={(next) => {
            setForm(next);
            job.clear();
          }}
          onSheet={(sheet) => void look(given, { sheet })}
          onNoun={(noun) => void look(given, { noun, ...(seen.kind === 'xlsx' && { sheet: seen.sheet }) })}
          busy={running}
          onTry={() => void run(true)}
        />
      )}
      {running && job.state && (
        <div className="job">
          <FillingRule words={words.steps[job.state.step] ?? job.state.step} share={job.state.share} width={320} />
          <Key red letter="X" onPress={() => void job.breakOff()}>
            {words.breakOff}
          </Key>
        </div>
      )}
      {job.state?.state === 'cancelled' && <Notice head={words.brokenOff} />}
      {job.fault && <FaultBox fault={job.fault} />}
      {job.state?.state === 'done' && job.state.account && (
        <SheetAccount account={job.state.account} onBringIn={() => void run(false)} />
      )}
    </section>
  );
}

type ConfirmProps = {
  seen: SeenSheet;
  form: SheetForm;
  onForm: (form: SheetForm) => void;
  onSheet: (sheet: string) => void;
  onNoun: (noun: SheetNoun) => void;
  busy: boolean;
  onTry: () => void;
};

/** What each row is, how days and decimals are written, which column is which: asked once for the whole file. */
function Confirm({ seen, form, onForm, onSheet, onNoun, busy, onTry }: ConfirmProps) {
  const missing = missingColumns(seen, form).map((column) => words.columns[column] ?? column);
  const asked = form.dateOrder === null || form.decimalMark === null;
  return (
    <div className="confirm">
      <p className="file-line">
        <b>{words.fileLine(seen.name, seen.rows, seen.wholeFile)}</b>{' '}
        {seen.remembered && <span className="second">{words.remembered}</span>}
      </p>
      <div className="questions">
        {seen.sheets.length > 1 && (
          <div className="field">
            <label>
              {words.sheetOf}
              <select value={seen.sheet} onChange={({ target }) => onSheet(target.value)}>
                {seen.sheets.map((sheet) => (
                  <option key={sheet}>{sheet}</option>
                ))}
              </select>
            </label>
          </div>
        )}
        <Choice
          label={words.noun}
          options={NOUNS.map((noun) => ({ value: noun, text: words.nouns[noun] }))}
          value={seen.noun}
          onChange={onNoun}
          disabled={busy}
        />
        <Choice
          label={words.dateOrder}
          options={(['ymd', 'dmy', 'mdy'] as const).map((value) => ({ value, text: words.dateOrders[value] }))}
          value={form.dateOrder ?? ('' as 'ymd')}
          onChange={(dateOrder) => onForm({ ...form, dateOrder })}
          disabled={busy}
        />
        <Choice
          label={words.decimalMark}
          options={(['.', ','] as const).map((value) => ({ value, text: words.decimalMarks[value] }))}
          value={form.decimalMark ?? ('' as '.')}
          onChange={(decimalMark) => onForm({ ...form, decimalMark })}
          disabled={busy}
        />
      </div>
      <ColumnTable seen={seen} form={form} onChange={onForm} />
      <div className="keys">
        <Key first letter="T" disabled={busy || asked || missing.length > 0} onPress={onTry}>
          {words.tryIt}
        </Key>
        <span className={missing.length > 0 || asked ? 'waits-for' : 'second'}>
          {missing.length > 0 ? words.missing(missing) : asked ? words.stillAsked : words.tryWhat}
        </span>
      </div>
    </div>
  );
}

const NOUNS: readonly SheetNoun[] = ['machines', 'hours', 'points', 'sizes', 'findings'];
