import { useLocation } from 'wouter';
import type { SheetAccount as Account } from '#core/contract/exchange.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox, Notice } from '#renderer/controls/Notice.tsx';
import { exchangeWords as words } from '#renderer/words/exchangeWords.ts';
import { broughtText } from '#renderer/words/startWords.ts';
import { RemarkTable } from '../start/RemarkTable.tsx';

/** What a trial found, or what was brought in: row by row where something is to be said. */
export function SheetAccount({ account, onBringIn }: { account: Account; onBringIn: () => void }) {
  const { faults, faultCount, cautions, cautionCount, notes, noteCount } = account;
  return (
    <div className="sheet-account">
      {faultCount > 0 ? (
        <FaultBox said={{ what: words.faultsHead(faultCount), safe: words.faultsNext, next: '' }} />
      ) : (
        <Outcome account={account} onBringIn={onBringIn} />
      )}
      {faultCount > 0 && <Rows remarks={faults} all={faultCount} caption={words.faultsTable} />}
      {cautionCount > 0 && (
        <>
          <h2>{words.cautionsHead(cautionCount)}</h2>
          <Rows remarks={cautions} all={cautionCount} caption={words.cautionsHead(cautionCount)} />
        </>
      )}
      {noteCount > 0 && (
        <>
          <h2>{words.notesHead(noteCount)}</h2>
          <Rows remarks={notes} all={noteCount} caption={words.notesHead(noteCount)} />
        </>
      )}
    </div>
  );
}

function Outcome({ account, onBringIn }: { account: Account; onBringIn: () => void }) {
  const [, goTo] = useLocation();
  const brought = broughtText(account.brought);
  if (account.done && brought !== '')
    return (
      <Notice
        head={words.doneHead}
        keys={
          <Key first letter="M" autoFocus onPress={() => goTo('/machines')}>
            {words.toMachines}
          </Key>
        }
      >
        {words.would(brought)}
      </Notice>
    );
  if (brought === '') return <Notice head={words.nothingNew} />;
  return (
    <Notice
      head={words.readyHead(account.rows)}
      keys={
        <Key first letter="B" autoFocus onPress={onBringIn}>
          {words.bringIn}
        </Key>
      }
    >
      {words.would(brought)}
    </Notice>
  );
}

function Rows({ remarks, all, caption }: { remarks: Account['faults']; all: number; caption: string }) {
  const first = words.firstOf(remarks.length, all);
  return (
    <>
      {first && <p className="second">{first}</p>}
      <RemarkTable remarks={remarks} caption={caption} />
    </>
  );
}
