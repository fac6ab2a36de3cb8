import type { PartLaw } from '../fit/partLaw.ts';
import { RANGE_CHANCES, type Range } from './wearAt.ts';
import { EARLIEST_SHARE } from './wearLaw.ts';

/**
 * Slope of wear by worked hours at some hours [mm/h]: b g / H (x / H)^(g - 1); low is slow.
 * Below a fiftieth of a typical life the slope is that at a fiftieth: a power below 1 has none at 0 h.
 * @source derivative of the model's mean wear
 */
export function rateAt(law: PartLaw, hours: number): Range {
  const slopes = slopesAt(law, hours).map(({ slope }) => slope);
  const order = slopes.map((_, i) => i).sort((i, j) => slopes[i]! - slopes[j]! || i - j);
  return {
    low: weightedPoint(law.weight, slopes, order, RANGE_CHANCES.low),
    middle: weightedPoint(law.weight, slopes, order, RANGE_CHANCES.middle),
    high: weightedPoint(law.weight, slopes, order, RANGE_CHANCES.high),
  };
}

/** The slope of each node of a law at some worked hours [mm/h], and its weight. */
export function slopesAt(law: PartLaw, hours: number): { weight: number; slope: number }[] {
  const at = Math.max(hours, EARLIEST_SHARE * law.hRefHours) / law.hRefHours;
  const slopeOf = law.shapes.map((shape) => (shape.power / law.hRefHours) * at ** (shape.power - 1));
  return Array.from(law.rate, (b, i) => ({ weight: law.weight[i]!, slope: b * slopeOf[law.shapeOf[i]!]! }));
}

/** Point of a weighted list, each weight centred on its own value and the chance drawn straight between, in ln. */
function weightedPoint(
  weight: Float64Array,
  value: readonly number[],
  order: readonly number[],
  chance: number,
): number {
  let reached = 0;
  let before: { at: number; value: number } | null = null;
  for (const i of order) {
    const at = reached + 0.5 * weight[i]!;
    reached += weight[i]!;
    if (at >= chance) {
      if (before === null || at === before.at) return value[i]!;
      const share = (chance - before.at) / (at - before.at);
      return before.value * (value[i]! / before.value) ** share;
    }
    before = { at, value: value[i]! };
  }
  return before?.value ?? 0;
}
