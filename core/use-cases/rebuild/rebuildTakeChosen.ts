import type { Handler } from '../../contract/operation.ts';
import { type rebuildTakeChosen, zRebuildWork } from '../../contract/rebuild.ts';
import { zRepairOption } from '../../contract/repair.ts';
import { RefusedError } from '../../outcome.ts';
import { writeEntry } from '../../record/entry.ts';
import { insertRebuildLine, rebuildLinesOf } from '../../record/rebuildStore.ts';
import { repairChoicesOf } from '../../record/repairStore.ts';
import { type Context, entryNow, recordOf } from '../context.ts';
import { jointPoints } from '../repair/jointPoints.ts';
import { treeOf } from '../repair/repairSheet.ts';
import { shopAround } from '../shopNow.ts';
import { openRebuildOrRefuse } from './rebuildOrRefuse.ts';
import { workOfRepair } from './workOfRepair.ts';

/**
 * Puts every repair chosen on the job's machine on the job as a line of work, but those that are on it already.
 * @throws RefusedError nothing-chosen {rebuildId}
 */
export const rebuildTakeChosenHandler: Handler<typeof rebuildTakeChosen, Context> = (context, { rebuildId, by }) => {
  const record = recordOf(context);
  const rebuild = openRebuildOrRefuse(record, rebuildId);
  const now = shopAround(context, rebuild.machineId);
  const here = new Set(
    now.shop.life.points.flatMap(({ machineId, positionId }) => (machineId === rebuild.machineId ? [positionId] : [])),
  );
  const onJob = new Set(
    rebuildLinesOf(record, rebuildId).map(({ positionId, work }) => `${positionId} ${zRebuildWork.parse(work).option}`),
  );
  const works = repairChoicesOf(record)
    .filter(({ positionId, choice }) => here.has(positionId) && !onJob.has(`${positionId} ${choice}`))
    .map(({ positionId, option }) => {
      const { all, bore, pin } = jointPoints(record, now, positionId);
      const { item, position, safety, assemblyId } = all[0]!;
      const place = { positionId, item, position, safety, points: { bore, pin }, tree: treeOf(record, assemblyId) };
      return workOfRepair(zRepairOption.parse(option), place);
    });
  if (works.length === 0) throw new RefusedError({ code: 'nothing-chosen', facts: { rebuildId } });
  writeEntry(record, entryNow(context, 'rebuild/takeChosen', by), (w, entryId) => {
    for (const work of works) insertRebuildLine(w, entryId, { rebuildId, positionId: work.positionId, work });
  });
  return { lines: works.length };
};
