import { type Sourced, sourced } from '../howKnown.ts';

const PRACTICE = 'common practice, no source';

/** What a shop leaves standing about a hole it opens; each shop may set its own. */
export const SHOP_RULES = {
  /** wall of the boss: not under this share of the bore, nor this many mm, whichever is more */
  bossWallShareOfBore: sourced(0.3, 'common-practice', PRACTICE),
  bossWallLeastMm: sourced(8, 'common-practice', PRACTICE),
  /** wall of a bush: not under this share of its bore, nor this many mm */
  bushWallShareOfBore: sourced(0.05, 'common-practice', PRACTICE),
  bushWallLeastMm: sourced(3, 'common-practice', PRACTICE),
  /** from the edge of the hole to the end of the lug, as a share of the bore */
  endLigamentShareOfBore: sourced(0.9, 'common-practice', PRACTICE),
  /** a hole is opened this many times, then bushed back */
  oversizesAtMost: sourced(2, 'common-practice', PRACTICE),
} as const satisfies Record<string, Sourced<number>>;

/**
 * Least wall of a boss about a bore.
 *   wall = max(0.3 bore, 8 mm)
 * @source common practice, no source
 */
export const leastBossWallMm = (boreMm: number): number =>
  Math.max(SHOP_RULES.bossWallShareOfBore.value * boreMm, SHOP_RULES.bossWallLeastMm.value);

/**
 * Least wall of a bush.
 *   wall = max(0.05 bore, 3 mm)
 * @source common practice, no source
 */
export const leastBushWallMm = (bushBoreMm: number): number =>
  Math.max(SHOP_RULES.bushWallShareOfBore.value * bushBoreMm, SHOP_RULES.bushWallLeastMm.value);

/**
 * Least from the edge of a hole to the end of its lug.
 *   ligament = 0.9 bore
 * @source common practice, no source
 */
export const leastEndLigamentMm = (boreMm: number): number => SHOP_RULES.endLigamentShareOfBore.value * boreMm;
