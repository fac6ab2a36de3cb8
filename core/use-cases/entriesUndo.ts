import type { entriesUndoLast } from '../contract/entries.ts';
import type { Handler } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { undoEntry, writeEntry } from '../record/entry.ts';
import { lastUndoable, REDO, readEntry, UNDO } from '../record/entryStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { type Context, entryNow, recordOf } from './context.ts';

export const entriesUndoLastHandler: Handler<typeof entriesUndoLast, Context> = (context, { entryId, by }) => {
  undoLast(context, entryId, by);
  return { entryId, undoableEntryId: lastUndoable(recordOf(context))?.id ?? null };
};

/**
 * Takes the last entry back. Only the last: nothing that stands then rests on it. Who took it back is written beside it.
 *
 * @throws RefusedError unknown-entry, already-undone, not-the-last-entry, ground-of-the-record
 */
export function undoLast(context: Context, entryId: number, by: string): void {
  const record = recordOf(context);
  refuseAllButLast(record, entryId);
  const made = entryNow(context, UNDO, by);
  writeEntry(record, made, (w) => undoEntry(w, entryId, made.madeAt));
}

function refuseAllButLast(record: ReadableRecord, entryId: number): void {
  const entry = readEntry(record, entryId);
  const facts = { path: 'entryId', entryId };
  if (!entry || entry.what === UNDO || entry.what === REDO) throw new RefusedError({ code: 'unknown-entry', facts });
  if (entry.undoneAt !== null) throw new RefusedError({ code: 'already-undone', facts });
  const last = lastUndoable(record);
  if (!last) throw new RefusedError({ code: 'ground-of-the-record', facts });
  if (last.id !== entryId)
    throw new RefusedError({
      code: 'not-the-last-entry',
      facts: { ...facts, lastEntryId: last.id, lastWhat: last.what },
    });
}
