import type { RebuildWork } from '../../contract/rebuild.ts';
import type { RepairChoiceName, RepairOptionShown } from '../../contract/repair.ts';
import { orRefuse } from '../../outcome.ts';
import { stepsToReach } from '../../repair/strip-down-tree/stepsToReach.ts';
import type { PointOnRecord } from '../../shop/shopLife.ts';
import type { StripDownTree } from '../../shop/stripDownTree.ts';
import { decimalFigure } from '../../words/quantityText.ts';

/** What a chosen repair is called on a job. */
const WHAT: Readonly<Record<RepairChoiceName, string>> = {
  leave: 'Leave as it is',
  'oversize-pin': 'Bore, and fit an oversize pin',
  bush: 'Bore, and bush back to standard',
  weld: 'Weld up and bore again',
  'new-boss': 'Cut off the boss and fit a new one',
  reject: 'Take out of use and fit another part; its hours are still to be put in',
};

/** What kind of renewal each is, once it is done; a hole that is left is not renewed. */
const RENEWAL: Readonly<Record<RepairChoiceName, RebuildWork['renews'][number]['kind'] | null>> = {
  leave: null,
  'oversize-pin': 'oversize',
  bush: 'bush',
  weld: 'weld-and-bore',
  // its hole is bored to the drawn size, as after welding up
  'new-boss': 'weld-and-bore',
  reject: 'new-part',
};

const WAY = { front: 'FRONT', rear: 'REAR', left: 'left', right: 'right', up: 'up', down: 'down' } as const;

export type RepairedPlace = {
  positionId: number;
  item: number;
  position: string;
  safety: boolean;
  points: { bore: PointOnRecord | null; pin: PointOnRecord | null };
  tree: StripDownTree;
};

/** A chosen repair as a line of work: take-offs, cuts with their limits, parts to make, and the points it renews. */
export function workOfRepair(option: RepairOptionShown, place: RepairedPlace): RebuildWork {
  const { positionId, item, safety } = place;
  const steps = orRefuse(stepsToReach(place.tree, [item]));
  return {
    ...{ positionId, option: option.choice, what: WHAT[option.choice], safety, partsPrice: 0, pressing: null },
    takeOffs: option.choice === 'leave' ? [] : steps.map(({ name, hours }) => ({ name, hours: hours.typical })),
    ownHours: option.hoursHere?.typical ?? 0,
    cuts: cutsOf(option, place),
    makes: option.toMake.map(makeOf),
    renews: renewsOf(option, place),
    cautions: option.safety.map(({ id }) => id),
  };
}

function cutsOf({ bore, bush }: RepairOptionShown, { position }: RepairedPlace): RebuildWork['cuts'] {
  const cuts: RebuildWork['cuts'] = [];
  if (bore)
    cuts.push({
      what: `${position}: bore to ${bore.nominalMm} ${bore.toleranceClass}`,
      centre: centreText(bore),
      ...{ lowerMm: bore.smallestMm, upperMm: bore.largestMm },
    });
  if (bush?.sizedAfter)
    cuts.push({
      what: `${position}: bore of the bush, after pressing`,
      centre: 'in line with the boss',
      ...{ lowerMm: bush.insideAfterMm.low, upperMm: bush.insideAfterMm.high },
    });
  return cuts;
}

/** "0.60 mm to REAR of the old centre"; on the machining list, as seen from the driver's seat. */
function centreText({ centre, toward }: NonNullable<RepairOptionShown['bore']>): string {
  if (centre === 'old' || toward.length === 0) return 'on the old centre';
  return `${toward.map(({ way, mm }) => `${decimalFigure(mm, 2)} mm to ${WAY[way]}`).join(', ')} of the old centre`;
}

/** A part to make as a job's lines and papers have it. */
export function makeOf(part: RepairOptionShown['toMake'][number]): RebuildWork['makes'][number] {
  const size = (of: string) => part.sizes.find((one) => one.of === of);
  const limits = part.sizes
    .filter(({ toleranceClass }) => toleranceClass !== null)
    .map(
      ({ of, nominalMm, toleranceClass, smallestMm, largestMm, finished }) =>
        `${of} ${nominalMm} ${toleranceClass} (${smallestMm.toFixed(3)} to ${largestMm.toFixed(3)})${finished === 'after-pressing' ? ' after pressing' : ''}`,
    );
  const { stock } = part;
  return {
    ...{ kind: part.kind, what: part.name, material: part.material, count: part.count, bought: false, leadDays: null },
    outsideMm: size('outside')?.nominalMm ?? size('thickness')?.nominalMm ?? null,
    insideMm: size('inside')?.nominalMm ?? null,
    lengthMm: size('length')?.nominalMm ?? null,
    widthMm: size('width')?.nominalMm ?? null,
    limits: limits.join('; ').slice(0, 200),
    stock:
      stock.shape === 'round'
        ? `round Ø${stock.diameterMm} × ${stock.lengthMm}`
        : `flat ${stock.widthMm} × ${stock.thicknessMm} × ${stock.lengthMm}`,
  };
}

function renewsOf(option: RepairOptionShown, { points }: RepairedPlace): RebuildWork['renews'] {
  const kind = RENEWAL[option.choice];
  if (kind === null) return [];
  const hole =
    option.bush?.insideAfterMm ?? (option.bore && { low: option.bore.smallestMm, high: option.bore.largestMm });
  const renews: RebuildWork['renews'] = [];
  if (points.bore && hole) renews.push({ pointId: points.bore.pointId, kind, lowerMm: hole.low, upperMm: hole.high });
  const madePin = option.toMake.some((part) => part.kind === 'pin');
  if (points.pin && option.pin && madePin)
    renews.push({
      pointId: points.pin.pointId,
      kind: option.choice === 'oversize-pin' ? 'oversize' : 'new-part',
      ...{ lowerMm: option.pin.low, upperMm: option.pin.high },
    });
  return renews;
}
