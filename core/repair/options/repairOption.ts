import type { FitKind } from '../../iso286/isoFit.ts';
import type { Caution, Refusal } from '../../outcome.ts';
import type { StepHours, StripDownStep } from '../../shop/stripDownTree.ts';
import type { SafetyCaution } from '../cautions/cautions.ts';
import type { PartToMake } from '../cut-list/partToMake.ts';
import type { NotWorse } from '../pin-joint/notWorse.ts';
import type { AdhesiveFit } from '../press-fit/adhesiveFit.ts';
import type { PressedBush } from '../press-fit/pressBush.ts';
import type { Work } from '../strip-down-tree/jobHours.ts';
import type { BoredTo } from './wornJoint.ts';

/** What can be done with a worn hole and its pin, in the order they are put forward. */
export const REPAIR_CHOICES = ['leave', 'oversize-pin', 'bush', 'weld', 'new-boss', 'reject'] as const;
export type RepairChoice = (typeof REPAIR_CHOICES)[number];

/** From and to [mm]. */
export type SpanMm = { low: number; high: number };

/** A pin or bush in its hole: clearance from and to; below 0 it is held [mm]. */
export type FitInPlace = { classes: string; kind: FitKind; feel: string; clearanceMm: SpanMm };

/** A bush to make, press in and size. */
export type BushToMake = {
  outsideMm: { nominalMm: number; toleranceClass: string } & SpanMm;
  /** bore it is made with, and the one it must have once it is in */
  insideBeforeMm: { nominalMm: number; toleranceClass: string } & SpanMm;
  insideAfterMm: { nominalMm: number; toleranceClass: string } & SpanMm;
  lengthMm: number;
  wallMm: number;
  pressed: PressedBush;
  /** outside it would have glued in instead; null: the bore's limits leave the glue no even gap */
  glued: AdhesiveFit | null;
  /** as pressed every bore is within its limits; otherwise it is bored to size once it is in */
  sizedAfter: boolean;
};

/** What is left standing against what the shop wants left [mm]. */
export type LeftStanding = { leftMm: number; wantedMm: number };

/** What the joint's wear starts from after a choice; what the hours law is asked with. */
export type StateAfter = {
  choice: RepairChoice;
  bore: 'as-found' | 'renewed';
  pin: 'as-found' | 'renewed';
  /** slack to start from: middle of what the limits allow [mm]; null: the pin was not measured */
  slackMm: number | null;
  /** sizes that hole and pin are made to, middle of their limits; null: not made [mm] */
  boreMm: number | null;
  pinMm: number | null;
};

/** Hours until the limit, low, middle, high; a null is beyond what can be said. */
export type LifeRange = { low: number | null; middle: number | null; high: number | null };

/** One choice with everything that differs. A closed one keeps its figures where they can be worked out, beside why it is closed. */
export type RepairOption<Life = LifeRange | null> = {
  choice: RepairChoice;
  closed: Refusal[];
  cautions: Caution[];
  safety: SafetyCaution[];
  bore: BoredTo | null;
  bush: BushToMake | null;
  /** the pin that then runs in it; null: as found */
  pin: ({ nominalMm: number; toleranceClass: string } & SpanMm) | null;
  fitInBoss: FitInPlace | null;
  fitOnPin: FitInPlace | null;
  wall: LeftStanding | null;
  edge: LeftStanding | null;
  /** beside the joint as drawn; null: the other half is not known */
  comparison: NotWorse | null;
  slackMm: SpanMm | null;
  work: Work[];
  /** the work itself; and what the visit grows by, strip-down counted once; null: nobody knows before the other part is there [h] */
  hoursHere: StepHours | null;
  hoursAdded: StepHours | null;
  off: readonly StripDownStep[];
  toMake: PartToMake[];
  life: Life;
};
