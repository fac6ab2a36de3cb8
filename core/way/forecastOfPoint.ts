import type { PointForecast } from '../contract/forecast.ts';
import type { ShopLearning } from '../fit/learnShop.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import type { DateAtLimit } from '../forecast/dateAtLimit.ts';
import { type PartAtLimit, type PartForecast, partAtLimit, wearNow } from '../forecast/forecastPart.ts';
import { forecastJoint, type JointLaw } from '../forecast/slackOfJoint.ts';
import type { Caution } from '../outcome.ts';
import { assertInvariant } from '../outcome.ts';
import { lastRead } from '../reading/machineHours.ts';
import { presentShare } from '../reading/workedHours.ts';
import type { PartSeries } from '../series/partSeries.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import type { ClassCoverage } from './classCoverage.ts';
import type { ClassLooks } from './classLooks.ts';
import { jointOfSlack } from './jointOfSlack.ts';
import { isStop, type OpenFindings } from './openFindings.ts';
import { pointCautions } from './pointCautions.ts';
import { pointDates } from './pointDates.ts';
import { type PointOutlook, pointForecast, pointOutlook } from './pointForecast.ts';
import type { MachineHoursAndUse } from './shopHours.ts';
import type { ShopSeries } from './shopSeries.ts';

export type OutlookOfPointFrom = {
  shop: ShopSeries;
  point: PointOnRecord;
  laws: ReadonlyMap<number, PartLaw>;
  pool: ShopLearning;
  findings: OpenFindings;
  settings: ModelSettings;
};

export type ForecastOfPointFrom = OutlookOfPointFrom & {
  /** what the machine's last visit gave to wonder at, by point */
  lastVisit: ReadonlyMap<number, readonly Caution[]>;
  coverage: readonly ClassCoverage[];
  looks: readonly ClassLooks[];
};

/** When one point comes to its limit, its part's law carried to the limit, to the calendar and into machine hours. */
export const outlookOfPoint = (from: OutlookOfPointFrom): PointOutlook => outlookFrom(from, atLimitOf(from));

/** All that is said of one point: when, and besides how far it has worn, how fast it wears, and what to be careful of. */
export function forecastOfPoint(from: ForecastOfPointFrom): PointForecast {
  const { shop, point, pool, findings, settings } = from;
  const its = atLimitOf(from);
  const { series, law, machine, dates, joint } = its;
  const part = wholeForecast(its, settings);
  const cautions: Caution[] = [
    ...pointCautions({ series, law, part, machine, settings, pool, coverage: from.coverage, looks: from.looks }),
    ...(from.lastVisit.get(point.pointId) ?? []),
    ...(dates?.cautions ?? []),
    ...(joint ? [{ code: 'slack-from-sizes', facts: { bores: joint.bores.length } }] : []),
    ...(onShelf(point, shop) ? [{ code: 'on-the-shelf' }] : []),
    ...(its.stopped ? [{ code: 'do-not-use' }] : []),
    ...(!its.stopped && findings.ofMachine(point.machineId).some(isStop) ? [{ code: 'machine-has-do-not-use' }] : []),
  ];
  return pointForecast(outlookFrom(from, its), { part, share: its.share, cautions });
}

/** A point with its part at the limit: what its outlook is written from. */
type AtLimit = {
  series: PartSeries;
  law: PartLaw;
  machine: MachineHoursAndUse | undefined;
  /** worked hours in one machine hour at present */
  share: number;
  joint: JointLaw | null;
  /** null: the machine has no hours on record */
  part: PartAtLimit | null;
  dates: DateAtLimit | null;
  stopped: boolean;
};

function atLimitOf({ shop, point, laws, findings, settings }: OutlookOfPointFrom): AtLimit {
  const series = shop.ofPoint(point);
  const law = laws.get(point.pointId);
  assertInvariant(law, 'every point has a present part, and its law');
  const machine = shop.hours.ofMachine(point.machineId);
  const share = machine ? presentShare(machine.life, shop.asOf) : 1;
  const joint = jointOfSlack(shop, point, laws);
  const part = joint ? jointOrNull(joint, series, settings) : partOrNull(law, series, settings);
  const dates =
    part && machine && share > 0 && !onShelf(point, shop)
      ? pointDates({ law, joint, part, series, machine, share, settings })
      : null;
  return { series, law, machine, share, joint, part, dates, stopped: findings.ofPoint(point).some(isStop) };
}

const onShelf = (point: PointOnRecord, shop: ShopSeries): boolean =>
  point.sittings.findLast(({ from }) => from === null || from <= shop.asOf)?.machineId === null;

const outlookFrom = (
  { shop, point, pool, findings }: OutlookOfPointFrom,
  { series, law, machine, share, joint, part, dates, stopped }: AtLimit,
): PointOutlook =>
  pointOutlook({
    point,
    machine: machine?.life,
    read: machine ? lastRead(machine.line) : null,
    series,
    own: joint && part ? part.basis.own : law.basis.own,
    share,
    part,
    dates: dates && { low: dates.low, middle: dates.middle, high: dates.high },
    findings: findings.ofPoint(point),
    stopped,
    settingsChanged: Object.keys(shop.life.forecastSettings.changed).length,
    pool: likeParts(pool, series, point.partClass),
  });

/** With wear and its slope now; of a joint they are known with its hours. */
function wholeForecast({ part, joint, law, series }: AtLimit, settings: ModelSettings): PartForecast | null {
  if (part === null || series.workedHoursNow === null) return null;
  return joint ? (part as PartForecast) : { ...part, ...wearNow(law, series.workedHoursNow, settings) };
}

function jointOrNull(joint: JointLaw, series: PartSeries, settings: ModelSettings): PartForecast | null {
  if (series.workedHoursNow === null) return null;
  return forecastJoint(joint, series.renewAtWearMm, series.workedHoursNow, settings);
}

/** Null where the machine has no hours on record; the cautions then say so. */
function partOrNull(law: PartLaw, series: PartSeries, settings: ModelSettings): PartAtLimit | null {
  if (series.workedHoursNow === null) return null;
  const atLimit = partAtLimit(law, series.renewAtWearMm, series.workedHoursNow, settings);
  return atLimit.ok ? atLimit.value : null;
}

/** Parts with a reading the class was learned from, this one not counted. */
export function likeParts(
  pool: ShopLearning,
  series: PartSeries,
  partClass: string,
): { parts: number; machines: number } {
  const learned = pool.classes.find((one) => one.partClass === partClass);
  const itself = series.present.readings.length > 0 ? 1 : 0;
  return { parts: Math.max(0, (learned?.partsRead ?? 0) - itself), machines: learned?.machinesRead ?? 0 };
}
