import { type IsoFit, isoFit } from '../../iso286/isoFit.ts';
import { type LimitsOfSize, limitsOfSize } from '../../iso286/limitsOfSize.ts';
import { type Outcome, ok } from '../../outcome.ts';
import { fitForRepair, type RepairFit } from '../fit-for-repair/fitForRepair.ts';
import type { FitInPlace, SpanMm } from './repairOption.ts';
import type { WornJoint } from './wornJoint.ts';

/** A hole and a new pin of one nominal size in the fit their use has. */
export type RunningFit = { hole: LimitsOfSize; pin: LimitsOfSize; fit: IsoFit };

/**
 * The fit of the joint's use at a nominal size.
 * @refuses what isoFit refuses
 */
export function runningFit(use: WornJoint['use'], nominalMm: number): Outcome<RunningFit> {
  const { hole, shaft } = fitForRepair(use, nominalMm);
  const fit = isoFit(nominalMm, hole, shaft);
  return fit.ok ? ok({ hole: fit.value.hole, pin: fit.value.shaft, fit: fit.value }) : fit;
}

export const inPlace = (fit: IsoFit): FitInPlace => ({
  classes: `${fit.hole.toleranceClass}/${fit.shaft.toleranceClass}`,
  kind: fit.kind,
  feel: fit.feel,
  clearanceMm: { low: fit.leastClearanceUm / 1000, high: fit.mostClearanceUm / 1000 },
});

/**
 * Slack of a pin in a hole between what their limits allow.
 *   least = smallest hole - largest pin;  most = largest hole - smallest pin
 * @source own derivation: worst limits of both
 */
export const slackOf = (
  hole: { smallestMm: number; largestMm: number },
  pin: { smallestMm: number; largestMm: number },
): SpanMm => ({ low: hole.smallestMm - pin.largestMm, high: hole.largestMm - pin.smallestMm });

/** The pin that runs in a standard hole after the repair: a new one in the use's class, or the old one as measured. */
export function standardPin(joint: WornJoint): Outcome<LimitsOfSize | null> {
  if (!joint.pin.renewed) return ok(null);
  return limitsOfSize(joint.standardMm, fitForRepair(joint.use, joint.standardMm).shaft);
}

/** Limits of the pin that will be there: the new one's, or the measured size of the old; null: not measured. */
export function pinThere(
  joint: WornJoint,
  made: LimitsOfSize | null,
): { smallestMm: number; largestMm: number } | null {
  const { measuredMm } = joint.pin;
  if (made) return made;
  return measuredMm === null ? null : { smallestMm: measuredMm, largestMm: measuredMm };
}

export const span = (limits: LimitsOfSize): { nominalMm: number; toleranceClass: string } & SpanMm => ({
  ...{ nominalMm: limits.nominalMm, toleranceClass: limits.toleranceClass },
  ...{ low: limits.smallestMm, high: limits.largestMm },
});

export const bushFit = (nominalMm: number): RepairFit => fitForRepair('bush-in-boss', nominalMm);
