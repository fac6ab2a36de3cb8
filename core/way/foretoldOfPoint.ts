import { type Foretold, foretold } from '../check/foretold.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { hoursAtLimit } from '../forecast/hoursAtLimit.ts';
import { presentShare } from '../reading/workedHours.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import { likeParts } from './forecastOfPoint.ts';
import { jointOfSlack } from './jointOfSlack.ts';
import type { Learning } from './learning.ts';
import { settingsOf } from './settingsOf.ts';
import type { ShopSeries } from './shopSeries.ts';

/**
 * What is foretold of the sizes of one point's present part, as said.
 * @returns null: nothing can be foretold without hours; a slack worked out from pin and bores is foretold by them
 */
export function foretoldOfPoint(
  shop: ShopSeries,
  point: PointOnRecord,
  laws: ReadonlyMap<number, PartLaw>,
  learning: Learning,
): Foretold | null {
  const series = shop.ofPoint(point);
  const law = laws.get(point.pointId);
  if (!law || series.workedHoursNow === null || jointOfSlack(shop, point, laws)) return null;
  const machine = shop.hours.ofMachine(point.machineId);
  const settings = settingsOf(shop.life);
  const like = likeParts(learning.shop, series, point.partClass);
  const last = series.present.readings.at(-1);
  return foretold({
    law,
    wears: point.wears,
    newSizeMm: series.presentNewSizeMm,
    workedHours: series.workedHoursNow,
    machineHours: series.machineHoursNow,
    share: machine ? presentShare(machine.life, shop.asOf) : 1,
    last: last ? { workedHours: last.workedHours, wearMm: last.wearMm } : null,
    limitWearMm: series.renewAtWearMm,
    hoursAtLimit: series.renewAtWearMm === null ? null : hoursAtLimit(law, series.renewAtWearMm, settings),
    ownReadings: series.ownReadings,
    likeParts: like.parts,
    likeMachines: like.machines,
    settings,
  });
}
