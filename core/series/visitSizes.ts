import type { PointLife, Size, WearsWay } from '../shop/measuringPoint.ts';

/** What one station of a point gave in a visit: its repeats averaged. */
export type StationSize = {
  station: string;
  sizeMm: number;
  /** 1 sd [mm] */
  errorSdMm: number;
  repeats: number;
  /** questioned and not answered: shown, not used */
  parked: boolean;
  /** of a piece since renewed by itself: shown, says nothing of the present part */
  replaced?: boolean;
  sizeIds: readonly number[];
};

/** Stations that speak for the part. */
export const speaking = (stations: readonly StationSize[]): readonly StationSize[] =>
  stations.every(speaks) ? stations : stations.filter(speaks);

const speaks = ({ parked, replaced }: StationSize): boolean => !parked && !replaced;

/** A gauge error of 0 would make a size a certainty; nobody measures a worn part closer than this (1 sd) [mm]. Common practice, no source. */
export const LEAST_ERROR_SD_MM = 0.002;

/**
 * Averages the repeats of each station; parked sizes stay apart, each on its own.
 *   sd = sqrt(sum of gauge sd^2 / k^2 + step^2 / 12),   which is sqrt(gauge sd^2 / k + step^2 / 12) with one gauge
 * The rounding to the gauge's step is common to the repeats and does not average out.
 *
 * @source own derivation: variance of a mean; a value rounded to a step is uniform within it
 * @returns sorted by station
 */
export function averageStations(point: Pick<PointLife, 'gaugeErrorMm'>, sizes: readonly Size[]): StationSize[] {
  if (sizes.length === 1) return [averageRepeats(point, sizes)];
  const groups = new Map<string, Size[]>();
  for (const size of sizes) {
    const key = size.parked ? `${size.station}\n${size.id}` : size.station;
    groups.set(key, [...(groups.get(key) ?? []), size]);
  }
  return [...groups.values()].map((group) => averageRepeats(point, group)).sort(byStation);
}

const byStation = (a: StationSize, b: StationSize): number =>
  a.station < b.station ? -1 : a.station > b.station ? 1 : 0;

function averageRepeats(point: Pick<PointLife, 'gaugeErrorMm'>, repeats: readonly Size[]): StationSize {
  const k = repeats.length;
  let sum = 0;
  let gaugeVariance = 0;
  let step = 0;
  for (const size of repeats) {
    sum += size.sizeMm;
    gaugeVariance += (size.gaugeErrorMm ?? point.gaugeErrorMm) ** 2;
    step = Math.max(step, size.gaugeStepMm);
  }
  return {
    station: repeats[0]!.station,
    sizeMm: sum / k,
    errorSdMm: Math.max(LEAST_ERROR_SD_MM, Math.sqrt(gaugeVariance / k ** 2 + step ** 2 / 12)),
    repeats: k,
    parked: repeats[0]!.parked,
    sizeIds: repeats.map(({ id }) => id),
  };
}

/**
 * Wear of a size: how far it has gone from new in the direction the part wears.
 *   strip, pin: new size - size;   bore, slack: size - new size
 * @returns wear [mm]; negative when the part is better than new
 */
export const wearOf = (wears: WearsWay, newSizeMm: number, sizeMm: number): number =>
  wears === 'down' ? newSizeMm - sizeMm : sizeMm - newSizeMm;

/** The size that some wear leaves: the inverse of {@link wearOf}. */
export const sizeOf = (wears: WearsWay, newSizeMm: number, wearMm: number): number =>
  wears === 'down' ? newSizeMm - wearMm : newSizeMm + wearMm;

/** The station worn most; undefined when there is none. */
export function worstStation(wears: WearsWay, stations: readonly StationSize[]): StationSize | undefined {
  let worst: StationSize | undefined;
  for (const station of stations) {
    if (!worst || wearOf(wears, worst.sizeMm, station.sizeMm) > 0) worst = station;
  }
  return worst;
}

/**
 * Which stations a part's series rests on, visit by visit.
 * While no visit lacks a station that was read before, each visit speaks by all it has. Once one does, only stations
 * common to all visits count, so that a change of station is not taken for wear. Without a common one each visit speaks by
 * what it has.
 *
 * @param visits usable stations of each visit, in order of time
 */
export function usedStations(visits: readonly (readonly string[])[]): {
  common: ReadonlySet<string> | null;
  missing: boolean;
} {
  const first = visits[0]?.[0];
  if (visits.every((stations) => stations.length === 1 && stations[0] === first))
    return { common: null, missing: false };
  const read = new Set<string>();
  let missing = false;
  for (const stations of visits) {
    if ([...read].some((station) => !stations.includes(station))) missing = true;
    for (const station of stations) read.add(station);
  }
  if (!missing) return { common: null, missing };
  const common = new Set([...read].filter((station) => visits.every((stations) => stations.includes(station))));
  return { common: common.size > 0 ? common : null, missing };
}
