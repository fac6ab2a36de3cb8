/** The largest nominal size the tables below speak of [mm]. */
export const LARGEST_NOMINAL_MM = 500;

/**
 * Which step of sizes a nominal size belongs to: over one bound, up to and including the next. 50 belongs to "over 30 up to 50".
 *
 * @param upToMm upper bounds of the steps, rising [mm]
 * @returns index of the step, or null outside 0 < size up to the last bound
 * @source ISO 286-1:2010, head of Table 1
 * @example sizeStep(50, [3, 6, 10, 18, 30, 50, 80]) // 5
 */
export function sizeStep(nominalMm: number, upToMm: readonly number[]): number | null {
  if (!(nominalMm > 0)) return null;
  const step = upToMm.findIndex((bound) => nominalMm <= bound);
  return step === -1 ? null : step;
}
