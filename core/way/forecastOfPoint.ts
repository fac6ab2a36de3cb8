import type { PointForecast } from '../contract/forecast.ts';
import type { ShopLearning } from '../fit/learnShop.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { forecastPart, type PartForecast } from '../forecast/forecastPart.ts';
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
import { pointForecast } from './pointForecast.ts';
import type { ShopSeries } from './shopSeries.ts';

export type ForecastOfPointFrom = {
  shop: ShopSeries;
  point: PointOnRecord;
  laws: ReadonlyMap<number, PartLaw>;
  /** what the machine's last visit gave to wonder at, by point */
  lastVisit: ReadonlyMap<number, readonly Caution[]>;
  pool: ShopLearning;
  coverage: readonly ClassCoverage[];
  looks: readonly ClassLooks[];
  findings: OpenFindings;
  settings: ModelSettings;
};

/** What is said of one point: its part's law, carried to the limit, to the calendar and into machine hours. */
export function forecastOfPoint(from: ForecastOfPointFrom): PointForecast {
  const { shop, point, laws, pool, findings, settings } = from;
  const series = shop.ofPoint(point);
  const law = laws.get(point.pointId);
  assertInvariant(law, 'every point has a present part, and its law');
  const machine = shop.hours.ofMachine(point.machineId);
  const onShelf = point.sittings.findLast(({ from }) => from === null || from <= shop.asOf)?.machineId === null;
  const share = machine ? presentShare(machine.life, shop.asOf) : 1;
  const joint = jointOfSlack(shop, point, laws);
  const part = joint ? jointOrNull(joint, series, settings) : forecastOrNull(law, series, settings);
  const dates =
    part && machine && !onShelf && share > 0
      ? pointDates({ law, joint, part, series, machine, share, settings })
      : null;
  const atPosition = findings.ofPoint(point);
  const stopped = atPosition.some(isStop);
  const cautions: Caution[] = [
    ...pointCautions({ series, law, part, machine, settings, pool, coverage: from.coverage, looks: from.looks }),
    ...(from.lastVisit.get(point.pointId) ?? []),
    ...(dates?.cautions ?? []),
    ...(joint ? [{ code: 'slack-from-sizes', facts: { bores: joint.bores.length } }] : []),
    ...(onShelf ? [{ code: 'on-the-shelf' }] : []),
    ...(stopped ? [{ code: 'do-not-use' }] : []),
    ...(!stopped && findings.ofMachine(point.machineId).some(isStop) ? [{ code: 'machine-has-do-not-use' }] : []),
  ];
  return pointForecast({
    point,
    machine: machine?.life,
    read: machine ? lastRead(machine.line) : null,
    series,
    own: joint && part ? part.basis.own : law.basis.own,
    share,
    part,
    dates: dates && { low: dates.low, middle: dates.middle, high: dates.high },
    findings: atPosition,
    stopped,
    settingsChanged: Object.keys(shop.life.forecastSettings.changed).length,
    pool: likeParts(pool, series, point.partClass),
    cautions,
  });
}

function jointOrNull(joint: JointLaw, series: PartSeries, settings: ModelSettings): PartForecast | null {
  if (series.workedHoursNow === null) return null;
  return forecastJoint(joint, series.renewAtWearMm, series.workedHoursNow, settings);
}

/** Null where the machine has no hours on record; the cautions then say so. */
function forecastOrNull(law: PartLaw, series: PartSeries, settings: ModelSettings): PartForecast | null {
  if (series.workedHoursNow === null) return null;
  const forecast = forecastPart(law, series.renewAtWearMm, series.workedHoursNow, settings);
  return forecast.ok ? forecast.value : null;
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
