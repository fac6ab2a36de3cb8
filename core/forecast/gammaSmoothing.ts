import { lnGammaDensity } from '../maths/gamma.ts';
import { normalScore, quickNormalCdf } from '../maths/normal.ts';

/**
 * Averages a chance that rises with hours over gamma-distributed hours, for any mean at once:
 *   G(m) = integral of F(x) gamma(x; shape m/phi, scale phi) dx
 * Equal nodes in ln x for the hours, equal nodes in ln m for the means. The weights depend on phi alone and are worked out
 * once; G then serves every rate and every day, which meet only in m = rate x average days.
 */
export type GammaSmoothing = {
  /** hours at which F is asked for, rising [h] */
  hours: Float64Array;
  rows: readonly Row[];
  /** where F and G of the question in hand stand: one question at a time, nothing allocated for it */
  room: { chances: Float64Array; averages: Float64Array };
};

/** Weights of F at the table's hours from `first` on, and at no hours. */
type Row = { first: number; weights: Float64Array; atZero: number };

const LN_HOURS_STEP = 1 / 32;
const LN_HOURS_FROM = Math.log(0.25);
const LN_HOURS_TO = Math.log(400_000);

const LN_MEAN_STEP = 1 / 24;
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
  const room = { chances: new Float64Array(hours.length), averages: new Float64Array(rows.length) };
  return { hours, rows, room };
}

const steps = (from: number, to: number, step: number): Float64Array =>
  Float64Array.from({ length: Math.floor((to - from) / step) + 1 }, (_, index) => from + index * step);

/** The part of a row that is not negligible. With few jobs expected, mass below the least node is mass at zero hours. */
function bandOf(dense: Float64Array, massBelow: boolean): Row {
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

/**
 * G at any ln m, from F at the table's hours and at 0: straight between the table's means, each worked out when first asked for;
 * below the first it goes straight to F(0) at no hours. Good until the table is asked the next question.
 */
export function smoothed(
  table: GammaSmoothing,
  chanceAt: Float64Array,
  chanceAtZero: number,
): (lnMean: number) => number {
  const values = table.room.averages.fill(Number.NaN);
  const valueAt = (row: number): number => {
    if (Number.isNaN(values[row]!)) values[row] = averaged(table.rows[row]!, chanceAt, chanceAtZero);
    return values[row]!;
  };
  return (lnMean) => {
    const place = (lnMean - LN_MEAN_FROM) / LN_MEAN_STEP;
    if (place <= 0) return chanceAtZero + (valueAt(0) - chanceAtZero) * Math.exp(lnMean - LN_MEAN_FROM);
    const below = Math.min(values.length - 2, Math.floor(place));
    const share = Math.min(1, place - below);
    return valueAt(below) + share * (valueAt(below + 1) - valueAt(below));
  };
}

/** ln of the table's hours at which F first comes to some chance; the last of them where it never does. */
export function lnHoursOf(chances: Float64Array, chance: number): number {
  let low = 0;
  let high = chances.length - 1;
  while (low < high) {
    const half = (low + high) >> 1;
    if (chances[half]! < chance) low = half + 1;
    else high = half;
  }
  return LN_HOURS_FROM + low * LN_HOURS_STEP;
}

function averaged({ first, weights, atZero }: Row, chanceAt: Float64Array, chanceAtZero: number): number {
  // two sums side by side, of which neither waits for the other
  let sum = atZero * chanceAtZero;
  let odd = 0;
  const even = weights.length & ~1;
  for (let index = 0; index < even; index += 2) {
    sum += weights[index]! * chanceAt[first + index]!;
    odd += weights[index + 1]! * chanceAt[first + index + 1]!;
  }
  if (even < weights.length) odd += weights[even]! * chanceAt[first + even]!;
  return sum + odd;
}

/** First asked for at every so many nodes; between nodes so near, and so near in chance, no further. */
const COARSE = 32;
const NEAR = 8;
const NEAR_CHANCE = 0.15;
/** Chances closer than this have nothing between them. */
const FLAT = 5e-5;
/** Chances as near as this to 0 or 1 do not change any more. */
const SETTLED = 1e-9;

/**
 * F at the table's hours, asked for at some of them. A chance is nearly straight in normal quantiles over ln hours: between those
 * asked for it runs on that scale along a cubic that rises with them: slopes of the parabola through three, three times a secant at most.
 * @returns in the table's room
 * @source F. N. Fritsch and R. E. Carlson, "Monotone piecewise cubic interpolation", SIAM Journal on Numerical Analysis 17 (1980)
 */
export function tabulate(table: GammaSmoothing, chancePastBy: (hours: number) => number): Float64Array {
  const { hours } = table;
  const { chances } = table.room;
  const last = hours.length - 1;
  chances[0] = chancePastBy(hours[0]!);
  const from = lastAtFirst(chances, hours, chancePastBy);
  chances.fill(chances[0]!, 1, from + 1);
  const asked: number[] = [from];
  const halve = (low: number, high: number): void => {
    const rise = chances[high]! - chances[low]!;
    if (high - low < 2 || rise <= FLAT || (high - low <= NEAR && rise <= NEAR_CHANCE)) return;
    const half = (low + high) >> 1;
    chances[half] = chancePastBy(hours[half]!);
    halve(low, half);
    asked.push(half);
    halve(half, high);
  };
  for (let low = from; low < last; low += COARSE) {
    const high = Math.min(last, low + COARSE);
    chances[high] = chances[low]! > 1 - SETTLED ? chances[low]! : chancePastBy(hours[high]!);
    halve(low, high);
    asked.push(high);
  }
  fillBetween(chances, asked);
  return chances;
}

/** A node, by whole coarse steps the last one found, by which the chance is still that of the first. */
function lastAtFirst(chances: Float64Array, hours: Float64Array, chancePastBy: (hours: number) => number): number {
  let low = 0;
  let high = Math.ceil((hours.length - 1) / COARSE);
  while (high - low > 1) {
    const half = (low + high) >> 1;
    if (chancePastBy(hours[half * COARSE]!) - chances[0]! < SETTLED) low = half;
    else high = half;
  }
  return low * COARSE;
}

/** Chances beyond this of 0 and 1 are told apart no more. */
const SURE = 1e-12;

function fillBetween(chances: Float64Array, asked: readonly number[]): void {
  const scores = asked.map((at) => normalScore(chances[at]!, SURE));
  const last = asked.length - 1;
  const width = (k: number) => asked[k + 1]! - asked[k]!;
  const secant = (k: number) => (scores[k + 1]! - scores[k]!) / width(k);
  const slopeAt = (k: number): number => {
    if (k === 0 || k === last) return secant(Math.min(k, last - 1));
    const parabola = width(k) * secant(k - 1) + width(k - 1) * secant(k);
    return Math.min(parabola / (width(k - 1) + width(k)), 3 * secant(k - 1), 3 * secant(k));
  };
  let slopeTo = slopeAt(0);
  for (let k = 0; k < last; k++) {
    const from = asked[k]!;
    const to = asked[k + 1]!;
    const slopeFrom = slopeTo;
    slopeTo = slopeAt(k + 1);
    if (chances[to]! - chances[from]! <= FLAT) fillStraight(chances, from, to);
    else fillCubic(chances, from, to, scores[k]!, scores[k + 1]!, slopeFrom, slopeTo);
  }
}

function fillStraight(chances: Float64Array, from: number, to: number): void {
  const rise = (chances[to]! - chances[from]!) / (to - from);
  for (let at = from + 1; at < to; at++) chances[at] = chances[from]! + (at - from) * rise;
}

function fillCubic(
  chances: Float64Array,
  from: number,
  to: number,
  scoreFrom: number,
  scoreTo: number,
  slopeFrom: number,
  slopeTo: number,
): void {
  const width = to - from;
  for (let at = from + 1; at < to; at++) {
    const x = (at - from) / width;
    const y = 1 - x;
    const cubic =
      y * y * (1 + 2 * x) * scoreFrom + x * x * (1 + 2 * y) * scoreTo + x * y * width * (y * slopeFrom - x * slopeTo);
    chances[at] = quickNormalCdf(cubic);
  }
}
