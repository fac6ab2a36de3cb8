import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartBasis, PartLaw } from '../fit/partLaw.ts';
import { type Outcome, ok, type Refusal, refuse } from '../outcome.ts';
import { type HoursAtLimit, hoursAtLimit } from './hoursAtLimit.ts';
import { rateAt } from './rateAt.ts';
import { type Range, wearAt } from './wearAt.ts';
import { chanceWornPast } from './wearLaw.ts';

export type PartForecastRefusal = Refusal & { code: 'limit-not-positive' | 'hours-not-known' };

/** When a part comes to its limit, in worked hours since its renewal. */
export type PartAtLimit = {
  /** null: the point has no limit */
  hoursAtLimit: HoursAtLimit | null;
  /** chance that the limit has passed by the as-of hours; null: no limit */
  chancePast: number | null;
  /** how far past it was at its last size, middle estimate [mm]; null: it was not */
  pastLimitMm: number | null;
  basis: PartBasis;
};

/** All that is said of one part, in worked hours since its renewal. */
export type PartForecast = PartAtLimit & {
  /** true wear at the as-of hours [mm] */
  wearMm: Range;
  /** slope of wear there [mm/h] */
  ratePerHourMm: Range;
};

/**
 * Forecast of one part.
 * @param limitWearMm wear at the limit [mm], > 0; null: no limit, and no hours then
 * @param asOfHours worked hours since the renewal at the as-of day [h], >= 0
 * @refuses as {@link partAtLimit}
 */
export function forecastPart(
  law: PartLaw,
  limitWearMm: number | null,
  asOfHours: number,
  settings: ModelSettings,
): Outcome<PartForecast, PartForecastRefusal> {
  const atLimit = partAtLimit(law, limitWearMm, asOfHours, settings);
  if (!atLimit.ok) return atLimit;
  return ok({ ...atLimit.value, ...wearNow(law, asOfHours, settings) });
}

/** Wear and its slope at the as-of hours, or at the last size if that came later. */
export function wearNow(
  law: PartLaw,
  asOfHours: number,
  settings: ModelSettings,
): Pick<PartForecast, 'wearMm' | 'ratePerHourMm'> {
  return {
    wearMm: wearAt(law, Math.max(asOfHours, law.lastHours ?? 0), settings),
    ratePerHourMm: rateNow(law, asOfHours),
  };
}

/** Slope of wear at the as-of hours, or at the last size if that came later [mm/h]. */
export const rateNow = (law: PartLaw, asOfHours: number): Range => rateAt(law, Math.max(asOfHours, law.lastHours ?? 0));

/**
 * The part of a forecast that says when: hours at the limit, and whether it has passed.
 * @param limitWearMm wear at the limit [mm], > 0; null: no limit, and no hours then
 * @param asOfHours worked hours since the renewal at the as-of day [h], >= 0
 * @refuses limit-not-positive (a new part would be past it), hours-not-known (not a number of hours)
 */
export function partAtLimit(
  law: PartLaw,
  limitWearMm: number | null,
  asOfHours: number,
  settings: ModelSettings,
): Outcome<PartAtLimit, PartForecastRefusal> {
  const refusal = refusalOfPart(limitWearMm, asOfHours);
  if (refusal) return refuse(refusal);

  const lastHours = law.lastHours ?? 0;
  const now = Math.max(asOfHours, lastHours);
  const limit = limitWearMm === null ? null : hoursAtLimit(law, limitWearMm, settings);
  return ok({
    hoursAtLimit: limit,
    chancePast: limitWearMm === null ? null : chanceWornPast(law, limitWearMm, now, settings.driftDelta),
    pastLimitMm:
      limitWearMm !== null && limit?.pastAtLastSize ? wearAt(law, lastHours, settings).middle - limitWearMm : null,
    basis: law.basis,
  });
}

/** Why nothing can be said of a part of that limit and those hours; null: something can. */
export function refusalOfPart(limitWearMm: number | null, asOfHours: number): PartForecastRefusal | null {
  if (!Number.isFinite(asOfHours) || asOfHours < 0)
    return { code: 'hours-not-known', facts: { workedHours: Number.isFinite(asOfHours) ? asOfHours : null } };
  if (limitWearMm !== null && !(limitWearMm > 0 && Number.isFinite(limitWearMm)))
    return { code: 'limit-not-positive', facts: { limitWearMm: Number.isFinite(limitWearMm) ? limitWearMm : null } };
  return null;
}
