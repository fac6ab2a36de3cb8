import type { PinJoint } from './pinJoint.ts';

/**
 * Mean shear of a pin cut on two planes.
 *   tau = F / (2 pi d^2 / 4)
 * @returns [MPa]
 * @source knuckle joint, in any machine-design text
 * @checked tests/reference/pin-joint/pinJoint.test.ts
 */
export const doubleShearMpa = (forceN: number, pinMm: number): number => forceN / ((2 * Math.PI * pinMm ** 2) / 4);

/**
 * Bending moment of the pin: plates press evenly on it, gaps make it longer between them.
 *   M = F / 8 (b + 4 c + 2 a); b eye, a each fork plate, c gap
 * @returns [N mm]
 * @source EN 1993-1-8, Figure 3.11
 * @checked tests/reference/pin-joint/pinJoint.test.ts
 */
export const pinMomentNmm = (forceN: number, { eye, fork, gapEachSideMm }: PinJoint): number =>
  (forceN / 8) * (eye.thicknessMm + 4 * gapEachSideMm + 2 * fork.thicknessMm);

/**
 * Bending moment of the pin as textbooks have it, for lugs so stiff that the load gathers at their edges; knows no gap.
 *   M = F / 2 (t1 / 3 + t / 4); t eye, t1 each fork plate
 * @returns [N mm]
 * @source knuckle joint, in any machine-design text
 * @checked tests/reference/pin-joint/pinJoint.test.ts
 */
export const pinMomentStiffLugsNmm = (forceN: number, { eye, fork }: PinJoint): number =>
  (forceN / 2) * (fork.thicknessMm / 3 + eye.thicknessMm / 4);

/**
 * Bending stress at the skin of a round pin.
 *   sigma = 32 M / (pi d^3)
 * @returns [MPa]
 * @source elastic bending of a round bar, in any machine-design text
 * @checked tests/reference/pin-joint/pinJoint.test.ts
 */
export const pinBendingMpa = (momentNmm: number, pinMm: number): number => (32 * momentNmm) / (Math.PI * pinMm ** 3);
