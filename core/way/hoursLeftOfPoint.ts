import type { PointForecast } from '../contract/forecast.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { hoursAtLimit } from '../forecast/hoursAtLimit.ts';
import { forecastJoint } from '../forecast/slackOfJoint.ts';
import { presentShare } from '../reading/workedHours.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import { jointOfSlack } from './jointOfSlack.ts';
import { isStop, type OpenFindings } from './openFindings.ts';
import { hoursLeft, NO_RANGE } from './pointForecast.ts';
import type { ShopSeries } from './shopSeries.ts';

/** The hours left of forecastOfPoint() and nothing else of it: what tells whether an entry has moved a forecast. */
export function hoursLeftOfPoint(
  shop: ShopSeries,
  point: PointOnRecord,
  laws: ReadonlyMap<number, PartLaw>,
  findings: OpenFindings,
  settings: ModelSettings,
): PointForecast['hoursLeft'] {
  const { renewAtWearMm, workedHoursNow } = shop.ofPoint(point);
  const law = laws.get(point.pointId);
  const limitMm = renewAtWearMm !== null && renewAtWearMm > 0 ? renewAtWearMm : null;
  if (!law || limitMm === null || workedHoursNow === null || findings.ofPoint(point).some(isStop)) return NO_RANGE;
  const machine = shop.hours.ofMachine(point.machineId);
  const share = machine ? presentShare(machine.life, shop.asOf) : 1;
  const joint = jointOfSlack(shop, point, laws);
  const atLimit = joint
    ? forecastJoint(joint, limitMm, workedHoursNow, settings).hoursAtLimit
    : hoursAtLimit(law, limitMm, settings);
  return atLimit ? hoursLeft(atLimit, workedHoursNow, share) : NO_RANGE;
}
