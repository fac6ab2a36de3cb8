/** Lengths to cut, each so many times [mm]. */
export type CutDemand = { lengthMm: number; count: number };

/** What the saw takes: each cut, and squaring off a bar's first end [mm]. */
export type Saw = { kerfMm: number; trimMm: number };

/** How often each length comes out of one bar; in the order of the demand. */
export type CutPattern = readonly number[];

/**
 * Length of bar that pieces take: a cut after each but where the last one ends with the bar.
 *   taken = trim + sum of lengths + (pieces - 1) kerf
 *
 * @returns [mm]; 0 for no pieces
 * @source own derivation
 * @example takenMm([2], [{ lengthMm: 100, count: 2 }], { kerfMm: 3, trimMm: 5 }) // 208
 */
export function takenMm(pattern: CutPattern, demand: readonly CutDemand[], { kerfMm, trimMm }: Saw): number {
  const pieces = pattern.reduce((sum, times) => sum + times, 0);
  const lengthMm = pattern.reduce((sum, times, i) => sum + times * (demand[i]?.lengthMm ?? 0), 0);
  return pieces === 0 ? 0 : trimMm + lengthMm + (pieces - 1) * kerfMm;
}

/**
 * Every way to cut a bar so full that no further wanted piece goes in; no more of a length than is wanted.
 *
 * @param most give up beyond so many
 * @returns null: more than `most`
 * @source own derivation: plain enumeration, longest pieces first
 */
export function fullPatterns(barMm: number, demand: readonly CutDemand[], saw: Saw, most: number): CutPattern[] | null {
  const found: CutPattern[] = [];
  const pattern = demand.map(() => 0);
  // each piece brings its cut; the last cut may fall off the end of the bar
  const roomMm = barMm - saw.trimMm + saw.kerfMm;
  const shortest = Math.min(...demand.filter(({ count }) => count > 0).map(({ lengthMm }) => lengthMm));
  const fill = (from: number, leftMm: number): boolean => {
    if (from === demand.length) {
      if (isFull(pattern, demand, leftMm, saw)) found.push([...pattern]);
      return found.length <= most;
    }
    const { lengthMm, count } = demand[from] ?? { lengthMm: 0, count: 0 };
    const fits = leftMm < shortest ? 0 : Math.min(count, Math.floor((leftMm + DUST_MM) / (lengthMm + saw.kerfMm)));
    for (let times = fits; times >= 0; times--) {
      pattern[from] = times;
      if (!fill(from + 1, leftMm - times * (lengthMm + saw.kerfMm))) return false;
    }
    pattern[from] = 0;
    return true;
  };
  return fill(0, roomMm) ? found.filter((one) => one.some((times) => times > 0)) : null;
}

/** Sums of tenths of a millimetre leave dust. */
const DUST_MM = 1e-6;

const isFull = (pattern: readonly number[], demand: readonly CutDemand[], leftMm: number, { kerfMm }: Saw): boolean =>
  demand.every(({ lengthMm, count }, i) => (pattern[i] ?? 0) >= count || lengthMm + kerfMm > leftMm + DUST_MM);
