/** True in `npm run test:long`. */
export const longRun = process.env.HOURS_LONG === '1';

/** How many cases a check tries: all of them in the long run, a twentieth in the daily one. */
export const caseCount = (whole: number): number => (longRun ? whole : Math.ceil(whole / 20));
