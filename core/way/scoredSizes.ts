import { naiveWearMm, type SizeScore, scoreWear } from '../check/scoreSize.ts';
import type { ShopLearning } from '../fit/learnShop.ts';
import { machineLaws } from '../fit/machineLaws.ts';
import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { visitErrorSdMm, wearMoments } from '../forecast/wearLaw.ts';
import { mixtureBelow, mixtureReach, wearMixture } from '../forecast/wearMixture.ts';
import type { WearReading, WearSeries } from '../series/wearSeries.ts';
import type { Day } from '../units/day.ts';

/**
 * A size laid against what would have been foretold for it. Least, middle and most worn are wear [mm], with the look's error.
 * Plain data, to be kept with a learning.
 */
export type ScoredSize = SizeScore & {
  pointId: number;
  ordinal: number;
  machineId: number;
  partClass: string;
  takenOn: Day;
  workedHours: number;
  wearMm: number;
  /** 1 sd of the wear foretold, and of the look [mm] */
  wearSdMm: number;
  errorSdMm: number;
  /** sizes of the part before this one */
  earlier: number;
};

/** A machine's last visits are scored; the ones before tell of a shop as it was (common practice, no source). */
const VISITS_SCORED = 3;

/**
 * Each machine is forecast as of just before its last visits, from the readings there were, and the sizes of the visit
 * laid against it. The machine's own word is taken out of what the class knows and said anew; the class's scatters have
 * heard the visit too, which flatters a class of few machines a little. Ranges are the class's own, not widened.
 *
 * @param parts of the whole shop, finished ones too
 * @source own derivation
 */
export function scoredSizes(pool: ShopLearning, parts: readonly WearSeries[], settings: ModelSettings): ScoredSize[] {
  return [...Map.groupBy(parts, (part) => part.machineId).values()].flatMap((own) =>
    lastDays(own).flatMap((day) => looksBefore(day, own, pool, settings).map((look) => scored(look, settings))),
  );
}

function lastDays(parts: readonly WearSeries[]): Day[] {
  const days = new Set(parts.flatMap((part) => part.readings.map(({ takenOn }) => takenOn)));
  return [...days].sort().slice(-VISITS_SCORED);
}

/** A size and what was held of its part just before it. */
export type LookBefore = { part: WearSeries; reading: WearReading; law: PartLaw };

/** The sizes of a day on one machine, with what was held before it. @param parts of that machine, finished ones too */
export function looksBefore(
  day: Day,
  parts: readonly WearSeries[],
  pool: ShopLearning,
  settings: ModelSettings,
): LookBefore[] {
  // a size taken as a part went in is no forecast's business
  const sizeOf = (part: WearSeries) =>
    part.readings.find(({ takenOn, workedHours }) => takenOn === day && workedHours > 0);
  const looked = parts.filter((part) => sizeOf(part) !== undefined);
  const before = parts.map((part) => ({
    ...part,
    present: sizeOf(part) !== undefined,
    readings: part.readings.filter(({ takenOn }) => takenOn < day),
  }));
  return machineLaws(pool, before, settings).map((law, i) => ({
    part: looked[i]!,
    reading: sizeOf(looked[i]!)!,
    law,
  }));
}

/** A look laid against its law. */
export function scored({ part, reading, law }: LookBefore, settings: ModelSettings): ScoredSize {
  const { workedHours, wearMm, takenOn } = reading;
  const errorSdMm = Math.hypot(reading.errorSdMm, visitErrorSdMm(law));
  const before = part.readings.filter((one) => one.takenOn < takenOn);
  const mixture = wearMixture(law, workedHours, errorSdMm, settings.driftDelta);
  const [from, to] = mixtureReach(mixture);
  const score = scoreWear({
    cdf: (x) => mixtureBelow(mixture, x),
    from,
    to,
    cameMm: wearMm,
    naiveMm: naiveWearMm(before.at(-1) ?? null, workedHours),
  });
  const size: ScoredSize = {
    pointId: part.pointId,
    ordinal: part.ordinal,
    machineId: part.machineId,
    partClass: part.partClass,
    takenOn,
    workedHours,
    wearMm,
    wearSdMm: wearMoments(law, workedHours, settings.driftDelta).sdMm,
    errorSdMm,
    earlier: before.filter((one) => one.workedHours > 0).length,
    ...score,
  };
  // thousands of them are written into the record: no more figures than are looked at
  return Object.fromEntries(
    Object.entries(size).map(([name, value]) => [name, typeof value === 'number' ? sixFigures(value) : value]),
  ) as ScoredSize;
}

const sixFigures = (value: number): number => (Number.isInteger(value) ? value : Number(value.toPrecision(6)));
