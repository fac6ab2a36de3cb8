import type { CutDemand, CutPattern, Saw } from './cutPatterns.ts';
import type { StockBars } from './cuttingPlan.ts';

/**
 * A plan by hand's own rule: longest piece first, into the first bar with room, from short bars before long ones.
 *
 * @param demand longest first
 * @returns null: there are not bars enough
 * @source first fit decreasing: D. S. Johnson, Near-optimal bin packing algorithms (1973)
 */
export function firstFit(
  demand: readonly CutDemand[],
  stock: readonly StockBars[],
  saw: Saw,
): { lengthMm: number; pattern: CutPattern }[] | null {
  const rack = [...stock].sort((one, other) => one.lengthMm - other.lengthMm).map((bars) => ({ ...bars }));
  const open: { lengthMm: number; leftMm: number; pattern: number[] }[] = [];
  for (const [i, { lengthMm, count }] of demand.entries())
    for (let piece = 0; piece < count; piece++) {
      let bar = open.find(({ leftMm }) => leftMm >= lengthMm);
      if (!bar) {
        const from = rack.find((bars) => bars.count !== 0 && bars.lengthMm - saw.trimMm >= lengthMm);
        if (!from) return null;
        if (from.count !== null) from.count--;
        bar = { lengthMm: from.lengthMm, leftMm: from.lengthMm - saw.trimMm, pattern: demand.map(() => 0) };
        open.push(bar);
      }
      bar.leftMm -= lengthMm + saw.kerfMm;
      bar.pattern[i] = (bar.pattern[i] ?? 0) + 1;
    }
  return open.map(({ lengthMm, pattern }) => ({ lengthMm, pattern }));
}
