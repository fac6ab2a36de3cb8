import type { entriesRedoLast } from '../contract/entries.ts';
import type { Handler } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { redoEntry, writeEntry } from '../record/entry.ts';
import { nextRedoable, REDO, readEntry, UNDO } from '../record/entryStore.ts';
import { type Context, entryNow, recordOf } from './context.ts';

/**
 * Puts the entry that was taken back last in again. Only while nothing was entered since: what was entered then was judged
 * without it. Who put it in again is written beside it.
 *
 * @throws RefusedError unknown-entry, not-taken-back, entered-since
 */
export const entriesRedoLastHandler: Handler<typeof entriesRedoLast, Context> = (context, { entryId, by }) => {
  const record = recordOf(context);
  const entry = readEntry(record, entryId);
  const facts = { path: 'entryId', entryId };
  if (!entry || entry.what === UNDO || entry.what === REDO) throw new RefusedError({ code: 'unknown-entry', facts });
  if (entry.undoneAt === null) throw new RefusedError({ code: 'not-taken-back', facts });
  if (nextRedoable(record)?.id !== entryId) throw new RefusedError({ code: 'entered-since', facts });
  writeEntry(record, entryNow(context, REDO, by), (w) => redoEntry(w, entryId));
  return { entryId };
};
