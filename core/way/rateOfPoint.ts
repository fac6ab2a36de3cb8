import type { PointForecast } from '../contract/forecast.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { rateNow, refusalOfPart } from '../forecast/forecastPart.ts';
import { rateOfJoint } from '../forecast/slackOfJoint.ts';
import { presentShare } from '../reading/workedHours.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import { jointOfSlack } from './jointOfSlack.ts';
import { NO_RANGE, per1000Hours } from './pointForecast.ts';
import type { ShopSeries } from './shopSeries.ts';

/** How fast forecastOfPoint() says a point wears, and nothing else of it: a list of like parts needs neither hours nor dates. */
export function rateOfPoint(
  shop: ShopSeries,
  point: PointOnRecord,
  laws: ReadonlyMap<number, PartLaw>,
): PointForecast['ratePer1000hMm'] {
  const { renewAtWearMm, workedHoursNow } = shop.ofPoint(point);
  const law = laws.get(point.pointId);
  if (!law || workedHoursNow === null) return NO_RANGE;
  const machine = shop.hours.ofMachine(point.machineId);
  const share = machine ? presentShare(machine.life, shop.asOf) : 1;
  const joint = jointOfSlack(shop, point, laws);
  if (joint) return per1000Hours(rateOfJoint(joint), share);
  return refusalOfPart(renewAtWearMm, workedHoursNow) ? NO_RANGE : per1000Hours(rateNow(law, workedHoursNow), share);
}
