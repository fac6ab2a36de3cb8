/**
 * Thinnest wall of a boss after boring.
 *   wall = (boss outside - bored) / 2 - shift - how far the hole stood off the boss's middle already
 *
 * @returns [mm]; 0 or less: the bore breaks through
 * @source own derivation: two circles, one inside the other
 * @checked tests/reference/bore-clean-up/cleanUpBore.test.ts
 * @example wallLeftMm({ bossOutsideMm: 90, boredMm: 51.2, shiftMm: 0.6, offMiddleMm: 0 }) // 18.8
 */
export const wallLeftMm = (of: {
  bossOutsideMm: number;
  boredMm: number;
  shiftMm: number;
  offMiddleMm: number;
}): number => (of.bossOutsideMm - of.boredMm) / 2 - of.shiftMm - of.offMiddleMm;

/**
 * Wall of a bush between the bored hole and the standard size.
 *   wall = (bored - standard) / 2
 * @returns [mm]
 * @source own derivation
 * @example bushWallMm(47, 40) // 3.5
 */
export const bushWallMm = (boredMm: number, standardMm: number): number => (boredMm - standardMm) / 2;

/**
 * Metal between a bored hole and the end or edge of a plate.
 *   left = centre to edge - shift towards the edge - bored / 2
 * @returns [mm]
 * @source own derivation
 * @example edgeLeftMm({ centreToEdgeMm: 60, boredMm: 41.6, shiftMm: 0.6 }) // 38.6
 */
export const edgeLeftMm = (of: { centreToEdgeMm: number; boredMm: number; shiftMm: number }): number =>
  of.centreToEdgeMm - of.shiftMm - of.boredMm / 2;
