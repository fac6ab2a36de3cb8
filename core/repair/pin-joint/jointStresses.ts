import { type Outcome, ok, refuse } from '../../outcome.ts';
import { bearingMpa, netTensionMpa, tearOutMpa } from './lugStress.ts';
import type { Lug, PinJoint } from './pinJoint.ts';
import { doubleShearMpa, pinBendingMpa, pinMomentNmm } from './pinStress.ts';

/** Every figure a repaired joint is compared by, the pin's first. */
export const JOINT_FIGURES = [
  'pin-shear',
  'pin-bending',
  'eye-bearing',
  'eye-net-tension',
  'eye-tear-out',
  'fork-bearing',
  'fork-net-tension',
  'fork-tear-out',
] as const;
export type JointFigure = (typeof JOINT_FIGURES)[number];
export type JointStresses = Readonly<Record<JointFigure, number>>;

/**
 * Mean stresses of a pin joint under one force [MPa]. The eye carries all of it, each fork plate half.
 *
 * @param forceN [N]; stresses are in proportion to it
 * @refuses pin-joint-size (a size that is not over 0, or a gap under 0), pin-joint-no-ligament (a hole as wide as its lug or past its
 *   end); each names the part
 * @checked tests/reference/pin-joint/pinJoint.test.ts
 */
export function jointStresses(joint: PinJoint, forceN: number): Outcome<JointStresses> {
  const { pinMm, eye, fork, gapEachSideMm } = joint;
  if (!(pinMm > 0 && gapEachSideMm >= 0 && forceN > 0))
    return refuse({ code: 'pin-joint-size', facts: { part: 'pin' } });
  for (const [part, lug] of [
    ['eye', eye],
    ['fork', fork],
  ] as const) {
    if (![lug.boreMm, lug.thicknessMm, lug.widthMm, lug.endMm].every((mm) => mm > 0))
      return refuse({ code: 'pin-joint-size', facts: { part } });
    if (lug.widthMm <= lug.boreMm || lug.endMm <= lug.boreMm / 2)
      return refuse({
        code: 'pin-joint-no-ligament',
        facts: { part, boreMm: lug.boreMm, widthMm: lug.widthMm, endMm: lug.endMm },
      });
  }
  const lugStresses = (lug: Lug, lugForceN: number) => ({
    bearing: bearingMpa(lugForceN, pinMm, lug.thicknessMm),
    netTension: netTensionMpa(lugForceN, lug),
    tearOut: tearOutMpa(lugForceN, lug),
  });
  const [ofEye, ofFork] = [lugStresses(eye, forceN), lugStresses(fork, forceN / 2)];
  return ok({
    'pin-shear': doubleShearMpa(forceN, pinMm),
    'pin-bending': pinBendingMpa(pinMomentNmm(forceN, joint), pinMm),
    'eye-bearing': ofEye.bearing,
    'eye-net-tension': ofEye.netTension,
    'eye-tear-out': ofEye.tearOut,
    'fork-bearing': ofFork.bearing,
    'fork-net-tension': ofFork.netTension,
    'fork-tear-out': ofFork.tearOut,
  });
}
