import { useState } from 'react';
import { Link } from 'wouter';
import { type Entry, entriesList, entriesRedoLast, entriesUndoLast } from '#core/contract/entries.ts';
import { answerTo } from '#renderer/ask.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox, Question } from '#renderer/controls/Notice.tsx';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { StopMark } from '#renderer/screens/machine/StopBanner.tsx';
import { useAsk, useDo } from '#renderer/useAsk.ts';
import { Figures } from '#renderer/words/Figures.tsx';
import { broughtText, daysText, machinesText, whatText, historyWords as words } from '#renderer/words/historyWords.ts';
import { ByField, useBy } from '../machine/panels/ByField.tsx';
import { momentText } from './momentText.ts';
import './history.css';

const A_PAGE = 60;

/** History: who changed what and when. The last entry can be taken back, and the one before it after that. */
export default function History() {
  const newest = useAsk(entriesList, { beforeEntryId: null, limit: A_PAGE });
  const [older, setOlder] = useState<{ after: number; entries: Entry[]; more: boolean } | null>(null);
  const [asking, setAsking] = useState<'undo' | 'redo' | null>(null);
  if (!newest.value) return <NotYetSheet title={words.title} sub={words.sub} of={newest} words={words.loading} />;
  const first = newest.value.entries;
  // what was fetched further down hangs on what stands on top: a new entry, and it is fetched again
  const down = older !== null && older.after === first.at(-1)?.entryId ? older : null;
  const entries = [...first, ...(down?.entries ?? [])];
  const more = down ? down.more : newest.value.more;
  const last = entries.find(({ entryId }) => entryId === newest.value?.undoableEntryId) ?? null;
  const { redoable } = newest.value;
  const fetchOlder = async () => {
    const beforeEntryId = entries.at(-1)?.entryId ?? null;
    const answer = await answerTo(entriesList, { beforeEntryId, limit: A_PAGE });
    const after = first.at(-1)?.entryId;
    if (answer.ok && after !== undefined)
      setOlder({ after, entries: [...(down?.entries ?? []), ...answer.value.entries], more: answer.value.more });
  };
  return (
    <Sheet
      title={words.title}
      sub={words.sub}
      actions={
        <>
          {redoable && (
            <Key letter="I" disabled={asking !== null} onPress={() => setAsking('redo')}>
              {words.putIn}
            </Key>
          )}
          <Key letter="U" disabled={last === null || asking !== null} onPress={() => setAsking('undo')}>
            {words.takeBack}
          </Key>
        </>
      }
      banner={
        asking === 'undo' && last ? (
          <AskUndo key={last.entryId} entry={last} onDone={() => setAsking(null)} />
        ) : asking === 'redo' && redoable ? (
          <AskRedo key={redoable.entryId} entry={redoable} onDone={() => setAsking(null)} />
        ) : null
      }
      block={[
        { label: words.blockLast, value: last ? whatText(last.what) : words.blockNothing },
        { label: words.blockRule, value: words.blockRuleIs },
        { label: words.blockShown, value: words.shown(entries.length), grow: true },
      ]}
    >
      <table className="table history">
        <thead>
          <tr>
            {[words.when, words.who, words.what, words.machine, words.ofDay, words.brought].map((head) => (
              <th key={head} scope="col">
                {head}
              </th>
            ))}
          </tr>
        </thead>
        <tbody>
          {entries.map((entry) => (
            <EntryRow key={entry.entryId} entry={entry} isLast={entry === last} />
          ))}
        </tbody>
      </table>
      {last === null && <p className="second">{words.nothing}</p>}
      {more && (
        <div className="keys history-more">
          <Key letter="O" onPress={() => void fetchOlder()}>
            {words.older}
          </Key>
        </div>
      )}
    </Sheet>
  );
}

function EntryRow({ entry, isLast }: { entry: Entry; isLast: boolean }) {
  const undone = entry.undoneAt !== null;
  const [machine] = entry.machines;
  const className = [undone && 'undone', isLast && 'last'].filter(Boolean).join(' ');
  return (
    <tr className={className || undefined}>
      <td className="moment">{momentText(entry.madeAt)}</td>
      <td>{entry.madeBy || <span className="second">{words.nobody}</span>}</td>
      <td>
        <span className="what">{whatText(entry.what)}</span>
        {entry.stripDownId !== null && !undone && (
          <>
            {' '}
            <Link href={`/old-sheets/sheet/${entry.stripDownId}`}>{words.openSheet}</Link>
          </>
        )}
      </td>
      <td>
        {machine && entry.machineCount === 1 && !undone ? (
          <>
            <Link href={`/machine/${machine.machineId}`}>{machine.name}</Link>
            <StopMark machineId={machine.machineId} />
          </>
        ) : (
          machinesText(entry) || <Customers entry={entry} />
        )}
      </td>
      <td>{daysText(entry)}</td>
      <td>
        {entry.undoneAt !== null ? (
          <>
            <s>
              <Figures>{broughtText(entry)}</Figures>
            </s>{' '}
            {words.undone(momentText(entry.undoneAt), entry.undoneBy ?? '')}
          </>
        ) : (
          <Figures>{broughtText(entry)}</Figures>
        )}
      </td>
    </tr>
  );
}

/** Whom an entry is about that is about no machine. */
const Customers = ({ entry: { customers } }: { entry: Entry }) =>
  customers.length > 0 && (
    <Link href="/customers">{customers.map(({ name }) => name || words.erasedCustomer).join(', ')}</Link>
  );

/** Says what would go, before it goes. */
function AskUndo({ entry, onDone }: { entry: Entry; onDone: () => void }) {
  const undo = useDo(entriesUndoLast);
  const [by, setBy] = useBy();
  const send = async () => {
    if (await undo.run({ entryId: entry.entryId, by })) onDone();
  };
  return (
    <>
      <Question
        fact={words.ask(whatText(entry.what), machinesText(entry), daysText(entry))}
        then={[
          words.askBrought(broughtText(entry)),
          entry.what === 'machine/takeIn' ? words.askCustomer : '',
          words.askTyped,
        ]
          .filter(Boolean)
          .join(' ')}
        keys={
          <>
            <ByField label={words.by} value={by} onChange={setBy} />
            <Key red disabled={undo.busy} onPress={() => void send()}>
              {words.yes}
            </Key>
            <Key first autoFocus letter="Escape" onPress={onDone}>
              {words.no}
            </Key>
          </>
        }
      />
      {undo.fault && <FaultBox fault={undo.fault} />}
    </>
  );
}

/** Says what would come in again, before it does. */
function AskRedo({ entry, onDone }: { entry: Entry; onDone: () => void }) {
  const redo = useDo(entriesRedoLast);
  const [by, setBy] = useBy();
  const send = async () => {
    if (await redo.run({ entryId: entry.entryId, by })) onDone();
  };
  return (
    <>
      <Question
        fact={words.askRedo(whatText(entry.what), machinesText(entry), daysText(entry))}
        then={words.askRedoBrought(broughtText(entry))}
        keys={
          <>
            <ByField label={words.redoBy} value={by} onChange={setBy} />
            <Key first autoFocus disabled={redo.busy} onPress={() => void send()}>
              {words.putIn}
            </Key>
            <Key letter="Escape" onPress={onDone}>
              {words.leaveOut}
            </Key>
          </>
        }
      />
      {redo.fault && <FaultBox fault={redo.fault} />}
    </>
  );
}
