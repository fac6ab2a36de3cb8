import type { ModelSettings } from '../fit/modelSettings.ts';
import { normalQuantile } from '../maths/normal.ts';
import type { Caution } from '../outcome.ts';

/**
 * Guards: what the person is told before or beside a forecast. They only tell; no reading is dropped by them.
 * Each gives a caution, or null when there is nothing to say. From where on something is said the shop may set.
 */

/**
 * Standard normal score of a reading among what was expected of it; positive: more worn.
 * @param chanceBelow chance that a reading shows less wear (its place in the predictive distribution), 0 to 1
 * @returns within +-8.2: nothing further out can be told apart
 */
export const readingZ = (chanceBelow: number): number =>
  normalQuantile(Math.min(1 - LEAST_CHANCE, Math.max(LEAST_CHANCE, chanceBelow)));
const LEAST_CHANCE = 1e-16;

/**
 * A new reading far from what its part's forecast expected, before it was used: wrong part, wrong unit, or a renewal
 * nobody entered.
 */
export function unlikelyReading(
  chanceBelow: number,
  { queryBeyondSd }: Pick<ModelSettings, 'queryBeyondSd'>,
): Caution | null {
  const z = readingZ(chanceBelow);
  return Math.abs(z) > queryBeyondSd ? { code: 'reading-unlikely', facts: { z, moreWorn: z > 0 } } : null;
}

export type TwoLooks = {
  lastWearMm: number;
  lastErrorSdMm: number;
  wearMm: number;
  errorSdMm: number;
  /** wear the forecast expected between the two [mm] */
  expectedGainMm: number;
};

/**
 * Wear that went back: b dt was to be added, and more than b dt + k sqrt(s1^2 + s2^2) is missing from it: k sd of both gauges.
 * Suspect a renewal nobody entered.
 */
export function suspectRenewal(
  { lastWearMm, lastErrorSdMm, wearMm, errorSdMm, expectedGainMm }: TwoLooks,
  { fallBeyondSd }: Pick<ModelSettings, 'fallBeyondSd'>,
): Caution | null {
  const missingMm = lastWearMm + expectedGainMm - wearMm;
  const gaugeMm = fallBeyondSd * Math.hypot(lastErrorSdMm, errorSdMm);
  if (missingMm <= Math.max(0, expectedGainMm) + gaugeMm) return null;
  return { code: 'renewal-suspected', facts: { fallMm: lastWearMm - wearMm, gaugeMm, expectedGainMm } };
}

/**
 * All sizes of one visit off to the same side of what was expected: a gauge, its zero or a hand is suspect.
 * @param residuals size against forecast, one a part, in any unit; positive: more worn
 */
export function oneSidedVisit(
  residuals: readonly number[],
  { oneSidedParts }: Pick<ModelSettings, 'oneSidedParts'>,
): Caution | null {
  if (residuals.length < oneSidedParts) return null;
  const more = residuals.every((residual) => residual > 0);
  const less = residuals.every((residual) => residual < 0);
  if (!more && !less) return null;
  return {
    code: 'visit-one-sided',
    facts: { parts: residuals.length, moreWorn: more, chance: 2 * 0.5 ** residuals.length },
  };
}

export type Reach = {
  /** readings of its own */
  ownReadings: number;
  /** share of the doubt about its hours at limit that comes from how wear goes on beyond its last size; see shapeDoubt.ts */
  doubtShare: number;
  lastWorkedHours: number;
  /** middle worked hours at the limit; null: beyond what is spoken for */
  hoursAtLimit: number | null;
};

/**
 * The limit lies so far beyond the last size that more of the doubt comes from how wear goes on from there (running in,
 * quickening, drift) than from all that was measured: no gauge and no further like part of the same hours would help. A class whose readings have shown its shape says less of this, and
 * a part with a poor gauge has other things to doubt first. A part never read has nothing to carry on.
 */
export function longExtrapolation(
  { ownReadings, doubtShare, lastWorkedHours, hoursAtLimit }: Reach,
  { doubtBeyond }: Pick<ModelSettings, 'doubtBeyond'>,
): Caution | null {
  if (ownReadings === 0 || doubtShare <= doubtBeyond) return null;
  return { code: 'long-extrapolation', facts: { doubtShare, lastWorkedHours, hoursAtLimit } };
}

export type WornSoFar = { ownReadings: number; wearMm: number; errorSdMm: number; newSizeSdMm: number };

/** A part whose whole wear is within U of its gauge and its new size together has shown no rate of its own yet. */
export function tooSmallToSee({ ownReadings, wearMm, errorSdMm, newSizeSdMm }: WornSoFar): Caution | null {
  const errorMm = 2 * Math.hypot(errorSdMm, newSizeSdMm);
  if (ownReadings === 0 || Math.abs(wearMm) > errorMm) return null;
  return { code: 'too-small-to-see', facts: { wearMm, errorMm } };
}

/** Sizes scored, how many lay within the 80 % range, how far that is from 80 % in sd of chance, and how much wider it had to be. */
export type Scored = { sizes: number; inside: number; z: number; widenBy: number };

type Judged = Pick<ModelSettings, 'leastScored' | 'offCoverageSd'>;

/** Fewer sizes tell nothing of a share; and some way from it chance alone goes. */
const isOff = (scored: Scored | undefined, { leastScored, offCoverageSd }: Judged): scored is Scored =>
  scored !== undefined && scored.sizes >= leastScored && Math.abs(scored.z) > offCoverageSd;

/** How many times as wide forecasts of a class are told; 1 but where it was too sure of itself. @param widen the shop wants it */
export const widenedBy = (scored: Scored | undefined, widen: boolean, by: Judged): number =>
  widen && isOff(scored, by) && scored.z < 0 ? scored.widenBy : 1;

/** Earlier sizes of the class lay within what was foretold for them clearly more seldom, or more often, than was said. */
export function classOffCoverage(scored: Scored | undefined, widen: boolean, by: Judged): Caution | null {
  if (!isOff(scored, by)) return null;
  const { sizes, inside, z } = scored;
  return {
    code: 'class-off-coverage',
    facts: { share: inside / sizes, count: sizes, tooNarrow: z < 0, widenedBy: widenedBy(scored, widen, by) },
  };
}

/** @param limitWearMm wear at its limit [mm]; null: none is set */
export const wornWhenMeasured = (
  wearMm: number,
  limitWearMm: number | null,
  { wornShare }: Pick<ModelSettings, 'wornShare'>,
): boolean => limitWearMm !== null && limitWearMm > 0 && wearMm >= wornShare * limitWearMm;

/**
 * A class whose parts were measured once only, when they were worn and renewed. The hours at which a part is then measured tell
 * how fast it wore; the model takes sizes as taken when a visit came, and learns from those that wear slows down.
 */
export function measuredWhenWorn(
  looks: { whenWorn: number; onTheWay: number } | undefined,
  { wornShare, leastWhenWorn, mostWhenWorn }: Pick<ModelSettings, 'wornShare' | 'leastWhenWorn' | 'mostWhenWorn'>,
): Caution | null {
  if (!looks || looks.whenWorn < leastWhenWorn) return null;
  const parts = looks.whenWorn + looks.onTheWay;
  if (looks.whenWorn <= mostWhenWorn * parts) return null;
  return { code: 'measured-when-worn', facts: { whenWorn: looks.whenWorn, parts, wornShare } };
}

const LEAST_PARTS_OF_CLASS = 3;
const LEAST_MACHINES_OF_CLASS = 2;

/**
 * A class with fewer than three parts read, or all on one machine: the forecast leans on what was held of it before.
 * @param from whether that is a figure of the trade's or, without one, a wide guess
 */
export function fromTradePrior(partsRead: number, machinesRead: number, from: 'trade' | 'wide'): Caution | null {
  if (partsRead >= LEAST_PARTS_OF_CLASS && machinesRead >= LEAST_MACHINES_OF_CLASS) return null;
  return { code: 'from-trade-prior', facts: { partsRead, machinesRead, from } };
}
