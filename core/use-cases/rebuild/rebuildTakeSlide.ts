import type { Handler } from '../../contract/operation.ts';
import type { RebuildWork, rebuildTakeSlide } from '../../contract/rebuild.ts';
import { STRIP_PLACE_NAMES, type StripChoiceName } from '../../contract/slide.ts';
import { orRefuse, RefusedError } from '../../outcome.ts';
import { writeEntry } from '../../record/entry.ts';
import { insertRebuildLine } from '../../record/rebuildStore.ts';
import { workHoursOf } from '../../repair/shopFigures.ts';
import type { WorkHours } from '../../repair/strip-down-tree/jobHours.ts';
import { stepsToReach } from '../../repair/strip-down-tree/stepsToReach.ts';
import type { PointOnRecord } from '../../shop/shopLife.ts';
import type { StripDownTree } from '../../shop/stripDownTree.ts';
import { type Context, entryNow, recordOf } from '../context.ts';
import { limitsNow } from '../repair/jointPoints.ts';
import { treeOf } from '../repair/repairSheet.ts';
import { shopGoesBy } from '../repair/shopFigures.ts';
import { stripsOf } from '../repair/slideRead.ts';
import { type ShopNow, shopAround } from '../shopNow.ts';
import { openRebuildOrRefuse } from './rebuildOrRefuse.ts';

type Done = Exclude<StripChoiceName, 'leave'>;
const WHAT: Readonly<Record<Done, string>> = {
  renew: 'Renew the strip',
  shim: 'Shim the strip; its thickness stays',
  turn: 'Turn the strip end for end',
};
const STEP = { renew: 'renew-strip', shim: 'shim-strip', turn: 'turn-strip' } as const;

/**
 * Puts what is to be done with the strips of a slide on a job, a line each.
 * @throws RefusedError nothing-chosen (every strip is left), not-on-this-machine, unknown-assembly, not-a-slide
 */
export const rebuildTakeSlideHandler: Handler<typeof rebuildTakeSlide, Context> = (context, request) => {
  const record = recordOf(context);
  const { rebuildId, assemblyId, choice, by } = request;
  const rebuild = openRebuildOrRefuse(record, rebuildId);
  const now = shopAround(context, rebuild.machineId);
  const strips = stripsOf(now, assemblyId);
  if (strips['top-front'].machineId !== rebuild.machineId)
    throw new RefusedError({ code: 'not-on-this-machine', facts: { path: 'assemblyId', assemblyId } });
  const tree = treeOf(record, assemblyId);
  const workHours = workHoursOf(shopGoesBy(record).figures);
  const works = STRIP_PLACE_NAMES.flatMap((place) => {
    const what = choice[place];
    return what === 'leave' ? [] : [workOfStrip(now, strips[place], what, tree, workHours)];
  });
  if (works.length === 0) throw new RefusedError({ code: 'nothing-chosen', facts: { rebuildId } });
  writeEntry(record, entryNow(context, 'rebuild/takeSlide', by), (w, entryId) => {
    for (const work of works) insertRebuildLine(w, entryId, { rebuildId, positionId: work.positionId, work });
  });
  return { lines: works.length };
};

function workOfStrip(
  now: ShopNow,
  point: PointOnRecord,
  done: Done,
  tree: StripDownTree,
  workHours: WorkHours,
): RebuildWork {
  const { positionId, pointId, item, position, safety } = point;
  const { newSizeMm, newSizeTolMm } = limitsNow(point, now);
  const half = (newSizeTolMm ?? 0) / 2;
  const steps = orRefuse(stepsToReach(tree, [item]));
  const strip = { kind: 'strip' as const, what: position, material: '', count: 1, insideMm: null, lengthMm: null };
  return {
    ...{ positionId, option: done, what: WHAT[done], safety, partsPrice: 0, cuts: [], pressing: null, cautions: [] },
    takeOffs: steps.map(({ name, hours }) => ({ name, hours: hours.typical })),
    ownHours: workHours[STEP[done]].typical,
    makes:
      done === 'renew'
        ? [{ ...strip, outsideMm: newSizeMm, widthMm: null, limits: '', stock: '', bought: true, leadDays: null }]
        : [],
    renews:
      done === 'renew'
        ? [{ pointId, kind: 'new-part', lowerMm: newSizeMm - half, upperMm: newSizeMm + half }]
        : done === 'turn'
          ? [{ pointId, kind: 'turned', lowerMm: 0, upperMm: newSizeMm + half }]
          : [],
  };
}
