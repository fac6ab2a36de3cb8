import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { solveProbit } from '../maths/solveProbit.ts';
import { RANGE_CHANCES } from './wearAt.ts';
import { chanceWornPast, wearMoments } from './wearLaw.ts';

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
  const past0 = chanceWornPast(law, limitWearMm, from, settings.driftDelta);
  if (past0 > 0.5) return { low: from, middle: from, high: from, chancePastAtLastSize: past0, pastAtLastSize: true };

  // on ln hours since the last size a chance is nearly straight in normal quantiles
  const most = Math.log(Math.max(settings.beyondHRefs * law.hRefHours - from, 1));
  const chanceAt = (y: number) => chanceWornPast(law, limitWearMm, from + Math.exp(y), settings.driftDelta);
  const find = (u: number, start: { y: number; slope: number }) =>
    solveProbit(chanceAt, past0 + (1 - past0) * u, start, most);

  const middle = find(RANGE_CHANCES.middle, guess(law, limitWearMm, settings));
  const about = middle ?? { y: most, slope: 2 };
  const low = find(RANGE_CHANCES.low, { y: about.y - 1.28 / about.slope, slope: about.slope });
  const high =
    middle === null ? null : find(RANGE_CHANCES.high, { y: about.y + 1.28 / about.slope, slope: about.slope });
  const hours = (at: { y: number } | null) => (at === null ? null : from + Math.exp(at.y));
  const known = hours(middle);
  const early = hours(low);
  const late = hours(high);
  // points closer than the search resolves stay in their order
  return {
    low: early === null || known === null ? early : Math.min(early, known),
    middle: known,
    high: late === null || known === null ? null : Math.max(late, known),
    chancePastAtLastSize: past0,
    pastAtLastSize: false,
  };
}

/** Where the middle lies if the part wears on at its mean ln rate, and how steep the chance is there. */
function guess(law: PartLaw, limitWearMm: number, settings: ModelSettings): { y: number; slope: number } {
  const from = law.lastHours ?? 0;
  const { meanMm } = wearMoments(law, from, settings.driftDelta);
  const left = Math.max(0.02 * limitWearMm, limitWearMm - meanMm);
  const hours = (left / Math.exp(law.basis.lnRateMean)) * law.hRefHours;
  return { y: Math.log(Math.max(hours, 1)), slope: 1 / Math.sqrt(law.basis.lnRateVar + 0.02) };
}
