import { limitsAsFound, limitsOn } from '../shop/limitsOn.ts';
import type { PointLife, PointLimits, RenewalKind } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';
import type { ClockAt } from './partClock.ts';
import { type Look, middle, type PartWalk, sinceStartSd } from './partWalk.ts';
import { type StationSize, speaking, usedStations, wearOf, worstStation } from './visitSizes.ts';
import type { WearReading } from './wearSeries.ts';

/** Why a visit is shown and not used. */
export type VisitExclusion = 'parked' | 'no-hours' | 'before-fitted' | 'station-renewed' | 'worked-out';

/** One look at a point, for the wear chart and the table under it. */
export type PartVisit = {
  takenOn: Day;
  /** which part it was: 0 is the first on record */
  ordinal: number;
  event: Look['event'];
  /** of this visit alone: taken as the part went in, at 0 h */
  atZero: boolean;
  machineId: number | null;
  /** of the machine it then sat on [h] */
  machineHours: number | null;
  /** place on the hours axis of the present machine: on one machine since new the same as machineHours [h] */
  axisHours: number | null;
  /** machine hours while fitted, and worked hours [h] */
  partHours: number | null;
  workedHours: number | null;
  /** 1 sd of the worked hours, beyond the doubt about the start [h] */
  workedHoursSd: number | null;
  stations: readonly StationSize[];
  /** the worst of the stations the series rests on; null when the visit is not used */
  governing: { station: string; sizeMm: number; wearMm: number; errorSdMm: number } | null;
  excluded: VisitExclusion | null;
  /** the limits it was judged by */
  limits: PointLimits;
  /** of a slack: worked out from pin and bore, not measured itself */
  workedOut?: boolean;
};

/** A renewal on the hours axis of the present machine; low and high are equal when its hours are known. */
export type PartRenewal = {
  renewalId: number;
  takenOn: Day;
  /** the part that came in */
  ordinal: number;
  hoursKnown: boolean;
  kind: RenewalKind;
  stamped: boolean | null;
  /** null: no hours on record */
  axisHours: { low: number; middle: number; high: number } | null;
  newSizeMm: number;
};

export type LastSize = {
  takenOn: Day;
  sizeMm: number;
  wearMm: number;
  errorSdMm: number;
  partHours: number;
  workedHours: number;
  axisHours: number | null;
};

/** Place of a moment on the hours axis of the present machine [h]; null: no hours on record. */
export type AxisOf = (at: ClockAt | null) => number | null;

/** A look with what of it speaks for the part. */
type Judged = { look: Look; sound: readonly StationSize[]; excluded: VisitExclusion | null };

function judged(part: PartWalk, look: Look): Judged {
  const sound = speaking(look.stations);
  return { look, sound, excluded: whyNotUsed(part, look, sound) };
}

/** A day's own looseness: a size dated on the day its part was fitted may come out a few hours early [h]. */
const SAME_DAY_HOURS = 24;

function whyNotUsed(part: PartWalk, look: Look, sound: readonly StationSize[]): VisitExclusion | null {
  if (sound.length === 0)
    return look.stations.some(({ parked, replaced }) => replaced && !parked) ? 'station-renewed' : 'parked';
  if (!look.at || !part.start) return 'no-hours';
  const slack = SAME_DAY_HOURS + 3 * sinceStartSd(part.start, look.at);
  return look.at.runHours < middle(part.start).runHours - slack ? 'before-fitted' : null;
}

/** A part's looks with their hours and the station that governs; and whether stations were missing. */
export function visitsOfPart(
  point: PointLife,
  part: PartWalk,
  axisOf: AxisOf,
): { visits: PartVisit[]; missing: boolean; common: ReadonlySet<string> | null } {
  const looks = part.looks.map((look) => judged(part, look));
  const aged = looks.filter(({ look, excluded }) => !look.atZero && !look.ofPiece && excluded === null);
  const { common, missing } = usedStations(aged.map(({ sound }) => sound.map(({ station }) => station)));
  return { visits: looks.map((one) => visitOf(point, part, one, common, axisOf)), missing, common };
}

function visitOf(
  point: PointLife,
  part: PartWalk,
  { look, sound, excluded }: Judged,
  common: ReadonlySet<string> | null,
  axisOf: AxisOf,
): PartVisit {
  const hours = hoursOf(part, look);
  const shared = common ? sound.filter(({ station }) => common.has(station)) : sound;
  const isReading = excluded === null && !look.ofPiece;
  const worst = isReading ? worstStation(point.wears, shared.length > 0 ? shared : sound) : undefined;
  return {
    takenOn: look.takenOn,
    ordinal: part.ordinal,
    event: look.event,
    atZero: look.atZero,
    machineId: look.at?.machineId ?? null,
    machineHours: look.at?.machineHours ?? null,
    axisHours: axisOf(look.at),
    partHours: hours?.partHours ?? null,
    workedHours: hours?.workedHours ?? null,
    workedHoursSd: hours?.workedHoursSd ?? null,
    stations: look.stations,
    governing: worst
      ? {
          station: worst.station,
          sizeMm: worst.sizeMm,
          wearMm: wearOf(point.wears, part.newSizeMm, worst.sizeMm) + look.shimMm,
          errorSdMm: worst.errorSdMm,
        }
      : null,
    excluded,
    limits: (look.event === 'as-found' ? limitsAsFound : limitsOn)(point, look.takenOn),
  };
}

type LookHours = { partHours: number; workedHours: number; workedHoursSd: number };

function hoursOf(part: PartWalk, look: Look): LookHours | null {
  if (!look.at || !part.start) return null;
  if (look.atZero) return { partHours: 0, workedHours: 0, workedHoursSd: 0 };
  const start = middle(part.start);
  return {
    partHours: Math.max(0, look.at.runHours - start.runHours),
    workedHours: Math.max(0, look.at.workedHours - start.workedHours),
    workedHoursSd: sinceStartSd(part.start, look.at),
  };
}

/** The readings the wear model is fitted to: the used visits, by worked hours. */
export function readingsOf(visits: readonly PartVisit[]): WearReading[] {
  const readings: WearReading[] = [];
  for (const { governing, workedHours, workedHoursSd, machineId, takenOn } of visits) {
    if (!governing || workedHours === null) continue;
    const { wearMm, errorSdMm } = governing;
    const visit = `${machineId ?? 'shelf'}@${takenOn}`;
    readings.push({ workedHours, workedHoursSd: workedHoursSd ?? 0, wearMm, errorSdMm, visit, takenOn });
  }
  return readings.sort((a, b) => a.workedHours - b.workedHours);
}

/** The last used visit. */
export function lastSizeOf(visits: readonly PartVisit[]): LastSize | null {
  const last = visits.findLast(({ governing }) => governing !== null);
  if (!last?.governing) return null;
  const { sizeMm, wearMm, errorSdMm } = last.governing;
  const { takenOn, axisHours } = last;
  return { takenOn, sizeMm, wearMm, errorSdMm, partHours: last.partHours!, workedHours: last.workedHours!, axisHours };
}

export type LastByStation = Readonly<Record<string, { sizeMm: number; errorSdMm: number; takenOn: Day }>>;

/** The last size read at each station of a part; parked ones left out. */
export function lastByStationOf(visits: readonly PartVisit[]): LastByStation {
  const last: Record<string, { sizeMm: number; errorSdMm: number; takenOn: Day }> = {};
  for (const { stations, takenOn } of visits) {
    for (const { station, sizeMm, errorSdMm } of speaking(stations)) {
      last[station] = { sizeMm, errorSdMm, takenOn };
    }
  }
  return last;
}
