/**
 * The middle of a list, the mean of the two middle ones when their number is even.
 * @returns null for an empty list
 * @source common practice
 * @example median([3, 1, 2]) // 2
 */
export function median(values: readonly number[]): number | null {
  if (values.length === 0) return null;
  const sorted = [...values].sort((a, b) => a - b);
  const half = sorted.length >> 1;
  return sorted.length % 2 === 1 ? sorted[half]! : (sorted[half - 1]! + sorted[half]!) / 2;
}
