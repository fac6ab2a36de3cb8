import { normalScore } from './normal.ts';

const TOLERANCE = 1e-6;
const LONGEST_STEP = 2;
const LEAST_CHANCE = 1e-15;

/**
 * Where a chance that rises with y reaches a target, found on the scale of normal quantiles, on which such chances are
 * nearly straight: secant steps inside the bracket known so far, halving it when they leave it.
 * @param chanceAt rising with y, 0 to 1
 * @param start a guess, and the slope of normalQuantile(chance) there
 * @param most where to stop looking
 * @returns y to 1e-6, and the slope found; null when the chance at `most` is still below the target
 * @source secant method in a bracket: R. P. Brent, Algorithms for Minimization without Derivatives (1973), chapter 4
 */
export function solveProbit(
  chanceAt: (y: number) => number,
  target: number,
  start: { y: number; slope: number },
  most: number,
): { y: number; slope: number } | null {
  const goal = normalScore(target, LEAST_CHANCE);
  let low = Number.NEGATIVE_INFINITY;
  let high = Number.POSITIVE_INFINITY;
  let { slope } = start;
  let y = Math.min(start.y, most);
  let before: { y: number; off: number } | null = null;
  for (let step = 0; step < 100; step++) {
    const off = normalScore(chanceAt(y), LEAST_CHANCE) - goal;
    if (off < 0) {
      if (y >= most) return null;
      low = y;
    } else high = y;
    if (before !== null) {
      const found = (off - before.off) / (y - before.y);
      if (found > 1e-6 && Number.isFinite(found)) slope = found;
    }
    before = { y, off };
    let next = y - Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, off / slope));
    if (Math.abs(next - y) < TOLERANCE || off === 0) return { y: next, slope };
    if (!(next > low && next < high)) {
      if (Number.isFinite(low) && Number.isFinite(high)) next = 0.5 * (low + high);
      else next = Number.isFinite(low) ? low + LONGEST_STEP : high - LONGEST_STEP;
    }
    if (high - low < TOLERANCE) return { y: 0.5 * (low + high), slope };
    y = Math.min(next, most);
  }
  return { y, slope };
}
