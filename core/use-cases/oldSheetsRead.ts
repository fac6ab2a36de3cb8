import type { oldSheetsRead } from '../contract/oldSheets.ts';
import type { Handler } from '../contract/operation.ts';
import { zStripDownDraft } from '../contract/stripDown.ts';
import { assembliesByMachine } from '../record/assembliesByMachine.ts';
import { listDrafts } from '../record/draftStore.ts';
import { lastUndoable } from '../record/entryStore.ts';
import { stripDownsOf } from '../record/stripDownStore.ts';
import { type Context, recordOf } from './context.ts';
import { machineNamesNow } from './machineNamesNow.ts';
import { SAVE_SHEET, sheetsOfBatch } from './oldSheetsBatch.ts';

export const oldSheetsReadHandler: Handler<typeof oldSheetsRead, Context> = (context) => {
  const record = recordOf(context);
  const days = Map.groupBy(stripDownsOf(record), ({ machineId }) => machineId);
  const assemblies = assembliesByMachine(record, context.today());
  const sheets = sheetsOfBatch(context);
  const last = lastUndoable(record);
  return {
    machines: [...machineNamesNow(context).values()]
      .map(({ machineId, name, customer, place, serial }) => ({
        machineId,
        name,
        customer,
        place,
        serial,
        assemblies: assemblies.get(machineId) ?? [],
        stripDownDays: [...new Set(days.get(machineId)?.map(({ takenOn }) => takenOn))],
      }))
      .sort((a, b) => a.name.localeCompare(b.name, 'en')),
    drafts: draftsOf(context),
    sheets,
    takeBackEntryId: last?.what === SAVE_SHEET && last.id === sheets[0]?.entryId ? last.id : null,
  };
};

/** Drafts of machines that are still there, and can be read. */
function draftsOf(context: Context) {
  const names = machineNamesNow(context);
  return listDrafts(recordOf(context)).flatMap(({ machineId, draft, keptAt }) => {
    const machine = names.get(machineId)?.name;
    const read = zStripDownDraft.safeParse(draft);
    if (machine === undefined || !read.success) return [];
    return [{ machineId, machine, takenOn: read.data.takenOn, sizes: read.data.sizes.length, keptAt }];
  });
}
