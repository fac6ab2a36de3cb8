import type { oldSheetsRead } from '../contract/oldSheets.ts';
import type { Handler } from '../contract/operation.ts';
import { zStripDownDraft } from '../contract/stripDown.ts';
import { listDrafts } from '../record/draftStore.ts';
import { lastUndoable } from '../record/entryStore.ts';
import { stripDownsOf } from '../record/stripDownStore.ts';
import { type Context, recordOf } from './context.ts';
import { SAVE_SHEET, sheetsOfBatch } from './oldSheetsBatch.ts';
import { seriesNow } from './seriesNow.ts';

export const oldSheetsReadHandler: Handler<typeof oldSheetsRead, Context> = (context) => {
  const record = recordOf(context);
  const { life } = seriesNow(context);
  const days = Map.groupBy(stripDownsOf(record), ({ machineId }) => machineId);
  const assemblies = Map.groupBy(life.points, ({ machineId }) => machineId);
  const sheets = sheetsOfBatch(record, life);
  const last = lastUndoable(record);
  return {
    machines: life.machines
      .map(({ machineId, name, customer, place, serial }) => ({
        machineId,
        name,
        customer,
        place,
        serial,
        assemblies: [...new Set(assemblies.get(machineId)?.map(({ assembly }) => assembly))],
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
  const names = new Map(seriesNow(context).life.machines.map(({ machineId, name }) => [machineId, name]));
  return listDrafts(recordOf(context)).flatMap(({ machineId, draft, keptAt }) => {
    const machine = names.get(machineId);
    const read = zStripDownDraft.safeParse(draft);
    if (machine === undefined || !read.success) return [];
    return [{ machineId, machine, takenOn: read.data.takenOn, sizes: read.data.sizes.length, keptAt }];
  });
}
