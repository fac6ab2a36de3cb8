import { crps } from '../maths/crps.ts';
import { normalCdf, normalDensity, normalQuantile } from '../maths/normal.ts';
import { solveRising } from '../maths/solveRising.ts';
import { sizeOf, wearOf } from '../series/visitSizes.ts';
import type { Foretold } from './foretold.ts';

/** A size that came in: what a forecast is laid against. */
export type Measured = {
  /** worked hours of the part since its renewal [h] */
  workedHours: number;
  sizeMm: number;
  /** 1 sd of the size, its gauge and repeats [mm] */
  errorSdMm: number;
};

export type SizeScore = {
  /** chance that was given to a size less worn than this one: evenly spread if forecasts are right */
  pit: number;
  /** the same as sd of a standard normal; positive: more worn than expected */
  z: number;
  /** within the 80 % range */
  inside: boolean;
  /** 10, 50 and 90 % points of the size a gauge would have shown [mm]; low is the least worn */
  leastWornMm: number;
  middleMm: number;
  mostWornMm: number;
  /** how much more worn it came out than the middle [mm] */
  moreWornMm: number;
  /** from least to most worn [mm] */
  widthMm: number;
  crpsMm: number;
  /** of the line through new and the last size, carried on; null: never read before, so there is no line */
  naiveCrpsMm: number | null;
};

const EDGE_CHANCE = 0.1;

/**
 * Scores what was foretold of a size against the size that came, at the hours at which it was taken. The wear foretold there
 * lies between that of the hours kept on either side; the look's own error is laid on top of it.
 * @returns null: measured at hours that were not spoken for
 */
export function scoreSize(told: Foretold, { workedHours, sizeMm, errorSdMm }: Measured): SizeScore | null {
  const wearMm = wearForetoldAt(told, workedHours);
  if (!wearMm) return null;
  const sd = Math.hypot(errorSdMm, told.visitErrorMm);
  const score = scoreWear({
    cdf: (x) => smoothedCdf(x, wearMm, told.chances, sd),
    from: wearMm[0]! - 6 * sd,
    to: wearMm.at(-1)! + 6 * sd,
    cameMm: wearOf(told.wears, told.newSizeMm, sizeMm),
    naiveMm: naiveWearMm(told.last, workedHours),
  });
  const sizeAt = (wear: number) => sizeOf(told.wears, told.newSizeMm, wear);
  const { leastWornMm, middleMm, mostWornMm, ...rest } = score;
  return {
    ...rest,
    leastWornMm: sizeAt(leastWornMm),
    middleMm: sizeAt(middleMm),
    mostWornMm: sizeAt(mostWornMm),
  };
}

/** The wear a look was to show, and what it showed [mm]. */
export type WearCame = {
  /** chance that it shows less than x */
  cdf: (x: number) => number;
  /** where there is no chance worth speaking of below and above */
  from: number;
  to: number;
  cameMm: number;
  naiveMm: number | null;
};

/** The same of wear alone: least, middle and most worn are wear [mm]. */
export function scoreWear({ cdf, from, to, cameMm, naiveMm }: WearCame): SizeScore {
  const at = (chance: number) => solveRising(cdf, chance, from, to, cdf(from), cdf(to), 1e-6);
  const [leastWornMm, middleMm, mostWornMm] = [at(EDGE_CHANCE), at(0.5), at(1 - EDGE_CHANCE)];
  const pit = cdf(cameMm);
  return {
    pit,
    z: normalQuantile(Math.min(1 - 1e-9, Math.max(1e-9, pit))),
    inside: pit >= EDGE_CHANCE && pit <= 1 - EDGE_CHANCE,
    leastWornMm,
    middleMm,
    mostWornMm,
    moreWornMm: cameMm - middleMm,
    widthMm: mostWornMm - leastWornMm,
    crpsMm: crps(cdf, from, to, cameMm),
    naiveCrpsMm: naiveMm === null ? null : Math.abs(cameMm - naiveMm),
  };
}

/** The wear quantiles at some hours, straight between the hours kept; null: outside them. */
export function wearForetoldAt({ hours, wearMm }: Foretold, at: number): number[] | null {
  const next = hours.findIndex((one) => one >= at);
  if (next < 0 || at < hours[0]!) return null;
  if (next === 0) return [...wearMm[0]!];
  const share = (at - hours[next - 1]!) / (hours[next]! - hours[next - 1]!);
  return wearMm[next - 1]!.map((wear, k) => wear + share * (wearMm[next]![k]! - wear));
}

/**
 * Chance that a reading lies below x, where true wear is spread evenly between its quantiles and the look adds a normal error:
 *   F(x) = sum of p_k s / (b - a) (psi((x - a) / s) - psi((x - b) / s)),   psi(z) = z Phi(z) + phi(z)
 * Ends are cut off at the first and last quantile.
 * @param sd of the look [mm]; above 0
 * @source own derivation: a uniform law convolved with a normal
 */
export function smoothedCdf(x: number, quantiles: readonly number[], chances: readonly number[], sd: number): number {
  const psi = (z: number) => z * normalCdf(z) + normalDensity(z);
  let below = 0;
  let last = psi((x - quantiles[0]!) / sd);
  for (let k = 1; k < quantiles.length; k++) {
    const [a, b] = [quantiles[k - 1]!, quantiles[k]!];
    const p = chances[k]! - chances[k - 1]!;
    const next = psi((x - b) / sd);
    below += b - a > 1e-6 * sd ? ((p * sd) / (b - a)) * (last - next) : p * normalCdf((x - a) / sd);
    last = next;
  }
  return below / (chances.at(-1)! - chances[0]!);
}

/** The line a rule and a pencil would draw: from new through the last size, carried on; null: it was never read. */
export const naiveWearMm = (last: Foretold['last'], workedHours: number): number | null =>
  last && last.workedHours > 0 ? (last.wearMm * workedHours) / last.workedHours : null;
