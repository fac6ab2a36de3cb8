import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { solveRising } from '../maths/solveRising.ts';
import { RANGE_CHANCES } from './wearAt.ts';
import { chanceWornPast } from './wearLaw.ts';

/** Worked hours since the renewal at which wear reaches a limit. */
export type HoursAtLimit = {
  /** 10, 50 and 90 % points [h]; null: beyond the hours that can be spoken for */
  low: number | null;
  middle: number | null;
  high: number | null;
  /** chance that the part was past already at its last size */
  chancePastAtLastSize: number;
  /** it probably was: then low = middle = high = hours at the last size */
  pastAtLastSize: boolean;
};

/**
 * Hours at limit of a part, given only that it was not past at its own last size, at h_n:
 *   F(x) = chance worn past L at x;  F0 = F(h_n);  solve F(x) = F0 + (1 - F0) u for u = 10, 50, 90 %
 * Nobody has looked since, so the hours may lie before today. Past at the last size (F0 over a half): the hours of that size.
 *
 * @param limitWearMm wear at the limit [mm], > 0
 * @source own derivation; see wearLaw.ts
 */
export function hoursAtLimit(law: PartLaw, limitWearMm: number, settings: ModelSettings): HoursAtLimit {
  const from = law.lastHours ?? 0;
  const chance = (hours: number) => chanceWornPast(law, limitWearMm, hours, settings.driftDelta);
  const past0 = chance(from);
  if (past0 > 0.5) return { low: from, middle: from, high: from, chancePastAtLastSize: past0, pastAtLastSize: true };

  const beyond = settings.beyondHRefs * law.hRefHours;
  let low = from;
  let atLow = past0;
  let high = Math.max(from * 1.25, from + law.hRefHours / 4);
  let atHigh = chance(high);
  const point = (u: number): number | null => {
    const target = past0 + (1 - past0) * u;
    while (atHigh < target) {
      if (high >= beyond) return null;
      low = high;
      atLow = atHigh;
      high = Math.min(beyond, from + 1.6 * (high - from));
      if (high <= low) return null;
      atHigh = chance(high);
    }
    const found = solveRising(chance, target, low, high, atLow, atHigh, 1e-7);
    low = found;
    atLow = Math.min(chance(found), target);
    return found;
  };
  return {
    low: point(RANGE_CHANCES.low),
    middle: point(RANGE_CHANCES.middle),
    high: point(RANGE_CHANCES.high),
    chancePastAtLastSize: past0,
    pastAtLastSize: false,
  };
}
