import { distanceAboveUm, distanceBelowUm } from './shaftDeviation.ts';
import { toleranceUm } from './toleranceGrade.ts';

/** What a fit is like in the fitter's hand, from loosest to tightest. */
export const HAND_FEELS = [
  'loose',
  'runs easily',
  'runs freely',
  'slides freely',
  'pushes in by hand',
  'taps in',
  'drives in',
  'presses in',
  'presses in hard',
] as const;
export type HandFeel = (typeof HAND_FEELS)[number];

type Range = {
  kind: 'clearance' | 'transition' | 'interference';
  leastClearanceUm: number;
};

/**
 * A word for the feel of a fit. The bounds are the standard's own steps at that size, so that a word means the same on a
 * 20 mm and a 200 mm pin; which word goes with which step is common practice, no source.
 *   clearance by its least: from d, loose; from e, runs easily; from f, runs freely; from g, slides freely; less, by hand
 *   transition by its most interference: up to k6, taps in; above, drives in
 *   interference by its most: below s6, presses in; s6 and above, presses in hard
 * A transition that may at worst be tighter than k6 is met with a hammer, whatever it turns out to be.
 *
 * @source common practice, no source; the steps are ISO 286-1:2010, Tables 2 and 3
 */
export function handFeel(nominalMm: number, { kind, leastClearanceUm }: Range): HandFeel {
  const below = (letter: 'd' | 'e' | 'f' | 'g') => distanceBelowUm(nominalMm, letter) ?? 0;
  /** the most a shaft of this letter and IT6 stands over a nominal hole */
  const above = (letter: 'k' | 's') => (distanceAboveUm(nominalMm, letter, 6) ?? 0) + (toleranceUm(nominalMm, 6) ?? 0);
  const mostInterferenceUm = -leastClearanceUm;
  if (kind === 'transition') return mostInterferenceUm <= above('k') ? 'taps in' : 'drives in';
  if (kind === 'interference') return mostInterferenceUm < above('s') ? 'presses in' : 'presses in hard';
  if (leastClearanceUm >= below('d')) return 'loose';
  if (leastClearanceUm >= below('e')) return 'runs easily';
  if (leastClearanceUm >= below('f')) return 'runs freely';
  if (leastClearanceUm >= below('g')) return 'slides freely';
  return 'pushes in by hand';
}
