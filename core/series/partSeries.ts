import type { Caution } from '../outcome.ts';
import { limitsOn } from '../shop/limitsOn.ts';
import type { PointLife, PointLimits, RenewalKind } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';
import {
  clockOn,
  type MachineOnLine,
  machineOfClock,
  type PartClock,
  partClock,
  presentMachineHours,
} from './partClock.ts';
import {
  type AxisOf,
  type LastByStation,
  type LastSize,
  lastByStationOf,
  lastSizeOf,
  type PartRenewal,
  type PartVisit,
  readingsOf,
  visitsOfPart,
} from './partVisits.ts';
import {
  middle,
  newSizeTolOf,
  type PartWalk,
  packedMm,
  type Start,
  sinceStartSd,
  startSd,
  USUAL_NEW_SIZE_TOL_MM,
  walkParts,
} from './partWalk.ts';
import { speaking, wearOf, worstStation } from './visitSizes.ts';
import type { WearSeries } from './wearSeries.ts';

/** Machine id of a part that has never sat on a machine. */
export const NO_MACHINE_ID = 0;

/** All parts that sat at one measuring point, up to a day: what the fit, the forecast and the wear chart start from. */
export type PartSeries = {
  finished: readonly WearSeries[];
  present: WearSeries;
  /** when the present part went in, on the axis of the present machine [h]; null: no hours on record */
  presentStartMachineHours: { hours: number; sdHours: number } | null;
  /** the size its wear is counted from [mm] */
  presentNewSizeMm: number;
  /** where it sits, or sat last; null: never on a machine */
  machineId: number | null;
  /** hours of that machine at the as-of day; on the shelf: when it left [h]; null: no hours on record */
  machineHoursNow: number | null;
  /** machine hours while fitted, and worked hours, at the as-of day [h]; null: no hours on record */
  partHoursNow: number | null;
  workedHoursNow: number | null;
  /** 1 sd of workedHoursNow: the start, and what has run since the last reading [h] */
  workedHoursNowSd: number | null;
  /** in force at the as-of day */
  limits: PointLimits;
  /** wear of the present part at renew-at and reject-at [mm]; null: no limit, or one better than new */
  renewAtWearMm: number | null;
  rejectAtWearMm: number | null;
  /** how far past renew-at it was at its last size [mm]; null unless it was */
  pastLimitMm: number | null;
  /** of the present part */
  lastSize: LastSize | null;
  lastByStation: LastByStation;
  /** visits with a usable size of the present part; as-left at 0 h not counted */
  ownReadings: number;
  /** every visit of every part, in order of time */
  history: readonly PartVisit[];
  renewals: readonly PartRenewal[];
  /** packing put in since the present part went in: worked hours then, and how much [mm] */
  shims: readonly { takenOn: Day; workedHours: number | null; shimMm: number }[];
  /** of the first part on record: the size its wear is counted from [mm], and when it went in, on the axis of the present machine [h] */
  firstNewSizeMm: number;
  firstStartAxisHours: number | null;
  /** stations renewed by themselves since, and when */
  stationRenewals: readonly { station: string; takenOn: Day; kind: RenewalKind }[];
  cautions: readonly Caution[];
};

/**
 * Turns a measuring point's sizes, renewals and moves into the wear series of its parts.
 *  - a renewal starts a new series at 0 h; as-found sizes of that day end the old one, as-left ones are the reading at 0 h
 *  - a renewal at unknown hours lies evenly between the previous size and its day: start in the middle, sd = width / sqrt(12)
 *  - a first part fitted at unknown hours lies evenly between 0 and its first size
 *  - as-found and as-left of one day without a renewal are repeats of one reading
 *  - hours follow the part through its moves; the shelf adds none; worked hours follow the shares of the machines
 *  - one of several stations renewed: what was read there before says nothing of the present part; the worst of all governs
 *  - a strip turned over starts again from the thickness that was left
 *  - packing takes up slack and brings back no metal: wear counts on through it, and the limit is as much further off
 *  - parked sizes, and sizes without hours, are shown and not used
 *
 * @param point the point, whole
 * @param lines machines it sat on, by id; each line as of the same day
 * @param asOf last day looked at
 * @param classNewSizeTolMm tolerance width of the class, for points that give none [mm]
 * @param clock where it has been, for points that went together
 * @source own derivation: variance of an even spread, width^2 / 12
 */
export function partSeries(
  point: PointLife,
  lines: ReadonlyMap<number, MachineOnLine>,
  asOf: Day,
  classNewSizeTolMm: number | null = null,
  clock: PartClock = partClock(point.sittings, lines, asOf),
): PartSeries {
  const parts = walkParts(point, clock, classNewSizeTolMm);
  const now = clockOn(clock, asOf, null);
  const machineHoursNow = presentMachineHours(clock);
  const axisOf: AxisOf = (at) =>
    at && now && machineHoursNow !== null ? machineHoursNow - (now.runHours - at.runHours) : null;
  const built = parts.map((part, index) => {
    const endedOn = parts[index + 1]?.renewal?.takenOn ?? null;
    const machineId = machineOfClock(clock, endedOn ?? asOf) ?? NO_MACHINE_ID;
    const found = visitsOfPart(point, part, axisOf);
    const series: WearSeries = {
      pointId: point.pointId,
      ordinal: part.ordinal,
      machineId,
      partClass: point.partClass,
      // the whole width read as 95 %; a size measured is no size made to a tolerance
      newSizeSdMm: part.startMeasuredSdMm ?? newSizeTolOf(part.startLimits, classNewSizeTolMm) / 4,
      startHoursSd: part.start ? startSd(part.start) : 0,
      present: endedOn === null,
      // a measured start is the series' zero itself, not a reading of it besides
      readings: readingsOf(found.visits.filter(({ atZero }) => !atZero || part.startMeasuredSdMm === null)),
    };
    return { part, series, ...found };
  });
  const present = built.at(-1)!;
  const { newSizeMm, start } = present.part;
  const limits = limitsOn(point, asOf);
  const shimMm = packedMm(present.part);
  const renewAtWearMm = wearAtLimit(point, newSizeMm, limits.renewAtMm, shimMm);
  const lastSize = lastSizeOf(present.visits);
  const past = lastSize && renewAtWearMm !== null ? lastSize.wearMm - renewAtWearMm : 0;
  return {
    finished: built.slice(0, -1).map(({ series }) => series),
    present: present.series,
    presentStartMachineHours: start && startOnAxis(start, axisOf),
    presentNewSizeMm: newSizeMm,
    machineId: machineOfClock(clock, asOf),
    machineHoursNow,
    partHoursNow: start && now ? Math.max(0, now.runHours - middle(start).runHours) : null,
    workedHoursNow: start && now ? Math.max(0, now.workedHours - middle(start).workedHours) : null,
    workedHoursNowSd: start && now ? Math.hypot(present.series.startHoursSd, sinceStartSd(start, now)) : null,
    limits,
    renewAtWearMm,
    rejectAtWearMm: wearAtLimit(point, newSizeMm, limits.rejectAtMm, shimMm),
    pastLimitMm: past > 0 ? past : null,
    lastSize,
    lastByStation: lastByStationOf(present.visits),
    ownReadings: present.visits.filter(({ governing, atZero }) => governing && !atZero).length,
    history: built.flatMap(({ visits }) => visits),
    renewals: built.flatMap(({ part }) => renewalOnAxis(part, axisOf)),
    firstNewSizeMm: parts[0]!.newSizeMm,
    firstStartAxisHours: parts[0]!.start ? (startOnAxis(parts[0]!.start, axisOf)?.hours ?? null) : null,
    shims: present.part.shims.map(({ at, takenOn, shimMm: put }) => ({
      takenOn,
      workedHours: at && start ? Math.max(0, at.workedHours - middle(start).workedHours) : null,
      shimMm: put,
    })),
    stationRenewals: [...present.part.pieces].map(([station, { renewal }]) => ({
      station,
      takenOn: renewal.takenOn,
      kind: renewal.kind ?? 'new-part',
    })),
    cautions: cautionsOf(point, present, limits, classNewSizeTolMm),
  };
}

/** Packing takes up slack: as much more may be lost until the same slack is there again. */
function wearAtLimit(point: PointLife, newSizeMm: number, limitMm: number | null, shimMm: number): number | null {
  if (limitMm === null) return null;
  const wearMm = wearOf(point.wears, newSizeMm, limitMm) + shimMm;
  return wearMm > 0 ? wearMm : null;
}

function startOnAxis(start: Start, axisOf: AxisOf): { hours: number; sdHours: number } | null {
  const low = axisOf(start.from);
  const high = axisOf(start.to);
  if (low === null || high === null) return null;
  return { hours: (low + high) / 2, sdHours: Math.sqrt((high - low) ** 2 / 12 + start.from.ownVariance) };
}

function renewalOnAxis({ renewal, start, ordinal, newSizeMm }: PartWalk, axisOf: AxisOf): PartRenewal[] {
  if (!renewal) return [];
  const low = axisOf(start?.from ?? null);
  const high = axisOf(start?.to ?? null);
  const axisHours = low === null || high === null ? null : { low, middle: (low + high) / 2, high };
  return [
    {
      renewalId: renewal.id,
      takenOn: renewal.takenOn,
      ordinal,
      hoursKnown: renewal.hoursKnown,
      kind: renewal.kind ?? 'new-part',
      stamped: renewal.stamped ?? null,
      axisHours,
      newSizeMm,
    },
  ];
}

type BuiltPart = { part: PartWalk } & ReturnType<typeof visitsOfPart>;

/** What to say about the present part: its hours, its visits, its limits. */
function cautionsOf(
  point: PointLife,
  built: BuiltPart,
  limits: PointLimits,
  classNewSizeTolMm: number | null,
): Caution[] {
  const { part, visits, missing, common } = built;
  const cautions: Caution[] = part.looks.flatMap(({ at }) => (at?.caution ? [at.caution] : []));
  for (const { excluded, takenOn, event } of visits) {
    const code = event === 'renewed' && excluded === 'parked' ? 'put-in-size-not-used' : `size-${excluded}`;
    if (excluded) cautions.push({ code, facts: { takenOn, newSizeMm: part.newSizeMm } });
  }
  if (missing) cautions.push(stationsMissing(point, visits, common));
  if (part.start && part.start.from !== part.start.to) {
    const hours = part.start.to.runHours - part.start.from.runHours;
    cautions.push({
      code: part.renewal ? 'renewed-at-unknown-hours' : 'fitted-at-unknown-hours',
      facts: { withinHours: hours },
    });
  }
  if (part.newSizeMm !== part.startLimits.newSizeMm) {
    cautions.push({
      code:
        part.renewal?.kind === 'turned' ? 'turned-over' : part.renewal?.carriesOn ? 'slack-carries-on' : 'odd-new-size',
      facts: { sizeMm: part.newSizeMm, newSizeMm: part.startLimits.newSizeMm, renewAtMm: limits.renewAtMm },
    });
  }
  if (!limits.newSizeTolMm && !classNewSizeTolMm) {
    cautions.push({ code: 'new-size-tolerance-not-known', facts: { takenAsMm: USUAL_NEW_SIZE_TOL_MM } });
  }
  for (const [limit, limitMm] of [
    ['renew-at', limits.renewAtMm],
    ['reject-at', limits.rejectAtMm],
  ] as const) {
    if (limitMm !== null && wearAtLimit(point, part.newSizeMm, limitMm, packedMm(part)) === null) {
      cautions.push({ code: 'limit-better-than-new', facts: { limit, limitMm, newSizeMm: part.newSizeMm } });
    }
  }
  return cautions;
}

/** Which stations the series rests on, and how much worse the worst one left out was at the last visit. */
function stationsMissing(point: PointLife, visits: readonly PartVisit[], common: ReadonlySet<string> | null): Caution {
  if (!common) return { code: 'no-common-station', facts: {} };
  const last = visits.findLast(({ governing, atZero }) => governing && !atZero);
  const worst = worstStation(point.wears, speaking(last?.stations ?? []));
  const leftOut = worst && last?.governing && !common.has(worst.station) ? worst : null;
  return {
    code: 'stations-missing',
    facts: {
      stations: [...common].sort().join(', '),
      worstLeftOut: leftOut?.station ?? null,
      worseByMm: leftOut ? wearOf(point.wears, last!.governing!.sizeMm, leftOut.sizeMm) : null,
    },
  };
}
