import { normalScore } from '../maths/normal.ts';
import type { Caution } from '../outcome.ts';

/**
 * Guards: what the person is told before or beside a forecast. They only tell; no reading is dropped by them.
 * Each gives a caution, or null when there is nothing to say.
 */

/** A reading further out than this many sd of what was expected is asked about: one in 2,000 by chance. */
export const QUERY_BEYOND_Z = 3.5;

/**
 * Standard normal score of a reading among what was expected of it; positive: more worn.
 * @param chanceBelow chance that a reading shows less wear (its place in the predictive distribution), 0 to 1
 * @returns within +-8.2: nothing further out can be told apart
 */
export const readingZ = (chanceBelow: number): number => normalScore(chanceBelow, 1e-16);

/**
 * A new reading far from what its part's forecast expected, before it was used: wrong part, wrong unit, or a renewal
 * nobody entered.
 */
export function unlikelyReading(chanceBelow: number): Caution | null {
  const z = readingZ(chanceBelow);
  return Math.abs(z) > QUERY_BEYOND_Z ? { code: 'reading-unlikely', facts: { z, moreWorn: z > 0 } } : null;
}

/** Beyond this many sd of both gauges a fall is no gauge error. */
const FALL_BEYOND_SD = 3;

export type TwoLooks = {
  lastWearMm: number;
  lastErrorSdMm: number;
  wearMm: number;
  errorSdMm: number;
  /** wear the forecast expected between the two [mm] */
  expectedGainMm: number;
};

/**
 * Wear that went back: b dt was to be added, and more than b dt + 3 sqrt(s1^2 + s2^2) is missing from it.
 * Suspect a renewal nobody entered.
 */
export function suspectRenewal({
  lastWearMm,
  lastErrorSdMm,
  wearMm,
  errorSdMm,
  expectedGainMm,
}: TwoLooks): Caution | null {
  const missingMm = lastWearMm + expectedGainMm - wearMm;
  const gaugeMm = FALL_BEYOND_SD * Math.hypot(lastErrorSdMm, errorSdMm);
  if (missingMm <= Math.max(0, expectedGainMm) + gaugeMm) return null;
  return { code: 'renewal-suspected', facts: { fallMm: lastWearMm - wearMm, gaugeMm, expectedGainMm } };
}

/** Fewer parts all on one side are no surprise: six are, with chance 2 / 2^6 = 0.03. */
const LEAST_PARTS_OF_VISIT = 6;

/**
 * All sizes of one visit off to the same side of what was expected: a gauge, its zero or a hand is suspect.
 * @param residuals size against forecast, one a part, in any unit; positive: more worn
 */
export function oneSidedVisit(residuals: readonly number[]): Caution | null {
  if (residuals.length < LEAST_PARTS_OF_VISIT) return null;
  const more = residuals.every((residual) => residual > 0);
  const less = residuals.every((residual) => residual < 0);
  if (!more && !less) return null;
  return {
    code: 'visit-one-sided',
    facts: { parts: residuals.length, moreWorn: more, chance: 2 * 0.5 ** residuals.length },
  };
}

/** Past this share most of the doubt lies in how wear goes on where nobody has looked: no gauge and no further like part of the same hours would help. */
const MOST_OF_DOUBT = 0.5;

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
 * quickening, drift) than from all that was measured. A class whose readings have shown its shape says less of this, and
 * a part with a poor gauge has other things to doubt first. A part never read has nothing to carry on.
 */
export function longExtrapolation({ ownReadings, doubtShare, lastWorkedHours, hoursAtLimit }: Reach): Caution | null {
  if (ownReadings === 0 || doubtShare <= MOST_OF_DOUBT) return null;
  return { code: 'long-extrapolation', facts: { doubtShare, lastWorkedHours, hoursAtLimit } };
}

export type WornSoFar = { ownReadings: number; wearMm: number; errorSdMm: number; newSizeSdMm: number };

/** A part whose whole wear is within U of its gauge and its new size together has shown no rate of its own yet. */
export function tooSmallToSee({ ownReadings, wearMm, errorSdMm, newSizeSdMm }: WornSoFar): Caution | null {
  const errorMm = 2 * Math.hypot(errorSdMm, newSizeSdMm);
  if (ownReadings === 0 || Math.abs(wearMm) > errorMm) return null;
  return { code: 'too-small-to-see', facts: { wearMm, errorMm } };
}

/** Fewer scored sizes tell nothing of a share. */
export const LEAST_SCORED = 20;
/** Further from the said share than chance alone goes once in a hundred. */
const OFF_BEYOND_Z = 2.58;

/** Sizes scored, how many lay within the 80 % range, how far that is from 80 % in sd of chance, and how much wider it had to be. */
export type Scored = { sizes: number; inside: number; z: number; widenBy: number };

const isOff = (scored: Scored | undefined): scored is Scored =>
  scored !== undefined && scored.sizes >= LEAST_SCORED && Math.abs(scored.z) > OFF_BEYOND_Z;

/** How many times as wide forecasts of a class are told; 1 but where it was too sure of itself. @param widen the shop wants it */
export const widenedBy = (scored: Scored | undefined, widen: boolean): number =>
  widen && isOff(scored) && scored.z < 0 ? scored.widenBy : 1;

/** Earlier sizes of the class lay within what was foretold for them clearly more seldom, or more often, than was said. */
export function classOffCoverage(scored: Scored | undefined, widen: boolean): Caution | null {
  if (!isOff(scored)) return null;
  const { sizes, inside, z } = scored;
  return {
    code: 'class-off-coverage',
    facts: { share: inside / sizes, count: sizes, tooNarrow: z < 0, widenedBy: widenedBy(scored, widen) },
  };
}

/** Worn, when a size is at this share of the way to the limit (common practice, no source). */
const WORN_SHARE = 0.75;

export const wornWhenMeasured = (wearMm: number, limitWearMm: number | null): boolean =>
  limitWearMm !== null && limitWearMm > 0 && wearMm >= WORN_SHARE * limitWearMm;

/** Fewer such parts say nothing of how a shop goes about it. */
const LEAST_WHEN_WORN = 5;
/** With one part in five measured on the way the ranges of a simulated class held; with none they held 3 to 4 in 10, the others were late. */
const MOST_WHEN_WORN = 0.8;

/**
 * A class whose parts were measured once only, when they were worn and renewed. The hours at which a part is then measured tell
 * how fast it wore; the model takes sizes as taken when a visit came, and learns from those that wear slows down.
 */
export function measuredWhenWorn(looks: { whenWorn: number; onTheWay: number } | undefined): Caution | null {
  if (!looks || looks.whenWorn < LEAST_WHEN_WORN) return null;
  const parts = looks.whenWorn + looks.onTheWay;
  if (looks.whenWorn <= MOST_WHEN_WORN * parts) return null;
  return { code: 'measured-when-worn', facts: { whenWorn: looks.whenWorn, parts, wornShare: WORN_SHARE } };
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
