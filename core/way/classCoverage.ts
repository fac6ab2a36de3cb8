import type { ShopLearning } from '../fit/learnShop.ts';
import { machineLaws } from '../fit/machineLaws.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import { chanceReadingBelow } from '../forecast/wearLaw.ts';
import type { WearSeries } from '../series/wearSeries.ts';

/** How often sizes of a class came out within the 80 % range that would have been foretold for them. Plain data. */
export type ClassCoverage = {
  partClass: string;
  /** sizes scored, and how many lay within */
  sizes: number;
  inside: number;
  /** how far the share inside is from 80 %, in sd of chance; positive: too many inside */
  z: number;
};

/** What is said to hold 80 in 100. */
export const SAID_SHARE = 0.8;
const EDGE = (1 - SAID_SHARE) / 2;

/** A machine's last visits are scored; the ones before tell of a shop as it was (common practice, no source). */
const VISITS_SCORED = 3;

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
  const tallies = new Map<string, { sizes: number; inside: number; square: number }>();
  for (const own of Map.groupBy(parts, (part) => part.machineId).values())
    for (const day of lastDays(own))
      for (const [partClass, looks] of scoredOn(day, own, pool, settings)) {
        const tally = tallies.get(partClass) ?? { sizes: 0, inside: 0, square: 0 };
        const inside = looks.filter(Boolean).length;
        tallies.set(partClass, {
          sizes: tally.sizes + looks.length,
          inside: tally.inside + inside,
          square: tally.square + (inside - SAID_SHARE * looks.length) ** 2,
        });
      }
  return [...tallies]
    .map(([partClass, { sizes, inside, square }]) => {
      const sd = Math.sqrt(Math.max((SAID_SHARE * (1 - SAID_SHARE)) / sizes, square / sizes ** 2));
      return { partClass, sizes, inside, z: (inside / sizes - SAID_SHARE) / sd };
    })
    .sort((a, b) => (a.partClass < b.partClass ? -1 : 1));
}

function lastDays(parts: readonly WearSeries[]): string[] {
  const days = new Set(parts.flatMap((part) => part.readings.map(({ takenOn }) => takenOn)));
  return [...days].sort().slice(-VISITS_SCORED);
}

/** Of each class, whether each size of the day lay within what was to be expected before it. */
function scoredOn(
  day: string,
  parts: readonly WearSeries[],
  pool: ShopLearning,
  settings: ModelSettings,
): Map<string, boolean[]> {
  // a size taken as a part went in is no forecast's business
  const sizeOf = (part: WearSeries) =>
    part.readings.find(({ takenOn, workedHours }) => takenOn === day && workedHours > 0);
  const before = parts.map((part) => ({
    ...part,
    present: sizeOf(part) !== undefined,
    readings: part.readings.filter(({ takenOn }) => takenOn < day),
  }));
  const scored = parts.filter((part) => sizeOf(part) !== undefined);
  const inside = new Map<string, boolean[]>();
  machineLaws(pool, before, settings).forEach((law, i) => {
    const size = sizeOf(scored[i]!)!;
    const below = chanceReadingBelow(law, size.wearMm, size.workedHours, size.errorSdMm, settings.driftDelta);
    inside.set(law.partClass, [...(inside.get(law.partClass) ?? []), below >= EDGE && below <= 1 - EDGE]);
  });
  return inside;
}
