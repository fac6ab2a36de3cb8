import type { LifeRange, StateAfter } from '../../repair/options/repairOption.ts';
import type { Renewal, RenewalKind } from '../../shop/measuringPoint.ts';
import { limitsMovedBy } from '../../shop/oversize.ts';
import type { PointOnRecord, ShopLife } from '../../shop/shopLife.ts';
import type { ShopSeries } from '../../way/shopSeries.ts';
import { hoursLeftOfMachine, poolByFewer, seriesOfShop } from '../../way.ts';
import type { ShopNow } from '../shopNow.ts';
import type { JointPoints } from './jointPoints.ts';

/**
 * How long a joint lasts after a choice: the forecast engine on the record as it would read with hole or pin renewed today. The
 * joint's life is the shorter of its points' that have a limit.
 */
export function lifeAfter(now: ShopNow, points: JointPoints): (after: StateAfter) => LifeRange | null {
  const machineId = points.all[0]?.machineId ?? 0;
  const own = new Set([points.bore, points.pin, points.slack].flatMap((point) => (point ? [point.pointId] : [])));
  const known = new Map<string, LifeRange | null>();
  const byFewer = { ...now.learning, shop: poolByFewer(now.learning, now.shop, machineId) };
  return (after) => {
    const renewed = renewedBy(points, after);
    const key = renewed.map(({ point, renewal }) => `${point.pointId} ${renewal.kind} ${renewal.sizeMm}`).join(' ');
    const before = known.get(key);
    if (before !== undefined) return before;
    const shop =
      renewed.length === 0 ? now.shop : seriesOfShop(withRenewals(now, renewed), now.asOf, now.learning.habit);
    // every repair by the same figures; left as it is, by those its page is told by
    const learning = renewed.length === 0 ? now.learning : byFewer;
    const hoursLeft = hoursLeftOfMachine(shop, machineId, learning, own);
    const limited = shop.life.points.filter((point) => own.has(point.pointId) && limitOf(shop, point) !== null);
    const life = shortest(limited.flatMap(({ pointId }) => hoursLeft.get(pointId) ?? []));
    known.set(key, life);
    return life;
  };
}

const limitOf = (shop: ShopSeries, point: PointOnRecord) => shop.ofPoint(point).renewAtWearMm;

type Renewed = { point: PointOnRecord; renewal: Omit<Renewal, 'takenOn'> };

/** What kind of renewal the hole's is; the pin's is an oversize, or a new part. */
const BORE_RENEWAL: Readonly<Record<StateAfter['choice'], RenewalKind>> = {
  ...{ leave: 'new-part', 'oversize-pin': 'oversize', bush: 'bush', weld: 'weld-and-bore' },
  ...{ 'new-boss': 'weld-and-bore', reject: 'new-part' },
};

/**
 * Points that wear from new after a choice; a slack does once both or either of its parts are new. An oversize is said with its
 * size: the limits go with it.
 */
function renewedBy({ bore, pin, slack }: JointPoints, after: StateAfter): Renewed[] {
  const { choice, boreMm, pinMm } = after;
  const [boreNew, pinNew] = [after.bore === 'renewed', after.pin === 'renewed'];
  const isOversize = choice === 'oversize-pin';
  const renewed = (point: PointOnRecord | null, kind: RenewalKind, sizeMm: number | null): Renewed[] =>
    point ? [{ point, renewal: { id: -1, dialHours: null, hoursKnown: true, kind, sizeMm } }] : [];
  return [
    ...(boreNew ? renewed(bore, BORE_RENEWAL[choice], isOversize ? boreMm : null) : []),
    ...(pinNew ? renewed(pin, isOversize ? 'oversize' : 'new-part', isOversize ? pinMm : null) : []),
    ...(boreNew || pinNew ? renewed(slack, 'new-part', null) : []),
  ];
}

/** The record as it would read, the limits moved as they move when a renewal is written. */
function withRenewals({ shop, asOf }: ShopNow, renewed: readonly Renewed[]): ShopLife {
  const after = new Map(renewed.map((one) => [one.point, { ...one.renewal, takenOn: asOf }]));
  const points = shop.life.points.map((point) => {
    const renewal = after.get(point);
    if (!renewal) return point;
    const moved = limitsMovedBy(point, renewal);
    const limits = moved ? [...point.limits, { ...moved, from: asOf, withRenewal: 'here' as const }] : point.limits;
    return { ...point, limits, renewals: [...point.renewals, renewal] };
  });
  return { ...shop.life, points };
}

/** The lower of each figure; beyond what can be said counts as later than any. */
function shortest(ranges: readonly LifeRange[]): LifeRange | null {
  if (ranges.length === 0) return null;
  const least = (of: keyof LifeRange) => {
    const known = ranges.map((range) => range[of]).filter((hours) => hours !== null);
    return known.length === 0 ? null : Math.min(...known);
  };
  return { low: least('low'), middle: least('middle'), high: least('high') };
}
