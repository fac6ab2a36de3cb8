import type { forecastWhy, PointForecast } from '../contract/forecast.ts';
import type { GivenReplyOf, Handler } from '../contract/operation.ts';
import { defaultModelSettings } from '../fit/modelSettings.ts';
import { RefusedError } from '../outcome.ts';
import { presentShare } from '../reading/workedHours.ts';
import type { PartSeries } from '../series/partSeries.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import { day } from '../units/day.ts';
import { partsOfMachine } from '../way/shopSeries.ts';
import { widthShares } from '../way/widthShares.ts';
import { classRates } from './classesList.ts';
import type { Context } from './context.ts';
import { type ShopNow, shopNow } from './shopNow.ts';

type Reply = GivenReplyOf<typeof forecastWhy>;
type Step = Reply['steps'][number];

export const forecastWhyHandler: Handler<typeof forecastWhy, Context> = (context, { pointId, asOf }) =>
  whyForecast(shopNow(context, asOf ? day(asOf) : undefined), pointId);

/** Where one forecast's numbers come from, step by step. @throws RefusedError unknown-point */
export function whyForecast(now: ShopNow, pointId: number): Reply {
  const point = now.shop.life.points.find((one) => one.pointId === pointId);
  const forecast = point && now.ofMachine(point.machineId).points.find((one) => one.pointId === pointId);
  if (!point || !forecast) throw new RefusedError({ code: 'unknown-point', facts: { path: 'pointId', pointId } });
  const series = now.shop.ofPoint(point);
  const steps = [
    readingsStep(series),
    ...changeStep(series),
    hoursStep(now, point, series),
    ...classSteps(now, point),
    partStep(forecast),
    limitStep(forecast, series),
    dateStep(now, point, forecast),
  ];
  return { forecast, steps, width: widthOfForecast(now, point, series) };
}

function widthOfForecast({ shop, learning }: ShopNow, point: PointOnRecord, series: PartSeries): Reply['width'] {
  const { machineId } = series.present;
  const learned = learning.shop.classes.some((one) => one.partClass === point.partClass);
  if (series.renewAtWearMm === null || !learned) return [];
  return widthShares({
    pool: learning.shop,
    parts: partsOfMachine(shop, machineId, [point]).filter((part) =>
      learning.shop.classes.some((one) => one.partClass === part.partClass),
    ),
    pointId: point.pointId,
    limitWearMm: series.renewAtWearMm,
    settings: defaultModelSettings,
  });
}

function readingsStep({ present, lastSize, ownReadings, presentNewSizeMm }: PartSeries): Step {
  return {
    code: 'readings',
    facts: {
      ownReadings,
      newSizeMm: presentNewSizeMm,
      newSizeSdMm: present.newSizeSdMm,
      lastSizeMm: lastSize?.sizeMm ?? null,
      lastOn: lastSize?.takenOn ?? null,
      lastErrorSdMm: lastSize?.errorSdMm ?? null,
    },
  };
}

/** Below twice the combined error a difference is no rate (shop practice: the change must exceed U of both gauges). */
function changeStep({ present }: PartSeries): Step[] {
  const [before, last] = present.readings.slice(-2);
  if (!before || !last || last.workedHours <= before.workedHours) return [];
  const changeMm = last.wearMm - before.wearMm;
  const errorMm = 2 * Math.hypot(last.errorSdMm, before.errorSdMm);
  const code = Math.abs(changeMm) > errorMm ? 'change-seen' : 'change-too-small-to-see';
  return [{ code, facts: { changeMm, errorMm, workedHours: last.workedHours - before.workedHours } }];
}

function hoursStep({ shop, asOf }: ShopNow, point: PointOnRecord, series: PartSeries): Step {
  const machine = shop.hours.ofMachine(point.machineId);
  return {
    code: 'part-hours',
    facts: {
      partHours: series.partHoursNow,
      workedHours: series.workedHoursNow,
      workedHoursSd: series.workedHoursNowSd,
      workShare: machine ? presentShare(machine.life, asOf) : null,
      startSdHours: series.present.startHoursSd,
      machineHours: series.machineHoursNow,
    },
  };
}

function classSteps({ learning }: ShopNow, point: PointOnRecord): Step[] {
  const learned = learning.shop.classes.find((one) => one.partClass === point.partClass);
  if (!learned) return [];
  const { before, now } = classRates(learned);
  const rates = (rate: typeof before) => ({
    lowPer1000hMm: rate.low,
    middlePer1000hMm: rate.middle,
    highPer1000hMm: rate.high,
  });
  return [
    { code: 'class-before', facts: { partClass: point.partClass, from: learned.prior.from, ...rates(before) } },
    {
      code: 'class-after',
      facts: { partClass: point.partClass, parts: learned.partsRead, machines: learned.machinesRead, ...rates(now) },
    },
  ];
}

function partStep({ ratePer1000hMm, wearMm, basis }: PointForecast): Step {
  return {
    code: 'part',
    facts: {
      lowPer1000hMm: ratePer1000hMm.low,
      middlePer1000hMm: ratePer1000hMm.middle,
      highPer1000hMm: ratePer1000hMm.high,
      wearNowMm: wearMm.middle,
      ownShare: basis.own,
      borrowedShare: basis.borrowed,
    },
  };
}

function limitStep(forecast: PointForecast, series: PartSeries): Step {
  const { hoursLeft, limitWearMm, chancePastLimit, pastLimitMm, decides } = forecast;
  return {
    code: limitWearMm === null ? 'no-limit' : 'limit',
    facts: {
      renewAtMm: series.limits.renewAtMm,
      source: series.limits.source,
      limitWearMm,
      lowHoursLeft: hoursLeft.low,
      middleHoursLeft: hoursLeft.middle,
      highHoursLeft: hoursLeft.high,
      decides,
      chancePastLimit,
      pastLimitMm,
    },
  };
}

function dateStep({ shop }: ShopNow, point: PointOnRecord, { dateAtLimit }: PointForecast): Step {
  const use = shop.hours.ofMachine(point.machineId)?.use;
  return {
    code: 'date',
    facts: {
      hoursPerYear: use?.hoursPerYear.middle ?? null,
      lowHoursPerYear: use?.hoursPerYear.low ?? null,
      highHoursPerYear: use?.hoursPerYear.high ?? null,
      ownUseShare: use?.ownShare ?? null,
      lowDate: dateAtLimit.low,
      middleDate: dateAtLimit.middle,
      highDate: dateAtLimit.high,
    },
  };
}
