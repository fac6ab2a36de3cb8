/**
 * How much further a worn hole reaches at an angle from the way it wore, when a pin smaller than the hole sank in.
 *   growth = max(0, s cos phi + sqrt(r^2 - s^2 sin^2 phi) - R0),  s = w + R0 - r
 * A pin as large as the hole: near enough w |cos phi| (see {@link growthFirstOrder}).
 *
 * @param of the new hole, how far it wore, the pin [mm] and the angle [deg]
 * @returns [mm], 0 or more
 * @source own derivation: reach of a circle of radius r about a centre moved by s
 * @checked tests/reference/bore-clean-up/cleanUpBore.test.ts
 * @example growthAtAngle({ newBoreMm: 50, wearMm: 1.2, pinMm: 49.6, angleDeg: 45 }) // 0.7702
 */
export function growthAtAngle(of: { newBoreMm: number; wearMm: number; pinMm: number; angleDeg: number }): number {
  const [bigR, r] = [of.newBoreMm / 2, of.pinMm / 2];
  const s = of.wearMm + bigR - r;
  const angle = (of.angleDeg * Math.PI) / 180;
  const under = r * r - (s * Math.sin(angle)) ** 2;
  // the pin's circle does not reach this way at all
  if (under < 0) return 0;
  return Math.max(0, s * Math.cos(angle) + Math.sqrt(under) - bigR);
}

/**
 * What a two-point gauge reads over the new size, at an angle from the way the hole wore.
 *   read = w |cos phi|
 *
 * @returns [mm]
 * @source own derivation: first order in w over the radius, pin as large as the hole
 * @checked tests/reference/bore-clean-up/cleanUpBore.test.ts
 * @example growthFirstOrder(1.2, 45) // 0.849
 */
export const growthFirstOrder = (wearMm: number, angleDeg: number): number =>
  wearMm * Math.abs(Math.cos((angleDeg * Math.PI) / 180));
