import type { Lug } from './pinJoint.ts';

/**
 * Mean tension in what is left of a lug beside the hole.
 *   sigma = F / ((width - bore) t)
 * @param forceN carried by this one lug [N]
 * @returns [MPa]
 * @source knuckle joint, in any machine-design text
 * @checked tests/reference/pin-joint/pinJoint.test.ts
 */
export const netTensionMpa = (forceN: number, { widthMm, boreMm, thicknessMm }: Lug): number =>
  forceN / ((widthMm - boreMm) * thicknessMm);

/**
 * Mean shear on the two planes along which the pin would tear out of a lug.
 *   tau = F / (2 (end - bore / 2) t); in a round boss F / ((D - d) t)
 * @param forceN carried by this one lug [N]
 * @returns [MPa]
 * @source knuckle joint, in any machine-design text
 * @checked tests/reference/pin-joint/pinJoint.test.ts
 */
export const tearOutMpa = (forceN: number, { endMm, boreMm, thicknessMm }: Lug): number =>
  forceN / (2 * (endMm - boreMm / 2) * thicknessMm);

/**
 * Mean pressure of the pin on a lug.
 *   p = F / (d t)
 * @param forceN carried by this one lug [N]
 * @returns [MPa]
 * @source knuckle joint, in any machine-design text
 * @checked tests/reference/pin-joint/pinJoint.test.ts
 */
export const bearingMpa = (forceN: number, pinMm: number, thicknessMm: number): number =>
  forceN / (pinMm * thicknessMm);
