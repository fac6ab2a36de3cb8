type Facts = Record<string, string | number | boolean | null>;

/** What was expected of a size that is odd, in the fewest words. */
const EXPECTED: Record<string, (facts: Facts) => string> = {
  'ten-times-off': ({ likelyMm }) => `perhaps ${likelyMm} mm`,
  'wrong-unit': ({ unit, likelyMm }) => `mm; perhaps typed in ${unit}: ${likelyMm} mm`,
  'better-than-last': ({ lastSizeMm, lastOn, gaugeMm }) =>
    `within ${Number(gaugeMm).toFixed(2)} mm of ${lastSizeMm} mm, as measured on ${lastOn}, or worn further`,
  'better-than-new': ({ newSizeMm, gaugeMm }) =>
    `within ${Number(gaugeMm).toFixed(2)} mm of the new size ${newSizeMm} mm, or worn`,
  'odd-new-size': ({ newSizeMm }) => `a size about the new size ${newSizeMm} mm, which is used instead`,
  'past-reject': ({ rejectAtMm }) => `not beyond reject-at ${rejectAtMm} mm; it is used all the same`,
};

export const sizeExpected = (code: string, facts: Facts): string =>
  EXPECTED[code]?.(facts) ?? 'a size like the others of this point';
