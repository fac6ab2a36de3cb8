import { type Sourced, sourced } from '../howKnown.ts';
import type { Lug, PinJoint } from './pinJoint.ts';
import { pinMomentNmm } from './pinStress.ts';

/**
 * Partial factors of the structural rules; a country's annex may say otherwise.
 */
export const PARTIAL_FACTORS: Sourced<{ m0: number; m2: number; m6Ser: number }> = sourced(
  { m0: 1, m2: 1.25, m6Ser: 1 },
  'from-memory',
  'EN 1993-1-1 and EN 1993-1-8, recommended values; from memory',
);
export type PartialFactors = { m0: number; m2: number; m6Ser: number };

/** What the steel stands. */
export type JointSteel = {
  pinYieldMpa: number;
  pinUltimateMpa: number;
  /** of the weaker of pin and plate, as bearing goes by it */
  lugYieldMpa: number;
};

/** Resistances of a pin and what of them a force uses up; 1 is all. */
export type PinResistance = {
  shearN: number;
  bearingEyeN: number;
  bearingForkN: number;
  momentNmm: number;
  shearUse: number;
  bearingUse: number;
  momentUse: number;
  combinedUse: number;
};

/**
 * Resistance of a pin by the structural rules.
 *   Fv = 0.6 A fup / gM2 on each plane;  Fb = 1.5 t d fy / gM0;  M = 1.5 Wel fyp / gM0;  (M / MRd)^2 + (V / VRd)^2 <= 1
 * A pin that must come out again has less, as serviceability says: Fb <= 0.6 t d fy / gM6,ser; M <= 0.8 Wel fyp / gM6,ser.
 * Rules for new structures, shown beside the comparison with the drawing; their safety for pins was questioned in 2023.
 *
 * @param comesOut true: the pin has to be drawn again (nearly every pin of a machine)
 * @source EN 1993-1-8, Table 3.10
 * @checked tests/reference/pin-joint/pinJoint.test.ts
 */
export function pinResistance(
  joint: PinJoint,
  forceN: number,
  steel: JointSteel,
  comesOut: boolean,
  factors: PartialFactors = PARTIAL_FACTORS.value,
): PinResistance {
  const { pinMm, eye, fork } = joint;
  const areaMm2 = (Math.PI * pinMm ** 2) / 4;
  const sectionMm3 = (Math.PI * pinMm ** 3) / 32;
  const bearingN = (thicknessMm: number) => {
    const holdN = thicknessMm * pinMm * steel.lugYieldMpa;
    const strengthN = (1.5 * holdN) / factors.m0;
    return comesOut ? Math.min(strengthN, (0.6 * holdN) / factors.m6Ser) : strengthN;
  };
  const strengthNmm = (1.5 * sectionMm3 * steel.pinYieldMpa) / factors.m0;
  const momentNmm = comesOut
    ? Math.min(strengthNmm, (0.8 * sectionMm3 * steel.pinYieldMpa) / factors.m6Ser)
    : strengthNmm;
  const shearN = (0.6 * areaMm2 * steel.pinUltimateMpa) / factors.m2;
  const [bearingEyeN, bearingForkN] = [bearingN(eye.thicknessMm), bearingN(fork.thicknessMm)];
  const shearUse = forceN / 2 / shearN;
  const momentUse = pinMomentNmm(forceN, joint) / momentNmm;
  const bearingUse = Math.max(forceN / bearingEyeN, forceN / 2 / bearingForkN);
  return {
    ...{ shearN, bearingEyeN, bearingForkN, momentNmm, shearUse, bearingUse, momentUse },
    // bending with shear is a matter of strength: the full moment resistance stands in it
    combinedUse: (pinMomentNmm(forceN, joint) / strengthNmm) ** 2 + shearUse ** 2,
  };
}

/** What is left of a lug past and beside the hole, and what the rules want for a force. */
export type LugLigaments = {
  endMm: number;
  endWantedMm: number;
  sideMm: number;
  sideWantedMm: number;
  wideEnough: boolean;
};

/**
 * Ligaments of a lug of given thickness (type A of the rules).
 *   past the hole a >= F gM0 / (2 t fy) + 2 d0 / 3;  beside it c >= F gM0 / (2 t fy) + d0 / 3
 * Opening the hole raises what is wanted and uses up what is there.
 *
 * @param forceN carried by this one lug [N]
 * @source EN 1993-1-8, Table 3.9, type A
 * @checked tests/reference/pin-joint/pinJoint.test.ts
 */
export function lugLigaments(
  lug: Lug,
  forceN: number,
  lugYieldMpa: number,
  m0 = PARTIAL_FACTORS.value.m0,
): LugLigaments {
  const forLoadMm = (forceN * m0) / (2 * lug.thicknessMm * lugYieldMpa);
  const endWantedMm = forLoadMm + (2 * lug.boreMm) / 3;
  const sideWantedMm = forLoadMm + lug.boreMm / 3;
  const endMm = lug.endMm - lug.boreMm / 2;
  const sideMm = (lug.widthMm - lug.boreMm) / 2;
  return { endMm, endWantedMm, sideMm, sideWantedMm, wideEnough: endMm >= endWantedMm && sideMm >= sideWantedMm };
}

/** The least a lug of full proportions (type B of the rules) measures. */
export type LugProportions = { thicknessMm: number; boreUpToMm: number; widthMm: number; endMm: number };

/**
 * Proportions of a lug shaped about its hole (type B of the rules).
 *   t >= 0.7 sqrt(F gM0 / fy);  d0 <= 2.5 t;  width 2.5 d0;  end 1.6 d0
 * @param forceN carried by this one lug [N]
 * @source EN 1993-1-8, Table 3.9, type B; from where its end is measured: from memory, the middle of the hole
 * @checked tests/reference/pin-joint/pinJoint.test.ts
 */
export function lugProportions(
  { boreMm, thicknessMm }: Lug,
  forceN: number,
  lugYieldMpa: number,
  m0 = PARTIAL_FACTORS.value.m0,
): LugProportions {
  return {
    thicknessMm: 0.7 * Math.sqrt((forceN * m0) / lugYieldMpa),
    boreUpToMm: 2.5 * thicknessMm,
    widthMm: 2.5 * boreMm,
    endMm: 1.6 * boreMm,
  };
}

/**
 * Contact stress of a loose pin in its hole, for a pin that must come out again; wanted at most 2.5 fy / gM6,ser.
 *   sigma = 0.591 sqrt(E F (d0 - d) / (d^2 t))
 * @param forceN carried by this one lug [N]
 * @returns [MPa]; 0 without clearance
 * @source EN 1993-1-8, 3.13.2 (4)
 * @checked tests/reference/pin-joint/pinJoint.test.ts
 */
export const contactStressMpa = (forceN: number, pinMm: number, lug: Lug, youngsMpa = 210_000): number =>
  0.591 * Math.sqrt((youngsMpa * forceN * Math.max(0, lug.boreMm - pinMm)) / (pinMm ** 2 * lug.thicknessMm));
