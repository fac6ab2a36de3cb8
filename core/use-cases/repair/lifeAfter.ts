import type { PointForecast } from '../../contract/forecast.ts';
import type { LifeRange, StateAfter } from '../../repair/options/repairOption.ts';
import type { PointOnRecord, ShopLife } from '../../shop/shopLife.ts';
import { forecastMachine } from '../../way.ts';
import type { ShopNow } from '../shopNow.ts';
import type { JointPoints } from './jointPoints.ts';

/**
 * How long a joint lasts after a choice: the forecast engine on the record as it would read with hole or pin renewed today. The
 * joint's life is the shorter of its points'.
 */
export function lifeAfter(now: ShopNow, points: JointPoints): (after: StateAfter) => LifeRange | null {
  const known = new Map<string, readonly PointForecast[]>();
  const machineId = points.all[0]?.machineId ?? 0;
  const forecastsOf = (after: StateAfter): readonly PointForecast[] => {
    const renewed = renewedBy(points, after);
    if (renewed.length === 0) return now.ofMachine(machineId).points;
    const key = renewed.map(({ pointId }) => pointId).join(' ');
    const before = known.get(key);
    if (before) return before;
    const life = withRenewals(now, renewed);
    const found = forecastMachine(life, machineId, now.asOf, now.learning).points;
    known.set(key, found);
    return found;
  };
  const own = new Set([points.bore, points.pin, points.slack].flatMap((point) => (point ? [point.pointId] : [])));
  return (after) => {
    const ranges = forecastsOf(after)
      .filter(({ pointId, limitWearMm }) => own.has(pointId) && limitWearMm !== null)
      .map(({ hoursLeft }) => hoursLeft);
    return shortest(ranges);
  };
}

/** Points that wear from new after a choice; a slack does once both or either of its parts are new. */
function renewedBy({ bore, pin, slack }: JointPoints, after: StateAfter): PointOnRecord[] {
  const [boreNew, pinNew] = [after.bore === 'renewed', after.pin === 'renewed'];
  return [boreNew ? bore : null, pinNew ? pin : null, boreNew || pinNew ? slack : null].filter(
    (point): point is PointOnRecord => point !== null,
  );
}

const withRenewals = ({ shop, asOf }: ShopNow, renewed: readonly PointOnRecord[]): ShopLife => ({
  ...shop.life,
  points: shop.life.points.map((point) =>
    renewed.includes(point)
      ? {
          ...point,
          renewals: [...point.renewals, { id: -1, takenOn: asOf, dialHours: null, hoursKnown: true, sizeMm: null }],
        }
      : point,
  ),
});

/** The lower of each figure; beyond what can be said counts as later than any. */
function shortest(ranges: readonly LifeRange[]): LifeRange | null {
  if (ranges.length === 0) return null;
  const least = (of: keyof LifeRange) => {
    const known = ranges.map((range) => range[of]).filter((hours) => hours !== null);
    return known.length === 0 ? null : Math.min(...known);
  };
  return { low: least('low'), middle: least('middle'), high: least('high') };
}
