import type { PointForecast } from '../contract/forecast.ts';
import type { PartAtLimit, PartForecast } from '../forecast/forecastPart.ts';
import type { Caution } from '../outcome.ts';
import type { PartSeries } from '../series/partSeries.ts';
import { decidesOf, decidingHours } from '../shop/decidingHours.ts';
import type { Finding } from '../shop/finding.ts';
import type { MachineOnRecord, PointOnRecord } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';

type Range = PointForecast['hoursLeft'];
type DayRange = PointForecast['dateAtLimit'];

/** Nothing can be said. */
export const NO_RANGE: Range = { low: null, middle: null, high: null };
const NO_DAYS: DayRange = { low: null, middle: null, high: null };

/** What a point's forecast says of when: all that lists, plans and calls go by. */
export type PointOutlook = Omit<PointForecast, 'wearMm' | 'ratePer1000hMm' | 'cautions' | 'cautionFacts'>;

/** All that a point's outlook is put together from. */
export type PointParts = {
  point: PointOnRecord;
  machine: MachineOnRecord | undefined;
  read: { takenOn: Day; machineHours: number } | null;
  series: PartSeries;
  /** how much of its rate is its own, 0 to 1 */
  own: number;
  /** share of the machine's hours in which the part works at present */
  share: number;
  /** null: the machine has no hours on record */
  part: PartAtLimit | null;
  dates: DayRange | null;
  findings: readonly Finding[];
  stopped: boolean;
  pool: { parts: number; machines: number };
  settingsChanged: number;
};

/**
 * One point's outlook as it leaves the core: worked hours turned back into machine hours at the present share. A
 * do-not-use finding at the position takes the place of hours and dates.
 *   hoursLeft = (worked hours at limit - worked hours now) / share
 */
export function pointOutlook(its: PointParts): PointOutlook {
  const { point, series, part, stopped } = its;
  const limit = stopped ? null : (part?.hoursAtLimit ?? null);
  const left = limit === null ? NO_RANGE : hoursLeft(limit, series.workedHoursNow, its.share);
  // a size taken as the part went in says nothing of its rate
  const own = series.ownReadings === 0 ? 0 : its.own;
  return {
    pointId: point.pointId,
    machineId: point.machineId,
    machine: its.machine?.name ?? '',
    assembly: point.assembly,
    item: point.item,
    position: point.position,
    point: point.point,
    partClass: point.partClass,
    safety: point.safety,
    ownReadings: series.ownReadings,
    machineHours: series.machineHoursNow,
    machineHoursRead: its.read?.machineHours ?? null,
    readOn: its.read?.takenOn ?? null,
    partHours: series.partHoursNow,
    limitWearMm: series.renewAtWearMm,
    machineHoursAtLimit: plus(left, series.machineHoursNow),
    hoursLeft: left,
    dateAtLimit: limit === null ? NO_DAYS : (its.dates ?? NO_DAYS),
    chancePastLimit: stopped ? null : (part?.chancePast ?? null),
    pastLimitMm: part?.hoursAtLimit?.pastAtLastSize ? (series.pastLimitMm ?? part.pastLimitMm) : null,
    basis: { own, borrowed: 1 - own },
    decides: decidesOf(point),
    decidingHoursLeft: decidingHours(point, left),
    likeParts: its.pool.parts,
    likeMachines: its.pool.machines,
    settingsChanged: its.settingsChanged,
    openFindings: its.findings.map(({ kind, severity, takenOn, note }) => ({
      finding: kind,
      severity,
      date: takenOn,
      note,
    })),
  };
}

/** The whole forecast: the outlook, with wear and its slope now, and what to be careful of. */
export function pointForecast(
  outlook: PointOutlook,
  { part, share, cautions }: { part: PartForecast | null; share: number; cautions: readonly Caution[] },
): PointForecast {
  const cautionFacts = unique(cautions);
  return {
    ...outlook,
    wearMm: part?.wearMm ?? NO_RANGE,
    ratePer1000hMm: part ? per1000Hours(part.ratePerHourMm, share) : NO_RANGE,
    cautions: cautionFacts.map(({ code }) => code),
    cautionFacts,
  };
}

/** Machine hours left from worked hours at the limit, at the share of the machine's hours in which the part works. */
export function hoursLeft(atLimit: Range, workedHoursNow: number | null, share: number): Range {
  const left = (worked: number | null) =>
    worked === null || workedHoursNow === null || share <= 0 ? null : (worked - workedHoursNow) / share;
  return { low: left(atLimit.low), middle: left(atLimit.middle), high: left(atLimit.high) };
}

const each = (range: Range, change: (value: number) => number): Range => ({
  low: range.low === null ? null : change(range.low),
  middle: range.middle === null ? null : change(range.middle),
  high: range.high === null ? null : change(range.high),
});

/** Of 1000 machine hours, of which the part works in a share. */
export const per1000Hours = (perWorkedHour: Range, share: number): Range =>
  each(perWorkedHour, (value) => value * (1000 * share));

const plus = (range: Range, hours: number | null): Range =>
  hours === null ? NO_RANGE : each(range, (value) => value + hours);

/** Each code once, the first with its facts; in order of the codes, so that the order of rows changes nothing. */
function unique(cautions: readonly Caution[]): { code: string; facts: NonNullable<Caution['facts']> }[] {
  const first = new Map<string, NonNullable<Caution['facts']>>();
  for (const { code, facts } of cautions) if (!first.has(code)) first.set(code, facts ?? {});
  return [...first].map(([code, facts]) => ({ code, facts })).sort((a, b) => (a.code < b.code ? -1 : 1));
}
