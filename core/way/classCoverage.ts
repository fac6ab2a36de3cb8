import { normalQuantile } from '../maths/normal.ts';
import type { ScoredSize } from './scoredSizes.ts';

/** How often sizes of a class came out within the 80 % range that would have been foretold for them. Plain data. */
export type ClassCoverage = {
  partClass: string;
  /** sizes scored, and how many lay within */
  sizes: number;
  inside: number;
  /** how far the share inside is from 80 %, in sd of chance; positive: too many inside */
  z: number;
  /** how many times as wide the parts' laws would have had to be for 80 % to lie within; 1: wide enough */
  widenBy: number;
};

/** What is said to hold 80 in 100. */
const SAID_SHARE = 0.8;

/** Wider than this a range says nothing (common practice, no source). */
const MOST_WIDENED = 3;

/**
 * How a class's ranges did. Sizes of one visit stand or fall together, so chance is reckoned visit by visit:
 *   var(share) = max(0.8 x 0.2 / n, sum over visits of (sum of (inside - 0.8))^2 / n^2)
 *
 * @source own derivation; variance by clusters: K.-Y. Liang and S. L. Zeger, "Longitudinal data analysis using
 *   generalized linear models", Biometrika 73 (1986)
 */
export const classCoverage = (scored: readonly ScoredSize[]): ClassCoverage[] =>
  [...Map.groupBy(scored, ({ partClass }) => partClass)]
    .map(([partClass, sizes]) => ({ partClass, ...coverageOf(sizes), widenBy: widenBy(sizes) }))
    .sort((a, b) => (a.partClass < b.partClass ? -1 : 1));

/** How many lay within, and how far that is from what is said, in sd of chance. */
export function coverageOf(sizes: readonly Pick<ScoredSize, 'machineId' | 'takenOn' | 'inside'>[]) {
  const inside = sizes.filter((size) => size.inside).length;
  const visits = Map.groupBy(sizes, ({ machineId, takenOn }) => `${machineId}@${takenOn}`);
  const square = [...visits.values()].reduce(
    (sum, own) => sum + (own.filter((size) => size.inside).length - SAID_SHARE * own.length) ** 2,
    0,
  );
  const n = sizes.length;
  const sd = Math.sqrt(Math.max((SAID_SHARE * (1 - SAID_SHARE)) / n, square / n ** 2));
  return { sizes: n, inside, z: (inside / n - SAID_SHARE) / sd };
}

const EDGE_Z = normalQuantile(0.5 + SAID_SHARE / 2);

/**
 * The least factor on the spread of wear with which 80 % of the sizes lie within their ranges, the errors of looking left as
 * they are:
 *   a size lies within when |z| sqrt(wear^2 + error^2) <= 1.28 sqrt(f^2 wear^2 + error^2)
 * so each has its own least f, and the factor is the 80 % point of those.
 * @source own derivation, each range taken for a normal of the same sd
 */
function widenBy(scored: readonly ScoredSize[]): number {
  const needed = scored
    .map(({ z, wearSdMm, errorSdMm }) => {
      if (Math.abs(z) <= EDGE_Z) return 1;
      const reach = (z / EDGE_Z) ** 2 * (wearSdMm ** 2 + errorSdMm ** 2) - errorSdMm ** 2;
      return wearSdMm > 0 ? Math.sqrt(reach) / wearSdMm : MOST_WIDENED;
    })
    .sort((a, b) => a - b);
  const at = needed[Math.max(0, Math.ceil(SAID_SHARE * needed.length) - 1)] ?? 1;
  return Math.min(MOST_WIDENED, Math.max(1, at));
}
