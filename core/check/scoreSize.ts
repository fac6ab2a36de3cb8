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
  const came = wearOf(told.wears, told.newSizeMm, sizeMm);
  const sd = Math.hypot(errorSdMm, told.visitErrorMm);
  const cdf = (x: number) => smoothedCdf(x, wearMm, told.chances, sd);
  const from = wearMm[0]! - 6 * sd;
  const to = wearMm.at(-1)! + 6 * sd;
  const at = (chance: number) => solveRising(cdf, chance, from, to, cdf(from), cdf(to), 1e-9);
  const [least, middle, most] = [at(EDGE_CHANCE), at(0.5), at(1 - EDGE_CHANCE)];
  const pit = cdf(came);
  const sizeAt = (wear: number) => sizeOf(told.wears, told.newSizeMm, wear);
  const naive = naiveWearMm(told, workedHours);
  return {
    pit,
    z: normalQuantile(Math.min(1 - 1e-9, Math.max(1e-9, pit))),
    inside: pit >= EDGE_CHANCE && pit <= 1 - EDGE_CHANCE,
    leastWornMm: sizeAt(least),
    middleMm: sizeAt(middle),
    mostWornMm: sizeAt(most),
    moreWornMm: came - middle,
    widthMm: most - least,
    crpsMm: crps(cdf, from, to, came),
    naiveCrpsMm: naive === null ? null : Math.abs(came - naive),
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
  for (let k = 1; k < quantiles.length; k++) {
    const [a, b] = [quantiles[k - 1]!, quantiles[k]!];
    const p = chances[k]! - chances[k - 1]!;
    below +=
      b - a > 1e-6 * sd ? ((p * sd) / (b - a)) * (psi((x - a) / sd) - psi((x - b) / sd)) : p * normalCdf((x - a) / sd);
  }
  return below / (chances.at(-1)! - chances[0]!);
}

/** The line a rule and a pencil would draw: from new through the last size, carried on; null: it was never read. */
const naiveWearMm = ({ last }: Foretold, workedHours: number): number | null =>
  last && last.workedHours > 0 ? (last.wearMm * workedHours) / last.workedHours : null;
