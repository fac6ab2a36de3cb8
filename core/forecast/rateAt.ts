import type { PartLaw } from '../fit/partLaw.ts';
import { solveRising } from '../maths/solveRising.ts';
import { RANGE_CHANCES, type Range } from './wearAt.ts';
import { EARLIEST_SHARE } from './wearLaw.ts';

/**
 * Slope of wear by worked hours at some hours [mm/h]: b g / H (x / H)^(g - 1); low is slow.
 * Below a fiftieth of a typical life the slope is that at a fiftieth: a power below 1 has none at 0 h.
 * @source derivative of the model's mean wear
 */
export function rateAt(law: PartLaw, hours: number): Range {
  const spread = spreadEvenly(law, hours);
  const point = (chance: number): number => {
    const below = (lnSlope: number) => chanceBelow(spread, lnSlope);
    return Math.exp(solveRising(below, chance, spread.from, spread.to, 0, 1, FINE));
  };
  return { low: point(RANGE_CHANCES.low), middle: point(RANGE_CHANCES.middle), high: point(RANGE_CHANCES.high) };
}

const FINE = 1e-6;

/** ln slopes as bands: the lower edge of each, one over its width, and its weight. */
type Bands = { lower: Float64Array; perWidth: Float64Array; weight: Float64Array; from: number; to: number };

/**
 * The nodes of one shape stand at equal steps of ln rate. Each is spread evenly over its step, which would add a twelfth of the
 * step's square to their variance: the nodes are drawn together about their mean by so much.
 */
function spreadEvenly(law: PartLaw, hours: number): Bands {
  const { weight, shapeOf, shapes } = law;
  const count = weight.length;
  const bands = { lower: new Float64Array(count), perWidth: new Float64Array(count), weight };
  const lnSlopes = slopesAt(law, hours).map(Math.log);
  let from = Number.POSITIVE_INFINITY;
  let to = Number.NEGATIVE_INFINITY;
  for (let first = 0; first < count; ) {
    let end = first;
    const shape = shapes[shapeOf[first]!]!;
    let [sum, mean, square] = [0, 0, 0];
    for (; end < count && shapes[shapeOf[end]!] === shape; end++) {
      sum += weight[end]!;
      mean += weight[end]! * lnSlopes[end]!;
    }
    mean /= sum;
    for (let i = first; i < end; i++) square += weight[i]! * (lnSlopes[i]! - mean) ** 2;
    const step = end - first > 1 ? (lnSlopes[end - 1]! - lnSlopes[first]!) / (end - first - 1) : LEAST_STEP;
    const drawn = Math.sqrt(Math.max(0, 1 - (step * step * sum) / (12 * square || 1)));
    for (let i = first; i < end; i++) {
      bands.lower[i] = mean + drawn * (lnSlopes[i]! - mean) - 0.5 * step;
      bands.perWidth[i] = 1 / step;
    }
    from = Math.min(from, bands.lower[first]!);
    to = Math.max(to, bands.lower[end - 1]! + step);
    first = end;
  }
  return { ...bands, from, to };
}

/** A rate known for sure is a band of this width. */
const LEAST_STEP = 1e-9;

function chanceBelow({ lower, perWidth, weight }: Bands, lnSlope: number): number {
  let chance = 0;
  for (let i = 0; i < weight.length; i++) {
    const share = (lnSlope - lower[i]!) * perWidth[i]!;
    if (share > 0) chance += share < 1 ? weight[i]! * share : weight[i]!;
  }
  return chance;
}

/** The slope of each node of a law at some worked hours [mm/h]. */
export function slopesAt(law: PartLaw, hours: number): Float64Array {
  const { rate, shapes, shapeOf, hRefHours } = law;
  const at = Math.max(hours, EARLIEST_SHARE * hRefHours) / hRefHours;
  const slopeOf = shapes.map(({ power }) => (power / hRefHours) * at ** (power - 1));
  const slopes = new Float64Array(rate.length);
  for (let i = 0; i < rate.length; i++) slopes[i] = rate[i]! * slopeOf[shapeOf[i]!]!;
  return slopes;
}
