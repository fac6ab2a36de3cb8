import type { ShopLearning } from '../fit/learnShop.ts';
import { machineLaws } from '../fit/machineLaws.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { chanceReadingBelow, visitErrorSdMm, wearMoments } from '../forecast/wearLaw.ts';
import { normalQuantile } from '../maths/normal.ts';
import type { WearReading, WearSeries } from '../series/wearSeries.ts';

/** How often sizes of a class came out within the 80 % range that would have been foretold for them. Plain data. */
export type ClassCoverage = {
  partClass: string;
  /** sizes scored, and how many lay within */
  sizes: number;
  inside: number;
  /** how far the share inside is from 80 %, in sd of chance; positive: too many inside */
  z: number;
  /** how many times as wide the parts' laws would have had to be for 80 % to lie within; 1: wide enough */
  widenBy: number;
};

/** What is said to hold 80 in 100. */
export const SAID_SHARE = 0.8;
export const EDGE = (1 - SAID_SHARE) / 2;

/** A machine's last visits are scored; the ones before tell of a shop as it was (common practice, no source). */
const VISITS_SCORED = 3;

/** Wider than this a range says nothing (common practice, no source). */
const MOST_WIDENED = 3;

/**
 * Each machine is forecast as of just before its last visits, from the readings there were, and the sizes of the visit
 * laid against it. The machine's own word is taken out of what the class knows and said anew; the class's scatters have
 * heard the visit too, which flatters a class of few machines a little.
 *
 * Sizes of one visit stand or fall together, so chance is reckoned visit by visit:
 *   var(share) = max(0.8 x 0.2 / n, sum over visits of (sum of (inside - 0.8))^2 / n^2)
 *
 * @param parts of the whole shop, finished ones too
 * @source own derivation; variance by clusters: K.-Y. Liang and S. L. Zeger, "Longitudinal data analysis using
 *   generalized linear models", Biometrika 73 (1986)
 */
export function classCoverage(
  pool: ShopLearning,
  parts: readonly WearSeries[],
  settings: ModelSettings,
): ClassCoverage[] {
  const tallies = new Map<string, { sizes: number; inside: number; square: number; misses: Miss[] }>();
  for (const visit of scoredVisits(pool, parts, settings))
    for (const [partClass, looks] of Map.groupBy(visit, ({ law }) => law.partClass)) {
      const tally = tallies.get(partClass) ?? { sizes: 0, inside: 0, square: 0, misses: [] };
      const misses = looks.map((look) => missOf(look, settings));
      const inside = misses.filter(({ z }) => Math.abs(z) <= EDGE_Z).length;
      tallies.set(partClass, {
        sizes: tally.sizes + looks.length,
        inside: tally.inside + inside,
        square: tally.square + (inside - SAID_SHARE * looks.length) ** 2,
        misses: [...tally.misses, ...misses],
      });
    }
  return [...tallies]
    .map(([partClass, { sizes, inside, square, misses }]) => {
      const z = offBy(sizes, inside, square);
      return { partClass, sizes, inside, z, widenBy: widenBy(misses) };
    })
    .sort((a, b) => (a.partClass < b.partClass ? -1 : 1));
}

/**
 * How far a share inside is from what is said, in sd of chance.
 * @param square sum over visits of (inside - 0.8 x sizes of the visit)^2
 */
export const offBy = (sizes: number, inside: number, square: number): number =>
  (inside / sizes - SAID_SHARE) / Math.sqrt(Math.max((SAID_SHARE * (1 - SAID_SHARE)) / sizes, square / sizes ** 2));

/** A size and what was held of its part just before it. */
export type ScoredLook = { part: WearSeries; reading: WearReading; law: PartLaw };

/** Each machine's last visits, each with the sizes that were a forecast's business and the laws of just before. */
export function* scoredVisits(
  pool: ShopLearning,
  parts: readonly WearSeries[],
  settings: ModelSettings,
): Generator<ScoredLook[]> {
  for (const own of Map.groupBy(parts, (part) => part.machineId).values())
    for (const day of lastDays(own)) yield looksBefore(day, own, pool, settings);
}

function lastDays(parts: readonly WearSeries[]): string[] {
  const days = new Set(parts.flatMap((part) => part.readings.map(({ takenOn }) => takenOn)));
  return [...days].sort().slice(-VISITS_SCORED);
}

/** The sizes of a day on one machine, with what was held before it. @param parts of that machine, finished ones too */
export function looksBefore(
  day: string,
  parts: readonly WearSeries[],
  pool: ShopLearning,
  settings: ModelSettings,
): ScoredLook[] {
  // a size taken as a part went in is no forecast's business
  const sizeOf = (part: WearSeries) =>
    part.readings.find(({ takenOn, workedHours }) => takenOn === day && workedHours > 0);
  const scored = parts.filter((part) => sizeOf(part) !== undefined);
  const before = parts.map((part) => ({
    ...part,
    present: sizeOf(part) !== undefined,
    readings: part.readings.filter(({ takenOn }) => takenOn < day),
  }));
  return machineLaws(pool, before, settings).map((law, i) => ({
    part: scored[i]!,
    reading: sizeOf(scored[i]!)!,
    law,
  }));
}

const EDGE_Z = normalQuantile(1 - EDGE);

/** A size against its forecast: where it lay, in sd, and how much of that spread was of the wear and how much of the look. */
type Miss = { z: number; wearSdMm: number; errorSdMm: number };

function missOf({ law, reading }: ScoredLook, settings: ModelSettings): Miss {
  const { wearMm, workedHours, errorSdMm } = reading;
  const below = chanceReadingBelow(law, wearMm, workedHours, errorSdMm, settings.driftDelta);
  return {
    z: normalQuantile(Math.min(1 - 1e-12, Math.max(1e-12, below))),
    wearSdMm: wearMoments(law, workedHours, settings.driftDelta).sdMm,
    errorSdMm: Math.hypot(errorSdMm, visitErrorSdMm(law)),
  };
}

/**
 * The least factor on the spread of wear with which 80 % of the sizes lie within their ranges, the errors of looking left as
 * they are:
 *   a size lies within when |z| sqrt(wear^2 + error^2) <= 1.28 sqrt(f^2 wear^2 + error^2)
 * so each has its own least f, and the factor is the 80 % point of those.
 * @source own derivation, each range taken for a normal of the same sd
 */
function widenBy(misses: readonly Miss[]): number {
  const needed = misses
    .map(({ z, wearSdMm, errorSdMm }) => {
      if (Math.abs(z) <= EDGE_Z) return 1;
      const reach = (z / EDGE_Z) ** 2 * (wearSdMm ** 2 + errorSdMm ** 2) - errorSdMm ** 2;
      return wearSdMm > 0 ? Math.sqrt(reach) / wearSdMm : MOST_WIDENED;
    })
    .sort((a, b) => a - b);
  const at = needed[Math.max(0, Math.ceil(SAID_SHARE * needed.length) - 1)] ?? 1;
  return Math.min(MOST_WIDENED, Math.max(1, at));
}
