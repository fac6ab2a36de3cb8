import { shared as everywhere } from '#core/words/english.ts';
import { wholeFigure } from '#core/words/quantityText.ts';

export { counted, months } from '#core/words/english.ts';

/**
 * Words shared by every screen, in English; those that papers say too come from core/words. Screens keep no words of
 * their own: a screen's words stand in a file of this folder named for it. Another language is another set of these files.
 */
export const shared = {
  ...everywhere,
  program: 'Hours and Wear',
  low: 'low',
  middle: 'middle',
  high: 'high',
  now: 'now',
  estimated: 'est.',
  noForecast: 'no forecast',
  beyondScale: 'beyond reckoning',
  notKnown: 'not known',
  find: 'find a machine, farm or serial',
  heardMachines: (machines: number): string =>
    `A shop this large is learned from ${wholeFigure(machines)} of its machines, drawn by lot: what stands here is of those.`,
  pushed: 'Wider than the window: left and right arrow keys push it',
  close: 'Close',
  cancel: 'Leave as it was',
} as const;
