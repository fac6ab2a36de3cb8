import { normalQuantile } from '../maths/normal.ts';
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
export function readingZ(chanceBelow: number): number {
  const least = 1e-16;
  return normalQuantile(Math.min(1 - least, Math.max(least, chanceBelow)));
}

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

/** Hours this many times the part's hours at its last size, and wear this many times its wear there, are a long way to carry a law. */
const LONG = { times: 3, wear: 2, readings: 3 };

export type Reach = {
  /** readings of its own */
  ownReadings: number;
  /** worked hours and wear at its last size */
  lastWorkedHours: number;
  lastWearMm: number;
  /** middle worked hours at the limit; null: beyond what is spoken for */
  hoursAtLimit: number | null;
  limitWearMm: number;
};

/**
 * The limit lies far beyond what has been seen of this part: its hours more than three times those of the last size, or,
 * with one or two readings, its wear more than twice that of the last size. A part never read has nothing to carry on.
 */
export function longExtrapolation(reach: Reach): Caution | null {
  const { ownReadings, lastWorkedHours, lastWearMm, hoursAtLimit, limitWearMm } = reach;
  if (ownReadings === 0) return null;
  const farInHours = hoursAtLimit === null || hoursAtLimit > LONG.times * lastWorkedHours;
  const farInWear = ownReadings < LONG.readings && limitWearMm > LONG.wear * lastWearMm;
  if (!farInHours && !farInWear) return null;
  return { code: 'long-extrapolation', facts: { hoursAtLimit, lastWorkedHours, limitWearMm, lastWearMm } };
}

/** Fewer scored sizes tell nothing of a share. */
export const LEAST_SCORED = 20;
/** Further from the said share than chance alone goes once in a hundred. */
const OFF_BEYOND_Z = 2.58;

/**
 * Earlier sizes of the class lay within what was foretold for them clearly more seldom, or more often, than was said.
 * @param scored sizes scored, how many lay within the 80 % range, and how far that is from 80 % in sd of chance
 */
export function classOffCoverage(scored: { sizes: number; inside: number; z: number } | undefined): Caution | null {
  if (!scored || scored.sizes < LEAST_SCORED || Math.abs(scored.z) <= OFF_BEYOND_Z) return null;
  const { sizes, inside, z } = scored;
  return { code: 'class-off-coverage', facts: { share: inside / sizes, count: sizes, tooNarrow: z < 0 } };
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
