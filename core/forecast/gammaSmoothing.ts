import { lnGammaDensity } from '../maths/gamma.ts';

/**
 * Averages a chance that rises with hours over gamma-distributed hours, for any mean at once:
 *   G(m) = integral of F(x) gamma(x; shape m/phi, scale phi) dx
 * Equal nodes in ln x for the hours, equal nodes in ln m for the means. The weights depend on phi alone and are worked out
 * once; G then serves every rate and every day, which meet only in m = rate x average days.
 */
export type GammaSmoothing = {
  /** hours at which F is asked for, rising [h] */
  hours: Float64Array;
  rows: readonly { first: number; weights: Float64Array; atZero: number }[];
};

const LN_HOURS_STEP = 1 / 32;
const LN_HOURS_FROM = Math.log(0.25);
const LN_HOURS_TO = Math.log(400_000);

export const LN_MEAN_STEP = 1 / 24;
const LN_MEAN_FROM = Math.log(0.5);
const LN_MEAN_TO = Math.log(200_000);

/** Weights below this share of a row's greatest are left out. */
const NEGLIGIBLE = 1e-10;

/**
 * Weights of the trapezium sum in ln x, normalised; what lies below the least node counts as no hours at all.
 * @source own derivation: trapezium rule on a smooth bell
 * @checked core/forecast/dateAtLimit.test.ts against brute-force integration
 */
export function gammaSmoothing(jobHours: number): GammaSmoothing {
  const hours = steps(LN_HOURS_FROM, LN_HOURS_TO, LN_HOURS_STEP).map(Math.exp);
  const rows = Array.from(steps(LN_MEAN_FROM, LN_MEAN_TO, LN_MEAN_STEP), (lnMean) => {
    const shape = Math.exp(lnMean) / jobHours;
    const dense = hours.map((x) => Math.exp(lnGammaDensity(x, shape, jobHours)) * x * LN_HOURS_STEP);
    return bandOf(dense, shape < 2);
  });
  return { hours, rows };
}

const steps = (from: number, to: number, step: number): Float64Array =>
  Float64Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, index) => from + index * step);

/** The part of a row that is not negligible. With few jobs expected, mass below the least node is mass at zero hours. */
function bandOf(dense: Float64Array, massBelow: boolean): GammaSmoothing['rows'][number] {
  let top = 0;
  for (const weight of dense) top = Math.max(top, weight);
  const first = dense.findIndex((weight) => weight > NEGLIGIBLE * top);
  const last = dense.findLastIndex((weight) => weight > NEGLIGIBLE * top);
  const weights = dense.slice(first, last + 1);
  let sum = 0;
  for (const weight of weights) sum += weight;
  const atZero = massBelow ? Math.max(0, 1 - sum) : 0;
  const scale = (1 - atZero) / sum;
  return { first, weights: weights.map((weight) => weight * scale), atZero };
}

/** G at the means of the table, from F at its hours and at 0. */
export function smoothed(table: GammaSmoothing, chanceAt: Float64Array, chanceAtZero: number): Float64Array {
  return Float64Array.from(table.rows, ({ first, weights, atZero }) => {
    let sum = atZero * chanceAtZero;
    for (let index = 0; index < weights.length; index++) sum += weights[index]! * chanceAt[first + index]!;
    return sum;
  });
}

/** G at any ln m: straight between the table's means; below the first it goes straight to F(0) at no hours. */
export function smoothedAt(values: Float64Array, chanceAtZero: number, lnMean: number): number {
  const place = (lnMean - LN_MEAN_FROM) / LN_MEAN_STEP;
  if (place <= 0) return chanceAtZero + (values[0]! - chanceAtZero) * Math.exp(lnMean - LN_MEAN_FROM);
  const below = Math.min(values.length - 2, Math.floor(place));
  const share = Math.min(1, place - below);
  return values[below]! + share * (values[below + 1]! - values[below]!);
}

/** Two nodes closer in chance than this have straight chances between them. */
const STRAIGHT_BELOW = 0.004;

/** First asked for at every so many nodes. */
const COARSE = 8;

/** F at the table's hours, asked for only where it rises: halving until neighbours are close. */
export function tabulate(table: GammaSmoothing, chancePastBy: (hours: number) => number): Float64Array {
  const { hours } = table;
  const chances = new Float64Array(hours.length);
  const fill = (low: number, high: number): void => {
    if (high - low < 2) return;
    const rise = chances[high]! - chances[low]!;
    if (rise <= STRAIGHT_BELOW) {
      for (let at = low + 1; at < high; at++) chances[at] = chances[low]! + (rise * (at - low)) / (high - low);
      return;
    }
    const half = (low + high) >> 1;
    chances[half] = chancePastBy(hours[half]!);
    fill(low, half);
    fill(half, high);
  };
  chances[0] = chancePastBy(hours[0]!);
  for (let low = 0; low < hours.length - 1; low += COARSE) {
    const high = Math.min(hours.length - 1, low + COARSE);
    chances[high] = chances[low]! > 1 - 1e-9 ? chances[low]! : chancePastBy(hours[high]!);
    fill(low, high);
  }
  return chances;
}
