import { Link } from 'wouter';
import type { oldSheetsRead } from '#core/contract/oldSheets.ts';
import { oldSheetsTakeBack, type QuestionedSize } from '#core/contract/oldSheets.ts';
import type { ReplyOf } from '#core/contract/operation.ts';
import type { Writing } from '#core/words/quantityText.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';
import { useDeskDo } from './useDesk.ts';
import { Waiting } from './Waiting.tsx';

/** Beside the sheet in hand: what is in already, what waits, and what was left half typed. */
export function BatchSide({
  batch,
  waiting,
  machineId,
  writing,
  by,
  onOpen,
}: {
  batch: ReplyOf<typeof oldSheetsRead>;
  waiting: readonly QuestionedSize[];
  /** the machine in hand: its own draft is in the boxes */
  machineId: number | null;
  writing: Writing;
  by: string;
  onOpen: (machineId: number) => void;
}) {
  const takeBack = useDeskDo(oldSheetsTakeBack);
  const drafts = batch.drafts.filter((draft) => draft.machineId !== machineId);
  const last = batch.sheets[0];
  const back = async (entryId: number) => {
    const reply = await takeBack.run({ entryId, by });
    if (reply) onOpen(reply.machineId);
  };
  return (
    <aside className="desk-side">
      <section>
        <h2>{words.batch}</h2>
        {batch.sheets.length === 0 && <p className="second">{words.noSheets}</p>}
        {takeBack.fault && <FaultBox fault={takeBack.fault} />}
        {last && batch.takeBackEntryId === last.entryId && (
          <Key letter="U" disabled={takeBack.busy} onPress={() => void back(last.entryId)}>
            {words.takeBack}
          </Key>
        )}
        <ol className="batch-sheets">
          {batch.sheets.map((sheet) => (
            <li key={sheet.entryId}>
              <Link href={`/old-sheets/sheet/${sheet.stripDownId}`}>{words.sheetLine(sheet.takenOn)}</Link>{' '}
              {sheet.machine}
              <span className={sheet.parked > 0 ? 'second waits' : 'second'}>
                {words.sheetSizes(sheet.sizes, sheet.parked)}
              </span>
            </li>
          ))}
        </ol>
      </section>
      {drafts.length > 0 && (
        <section>
          <h2>{words.drafts}</h2>
          <ul className="batch-sheets">
            {drafts.map((draft) => (
              <li key={draft.machineId}>
                <button type="button" className="as-link" onClick={() => onOpen(draft.machineId)}>
                  {draft.machine}
                </button>
                <span className="second">{words.draftLine(draft.takenOn, draft.sizes)}</span>
              </li>
            ))}
          </ul>
        </section>
      )}
      {waiting.length > 0 && (
        <section>
          <h2>{words.waiting}</h2>
          <p className="second">{words.waitingNote}</p>
          <Waiting sizes={waiting} writing={writing} by={by} machineNamed />
        </section>
      )}
    </aside>
  );
}
