/**
 * Words that stand on screens and on papers alike, in English. What only a screen says stands in renderer/words, what
 * only a paper says in papers/slipWords.ts. Another language is another set of these files.
 */
export const months = ['Jan', 'Feb', 'Mar', 'Apr', 'May', 'Jun', 'Jul', 'Aug', 'Sep', 'Oct', 'Nov', 'Dec'] as const;

export const shared = {
  doNotUse: 'DO NOT USE',
  passed: 'passed',
  checkNextWinter: 'check next winter',
  asOf: 'As of',
  planningAid: 'Planning aid',
  notACertificate: 'not a certificate',
} as const;

/** "1 machine", "64 machines": the noun in the number that goes with the count. */
export const counted = (count: number, one: string, many: string): string => (count === 1 ? one : many);
