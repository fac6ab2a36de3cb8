import type { forecastWhy, PointForecast } from '../contract/forecast.ts';
import type { GivenReplyOf, Handler } from '../contract/operation.ts';
import type { ClassLearning } from '../fit/learnShop.ts';
import { defaultModelSettings, type ModelSettings, modelSettingNames } from '../fit/modelSettings.ts';
import { forecastPart } from '../forecast/forecastPart.ts';
import { measuredWhenWorn, widenedBy } from '../forecast/guards.ts';
import { forecastJoint } from '../forecast/slackOfJoint.ts';
import { normalQuantile } from '../maths/normal.ts';
import { RefusedError } from '../outcome.ts';
import { machineHoursOn } from '../reading/machineHours.ts';
import { presentShare } from '../reading/workedHours.ts';
import type { PartSeries } from '../series/partSeries.ts';
import { hoursSourceOn } from '../shop/machineLife.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import { day, daysBetween } from '../units/day.ts';
import { jointOfSlack } from '../way/jointOfSlack.ts';
import { widens } from '../way/lawsAsSaid.ts';
import { machineHarshness } from '../way/machineHarshness.ts';
import { type DatesFrom, pointDates } from '../way/pointDates.ts';
import { settingsOf, workTypeOn } from '../way/settingsOf.ts';
import type { MachineHoursAndUse } from '../way/shopHours.ts';
import { partsOfMachine, type ShopSeries } from '../way/shopSeries.ts';
import { widthOfJoint, widthWithout } from '../way/widthWithout.ts';
import type { Learning } from '../way.ts';
import { classRates } from './classesList.ts';
import type { Context } from './context.ts';
import { machineOfPoint } from './seriesNow.ts';
import { type ShopNow, shopAround, shopNow } from './shopNow.ts';

type Reply = GivenReplyOf<typeof forecastWhy>;
type Step = Reply['steps'][number];

export const forecastWhyHandler: Handler<typeof forecastWhy, Context> = (context, { pointId, asOf }) =>
  whyForecast(asOf ? shopNow(context, day(asOf)) : shopAround(context, machineOfPoint(context, pointId)), pointId);

/** Where one forecast's numbers come from, step by step. @throws RefusedError unknown-point */
export function whyForecast(now: ShopNow, pointId: number): Reply {
  const point = now.shop.life.points.find((one) => one.pointId === pointId);
  const forecast = point && now.ofMachine(point.machineId).points.find((one) => one.pointId === pointId);
  if (!point || !forecast) throw new RefusedError({ code: 'unknown-point', facts: { path: 'pointId', pointId } });
  const series = now.shop.ofPoint(point);
  const joint = jointStep(now, point, series);
  if (joint) {
    const steps = [
      readingsStep(series),
      joint,
      partStep(forecast),
      limitStep(forecast, series),
      dateStep(now, point, forecast),
    ];
    return { forecast, steps: [...steps, ...settingsStep(now)], width: widthOfForecast(now, point, series, forecast) };
  }
  const steps = [
    readingsStep(series),
    ...changeStep(series),
    hoursStep(now, point, series),
    ...classSteps(now, point),
    ...machineStep(now, point, series),
    partStep(forecast),
    limitStep(forecast, series),
    dateStep(now, point, forecast),
    ...settingsStep(now),
  ];
  return { forecast, steps, width: widthOfForecast(now, point, series, forecast) };
}

/** Ranges are told in machine hours, at the present share of them in which the assembly works. */
function widthOfForecast(
  { shop, learning, asOf, ofMachine }: ShopNow,
  point: PointOnRecord,
  series: PartSeries,
  forecast: PointForecast,
): Reply['width'] {
  const { machineId } = series.present;
  const knownClass = (partClass: string) => learning.shop.classes.some((one) => one.partClass === partClass);
  const machine = shop.hours.ofMachine(point.machineId);
  const share = machine ? presentShare(machine.life, asOf) : 1;
  const settings = settingsOf(shop.life);
  if (series.renewAtWearMm === null || forecast.hoursLeft.low === null || !knownClass(point.partClass)) return null;
  const { laws } = ofMachine(point.machineId);
  const joint = jointOfSlack(shop, point, laws);
  const from = {
    laws,
    pool: learning.shop,
    parts: partsOfMachine(shop, machineId, [point]).filter((part) => knownClass(part.partClass)),
    coverage: learning.coverage,
    settings,
  };
  const width = joint
    ? widthOfJoint({ ...from, joint, limitGainMm: series.renewAtWearMm })
    : widthWithout({ ...from, pointId: point.pointId, limitWearMm: series.renewAtWearMm });
  if (!width || share <= 0) return null;
  const { low, high } = forecast.dateAtLimit;
  const days = low && high ? daysBetween(day(low), day(high)) : null;
  const law = laws.get(point.pointId);
  const useShare =
    days !== null && law && machine ? useShareOfDates({ law, joint, series, machine, share, settings }) : null;
  return {
    hours: width.hours / share,
    to: width.to,
    without: width.without.map(({ source, hours }) => ({ source, hours: hours / share })),
    days,
    daysWithoutUse: days === null || useShare === null ? null : days * (1 - useShare),
  };
}

/** A slack forecast from pin and bore together: which they are, and how fast each wears; each has its own account. */
function jointStep({ shop, ofMachine }: ShopNow, point: PointOnRecord, series: PartSeries): Step | null {
  const { laws, points } = ofMachine(point.machineId);
  const joint = jointOfSlack(shop, point, laws);
  if (!joint) return null;
  const rateOf = (pointId: number) => points.find((one) => one.pointId === pointId)?.ratePer1000hMm.middle ?? null;
  const rates = joint.bores.map(({ law }) => rateOf(law.pointId)).filter((rate) => rate !== null);
  return {
    code: 'joint',
    facts: {
      bores: joint.bores.length,
      pinRatePer1000hMm: rateOf(joint.pin.law.pointId),
      boreRatePer1000hMm: rates.length > 0 ? Math.max(...rates) : null,
      newSlackMm: series.presentNewSizeMm + Math.max(...joint.bores.map(({ offsetMm }) => offsetMm)),
    },
  };
}

function useShareOfDates(from: Omit<DatesFrom, 'part'>): number | null {
  const { law, joint, settings } = from;
  const { renewAtWearMm, workedHoursNow } = from.series;
  const asked = { ...from, withUseShare: true };
  if (joint) {
    const part = forecastJoint(joint, renewAtWearMm, workedHoursNow ?? 0, settings);
    return pointDates({ ...asked, part })?.useShare ?? null;
  }
  const part = forecastPart(law, renewAtWearMm, workedHoursNow ?? 0, settings);
  return part.ok ? (pointDates({ ...asked, part: part.value })?.useShare ?? null) : null;
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
      ...withoutMeterFacts(shop, machine),
    },
  };
}

/** Where its hours come from while no meter of its own tells them. */
function withoutMeterFacts({ hours, asOf }: ShopSeries, machine: MachineHoursAndUse | undefined): Step['facts'] {
  const source = machine && hoursSourceOn(machine.life.hoursSources ?? [], asOf);
  if (!source) return {};
  const sdHours = machineHoursOn(machine.line, asOf)?.sdHours ?? null;
  if (source.kind === 'yearly') return { reckonedAYear: source.hoursPerYear, machineSdHours: sdHours };
  const puller = hours.ofMachine(source.pullerId)?.life.name ?? null;
  return { puller, pullerShare: source.share, machineSdHours: sdHours };
}

function classSteps({ shop, learning }: ShopNow, point: PointOnRecord): Step[] {
  const learned = learning.shop.classes.find((one) => one.partClass === point.partClass);
  if (!learned) return [];
  const { before, now } = classRates(learned, settingsOf(shop.life));
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
    ...coverageStep(learning, point.partClass, settingsOf(shop.life)),
    ...looksStep(learning, point.partClass, settingsOf(shop.life)),
    { code: 'class-shape', facts: shapeFacts(learned) },
  ];
}

function coverageStep({ coverage }: Learning, partClass: string, settings: ModelSettings): Step[] {
  const scored = coverage.find((one) => one.partClass === partClass);
  if (!scored) return [];
  const { sizes, inside } = scored;
  return [
    { code: 'class-coverage', facts: { sizes, inside, widenedBy: widenedBy(scored, widens(settings), settings) } },
  ];
}

/** Only where its parts were measured in a way that leads the forecast astray. */
function looksStep({ looks }: Learning, partClass: string, settings: ModelSettings): Step[] {
  const worn = measuredWhenWorn(
    looks.find((one) => one.partClass === partClass),
    settings,
  );
  return worn ? [{ code: 'class-looks', facts: worn.facts ?? {} }] : [];
}

const Z_90 = normalQuantile(0.9);

/** Power of time: below 1 wear runs in, above 1 it quickens; 10 to 90 % by its mean and spread. */
function shapeFacts({ nodes }: ClassLearning): Step['facts'] {
  const mean = nodes.reduce((sum, { weight, power }) => sum + weight * Math.log(power), 0);
  const variance = nodes.reduce((sum, { weight, power }) => sum + weight * (Math.log(power) - mean) ** 2, 0);
  const at = (z: number) => Math.exp(mean + z * Math.sqrt(variance));
  return { lowPower: at(-Z_90), middlePower: at(0), highPower: at(Z_90) };
}

/** How hard the machine is on its parts, from what all of them say and from the shop's word on its work. */
function machineStep({ shop, learning, asOf }: ShopNow, point: PointOnRecord, series: PartSeries): Step[] {
  const { machineId, expectedLnHarshness: expected = 0 } = series.present;
  const machine = shop.hours.ofMachine(machineId);
  const harshness = machineHarshness(learning.shop, machineId, point.partClass, expected);
  const times = Math.exp(expected);
  if (!harshness && expected === 0) return [];
  const facts = harshness ?? { lowTimes: times, middleTimes: times, highTimes: times, classesHeard: 0 };
  const word = expected !== 0 && machine ? workTypeOn(machine.life, asOf) : null;
  return [{ code: 'machine', facts: { ...facts, ...(word && { workType: word, expectedTimes: times }) } }];
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

/** Only where the shop has set something otherwise: its name, its unit and the two values. */
function settingsStep({ shop }: ShopNow): Step[] {
  const { changed } = shop.life.forecastSettings;
  const told = modelSettingNames.filter((name) => changed[name] !== undefined);
  if (told.length === 0) return [];
  const facts = told.map((name) => [name, `${changed[name]} (${defaultModelSettings[name]})`]);
  return [{ code: 'settings', facts: Object.fromEntries(facts) }];
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
