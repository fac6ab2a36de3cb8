/**
 * A season as relative use by month with mean 1: what the record holds. Typed figures only say how the months stand to
 * each other, so they are brought to mean 1 here.
 * @returns null when no month has any use
 */
export function seasonOf(months: readonly number[]): number[] | null {
  const sum = months.reduce((total, month) => total + month, 0);
  if (!(sum > 0)) return null;
  return months.map((month) => Math.round((month * months.length * 1000) / sum) / 1000);
}

/** Share of the year's use in each month, whole per cent: what the screen shows and takes. */
export const seasonPercent = (season: readonly number[]): number[] =>
  season.map((month) => Math.round((month / season.length) * 1000) / 10);
