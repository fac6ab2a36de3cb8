/**
 * Words shared by every screen, in English. Screens keep no words of their own: a screen's words stand in a file of this
 * folder named for it. Another language is another set of these files.
 */
export const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

export const shared = {
  program: 'Hours and Wear',
  low: 'low',
  middle: 'middle',
  high: 'high',
  now: 'now',
  estimated: 'est.',
  doNotUse: 'DO NOT USE',
  passed: 'passed',
  noForecast: 'no forecast',
  checkNextWinter: 'check next winter',
  beyondScale: 'beyond reckoning',
  notKnown: 'not known',
  find: 'find a machine, farm or serial',
  close: 'Close',
  cancel: 'Leave as it was',
  asOf: 'As of',
  planningAid: 'Planning aid',
  notACertificate: 'not a certificate',
} as const;

/** "1 machine", "64 machines": the noun in the number that goes with the count. */
export const counted = (count: number, one: string, many: string): string => (count === 1 ? one : many);
