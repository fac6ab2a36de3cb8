import type { z } from 'zod';
import type { zOldSheet } from '../contract/oldSheets.ts';
import { type EntryOnRecord, entriesSince, rowsOfEntries, stripDownOfEntries } from '../record/entryStore.ts';
import { stripDownsOf } from '../record/stripDownStore.ts';
import type { ShopLife } from '../shop/shopLife.ts';
import { type Context, recordOf } from './context.ts';
import { machineNamesNow } from './machineNamesNow.ts';
import { lifeOfQuestioned } from './sizesQuestioned.ts';

/** A batch is what was saved through the first since the second was last done. */
export const SAVE_SHEET = 'oldSheets/save';
export const END_BATCH = 'oldSheets/end';

/** Sheets of the batch in hand, the last one first. */
export function sheetsOfBatch(context: Context): z.input<typeof zOldSheet>[] {
  const record = recordOf(context);
  const entries = entriesSince(record, SAVE_SHEET, END_BATCH);
  const ids = entries.map(({ id }) => id);
  const stripDownIds = stripDownOfEntries(record, ids);
  const stripDowns = new Map(stripDownsOf(record).map((stripDown) => [stripDown.id, stripDown]));
  const names = machineNamesNow(context);
  const rows = Map.groupBy(rowsOfEntries(record, ids), ({ entryId }) => entryId);
  const parked = parkedByVisit(lifeOfQuestioned(context));
  return entries.flatMap((entry) => {
    const stripDown = stripDowns.get(stripDownIds.get(entry.id) ?? 0);
    if (!stripDown || stripDown.machineId === null) return [];
    const { id, machineId, takenOn, fitter } = stripDown;
    const own = rows.get(entry.id) ?? [];
    return [
      {
        ...madeBy(entry),
        stripDownId: id,
        machineId,
        machine: names.get(machineId)?.name ?? '',
        takenOn,
        fitter,
        sizes: countOf(own, 'sizes'),
        parked: parked.get(`${machineId} ${takenOn}`) ?? 0,
        findings: countOf(own, 'findings'),
      },
    ];
  });
}

const madeBy = ({ id, madeAt }: EntryOnRecord) => ({ entryId: id, madeAt });

const countOf = (rows: readonly { sort: string; rows: number }[], sort: string): number =>
  rows.filter((row) => row.sort === sort).reduce((sum, { rows: count }) => sum + count, 0);

/** How many sizes of a machine and day wait for an answer. */
function parkedByVisit({ points }: ShopLife): Map<string, number> {
  const counts = new Map<string, number>();
  for (const { machineId, sizes } of points) {
    for (const { takenOn, parked } of sizes) {
      const visit = `${machineId} ${takenOn}`;
      if (parked) counts.set(visit, (counts.get(visit) ?? 0) + 1);
    }
  }
  return counts;
}
