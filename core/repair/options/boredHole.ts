import type { LimitsOfSize } from '../../iso286/limitsOfSize.ts';
import type { CleanUp } from '../clean-up/cleanUpBore.ts';
import type { BoredTo } from './wornJoint.ts';

/** Where a hole may be bored: about the old centre, and about a better one where the joint allows it. */
export type Centre = { centre: 'old' | 'shifted'; boreMm: number; shiftMm: number; toward: BoredTo['toward'] };

/** The centres that may be used, the one that needs the smaller bore first. */
export function centresOf({ onOldCentre, withinLimit }: CleanUp): [Centre, ...Centre[]] {
  const old: Centre = { centre: 'old', boreMm: onOldCentre.boreMm, shiftMm: 0, toward: [] };
  if (!withinLimit || withinLimit.boreMm >= onOldCentre.boreMm) return [old];
  const { boreMm, shiftMm, toward } = withinLimit;
  return [{ centre: 'shifted', boreMm, shiftMm, toward }, old];
}

/**
 * The next size up in steps.
 * @source own derivation; a dust of a hundredth of a micrometre is no step
 * @example steppedUpMm(41.66, 0.5) // 42
 */
export const steppedUpMm = (sizeMm: number, stepMm: number): number =>
  Number((Math.ceil(sizeMm / stepMm - 1e-5) * stepMm).toFixed(4));

export const boredTo = (limits: LimitsOfSize, { centre, shiftMm, toward }: Centre): BoredTo => ({
  nominalMm: limits.nominalMm,
  toleranceClass: limits.toleranceClass,
  largestMm: limits.largestMm,
  smallestMm: limits.smallestMm,
  ...{ centre, shiftMm, toward },
});
