import type { WearSeries } from '../series/wearSeries.ts';

/** The figures of a class: what is common to all its parts. */
export type ClassFigures = {
  /** scatter of ln rate between like parts on one machine (op) */
  partScatter: number;
  /** scatter of a path over one typical life, as a share of the wear (c) */
  pathScatter: number;
  /** power of time (g); 1 is even wear */
  power: number;
  /** scatter of ln rate between machines (om); 0: none told apart */
  machineScatter: number;
  /** 1 sd of the error all sizes of one visit share [mm] (sv); 0: none told apart */
  visitErrorMm: number;
  /** the slice of the class's mean ln rate (mu) that is looked at: where its middle lies; absent: all of it */
  lnRate?: number;
};

/**
 * One series as the fit works on it: its numbers in typed arrays, its times at the figures in hand,
 * and its site: what its readings say of z = (u, the errors of its shared visits), as precision x mean and precision.
 */
export type PartSite = {
  readonly series: WearSeries;
  readonly n: number;
  readonly hours: Float64Array;
  readonly wearMm: Float64Array;
  readonly errorVar: Float64Array;
  readonly hoursVar: Float64Array;
  readonly newSizeVar: number;
  readonly startHoursVar: number;
  /** for each reading: which of the part's shared visits, counted from 1 as in z; 0: nobody shares it */
  readonly ownVisit: Int32Array;
  /** for each entry of z: its place among the block's unknowns */
  readonly place: Int32Array;
  /** unknowns in z: 1 + shared visits */
  readonly d: number;
  /** at the figures in hand: (h / H)^g, its slope by h, and the variance of a reading */
  readonly t: Float64Array;
  readonly slope: Float64Array;
  readonly noiseVar: Float64Array;
  /** mean slope of model time over one typical life [1/h] */
  lifeSlope: number;
  /** site: precision (d x d) and shift (d); may be negative */
  readonly precision: Float64Array;
  readonly shift: Float64Array;
  /** ln of the site's height */
  lnScale: number;
  /** last bell of ln rate; sd 0: not looked yet */
  bellMean: number;
  bellSd: number;
};

/**
 * @param place places among the block's unknowns of the visits the part shares; without entry 0, which is u
 * @param ownVisit for each reading, 1 + index into `place`, 0: a visit of its own
 */
export function partSite(series: WearSeries, place: readonly number[], ownVisit: readonly number[]): PartSite {
  const { readings } = series;
  const n = readings.length;
  const d = 1 + place.length;
  const part: PartSite = {
    series,
    n,
    hours: new Float64Array(n),
    wearMm: new Float64Array(n),
    errorVar: new Float64Array(n),
    hoursVar: new Float64Array(n),
    newSizeVar: series.newSizeSdMm ** 2,
    startHoursVar: series.startHoursSd ** 2,
    ownVisit: new Int32Array(ownVisit),
    place: new Int32Array(d),
    d,
    t: new Float64Array(n),
    slope: new Float64Array(n),
    noiseVar: new Float64Array(n),
    lifeSlope: 0,
    precision: new Float64Array(d * d),
    shift: new Float64Array(d),
    lnScale: 0,
    bellMean: 0,
    bellSd: 0,
  };
  for (let j = 0; j < n; j++) {
    const { workedHours, workedHoursSd, wearMm, errorSdMm } = readings[j]!;
    part.hours[j] = workedHours;
    part.wearMm[j] = wearMm;
    part.errorVar[j] = errorSdMm ** 2;
    part.hoursVar[j] = workedHoursSd ** 2;
  }
  for (let own = 1; own < d; own++) part.place[own] = place[own - 1]!;
  return part;
}

/** Model time (h / H)^g at worked hours h. */
export const modelTime = (hours: number, hRefHours: number, power: number): number =>
  hours <= 0 ? 0 : power === 1 ? hours / hRefHours : Math.exp(power * Math.log(hours / hRefHours));

/**
 * Model time and its slope, where the hours' own doubt counts.
 * At 0 h a power below 1 has no slope; there the slope is that at one sd of the doubt.
 */
export function setTimes(part: PartSite, hRefHours: number, figures: ClassFigures): void {
  const { power } = figures;
  part.lifeSlope = 1 / hRefHours;
  const visitVar = figures.visitErrorMm ** 2;
  for (let j = 0; j < part.n; j++) {
    const h = part.hours[j]!;
    const doubt = part.hoursVar[j]! + part.startHoursVar;
    part.t[j] = modelTime(h, hRefHours, power);
    part.slope[j] =
      doubt === 0 ? 0 : (power / hRefHours) * (Math.max(h, Math.sqrt(doubt), 1) / hRefHours) ** (power - 1);
    part.noiseVar[j] = part.errorVar[j]! + (part.ownVisit[j] === 0 ? visitVar : 0);
  }
}

/** Forget what was learned: the site says nothing, the bell has not been looked for. */
export function clearSite(part: PartSite): void {
  part.precision.fill(0);
  part.shift.fill(0);
  part.lnScale = 0;
  part.bellSd = 0;
}
