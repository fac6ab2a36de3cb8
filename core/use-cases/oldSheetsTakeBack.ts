import type { oldSheetsTakeBack } from '../contract/oldSheets.ts';
import type { Handler } from '../contract/operation.ts';
import type { StripDownDraft } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import { keepDraft, readDraft } from '../record/draftStore.ts';
import { writePlain } from '../record/entry.ts';
import { readEntry, stripDownOfEntries } from '../record/entryStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { draftOfStripDown } from '../record/stripDownRows.ts';
import { type Context, recordOf } from './context.ts';
import { undoLast } from './entriesUndo.ts';
import { SAVE_SHEET } from './oldSheetsBatch.ts';

/**
 * Takes the last sheet back into its boxes: undone, and kept as typed, to be put right and saved again.
 *
 * @throws RefusedError unknown-entry, not-a-sheet, draft-in-the-way (another one is typed on that machine), and as undoLast
 */
export const oldSheetsTakeBackHandler: Handler<typeof oldSheetsTakeBack, Context> = (context, { entryId, by }) => {
  const record = recordOf(context);
  const draft = draftOfEntry(record, entryId);
  if (readDraft(record, draft.machineId) !== null)
    throw new RefusedError({ code: 'draft-in-the-way', facts: { path: 'entryId', machineId: draft.machineId } });
  undoLast(context, entryId, by);
  writePlain(record, (w) => keepDraft(w, draft.machineId, draft, context.now()));
  return { machineId: draft.machineId };
};

function draftOfEntry(record: ReadableRecord, entryId: number): StripDownDraft {
  const stripDownId = stripDownOfEntries(record, [entryId]).get(entryId);
  const entry = readEntry(record, entryId);
  if (!entry) throw new RefusedError({ code: 'unknown-entry', facts: { path: 'entryId', entryId } });
  if (entry.what !== SAVE_SHEET || stripDownId === undefined)
    throw new RefusedError({ code: 'not-a-sheet', facts: { path: 'entryId', entryId } });
  return draftOfStripDown(record, stripDownId) as StripDownDraft;
}
