import type { PartLaw } from '../fit/partLaw.ts';
import type { JointEnd, JointLaw } from '../forecast/slackOfJoint.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import { endsOf, type ShopSeries } from './shopSeries.ts';

/**
 * The joint a slack is forecast from: its pin and its bores together, where the slack of the present parts was last worked out
 * from them or never measured. Measured by itself since, it is forecast as any other point, from its own sizes.
 * @returns null: no joint, its own sizes speak, or its ends have no hours
 */
export function jointOfSlack(
  shop: ShopSeries,
  point: PointOnRecord,
  laws: ReadonlyMap<number, PartLaw>,
): JointLaw | null {
  const joint = shop.life.joints?.find(({ slackPointId }) => slackPointId === point.pointId);
  if (!joint) return null;
  const ends = endsOf(joint, new Map(shop.life.points.map((one) => [one.pointId, one])));
  const series = shop.ofPoint(point);
  if (!ends || measuredSince(shop, point)) return null;
  const endOf = (its: PointOnRecord): JointEnd | null => {
    const law = laws.get(its.pointId);
    const { workedHoursNow } = shop.ofPoint(its);
    return law && workedHoursNow !== null ? { law, workedHoursNow } : null;
  };
  const pin = endOf(ends.pin);
  const newPinMm = shop.ofPoint(ends.pin).presentNewSizeMm;
  const bores = ends.bores.flatMap((its) => {
    const end = endOf(its);
    const offsetMm = shop.ofPoint(its).presentNewSizeMm - newPinMm - series.presentNewSizeMm;
    return end ? [{ ...end, offsetMm }] : [];
  });
  return pin && bores.length === ends.bores.length && bores.length > 0 ? { pin, bores } : null;
}

/** Its last used size is one measured by itself. */
function measuredSince(shop: ShopSeries, point: PointOnRecord): boolean {
  const { history, present } = shop.ofPoint(point);
  const last = history.findLast(({ governing, ordinal }) => governing !== null && ordinal === present.ordinal);
  return last !== undefined && !last.workedOut && !last.atZero;
}
