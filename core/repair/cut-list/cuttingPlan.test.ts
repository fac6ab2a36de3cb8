import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import { orRefuse } from '../../outcome.ts';
import { cutList, rackOf } from './cutList.ts';
import type { CutDemand, Saw } from './cutPatterns.ts';
import { cuttingPlan, type StockBars } from './cuttingPlan.ts';
import type { PartToMake } from './partToMake.ts';
import { roundBarFor } from './stockSize.ts';

const SAW: Saw = { kerfMm: 3, trimMm: 5 };
const bought = (lengthMm: number): StockBars => ({ lengthMm, count: null });
const plan = async (demand: CutDemand[], stock: StockBars[]) => orRefuse(await cuttingPlan(demand, stock, SAW, 150));

/** Least length of bar by trying every way: each piece in turn into every open bar, or into a new one of each length. */
function leastByTrying(demand: readonly CutDemand[], lengthsMm: readonly number[], { kerfMm, trimMm }: Saw): number {
  const pieces = demand.flatMap(({ lengthMm, count }) => Array.from({ length: count }, () => lengthMm));
  let least = Number.POSITIVE_INFINITY;
  const place = (next: number, leftMm: number[], openedMm: number): void => {
    if (openedMm >= least) return;
    const piece = pieces[next];
    if (piece === undefined) {
      least = openedMm;
      return;
    }
    for (const [i, left] of leftMm.entries())
      if (left >= piece)
        place(
          next + 1,
          leftMm.map((one, j) => (j === i ? one - piece - kerfMm : one)),
          openedMm,
        );
    for (const barMm of lengthsMm)
      if (barMm - trimMm >= piece) place(next + 1, [...leftMm, barMm - trimMm - piece - kerfMm], openedMm + barMm);
  };
  place(0, [], 0);
  return least;
}

describe('a cutting plan', () => {
  const someDemand = fc.array(
    fc.record({ lengthMm: fc.integer({ min: 40, max: 480 }), count: fc.integer({ min: 1, max: 3 }) }),
    { minLength: 1, maxLength: 3 },
  );

  test('cuts into no more bar than the best of all plans there are', async () => {
    const lengths = fc.uniqueArray(fc.constantFrom(500, 620, 1000), { minLength: 1, maxLength: 2 });
    await fc.assert(
      fc.asyncProperty(someDemand, lengths, async (demand, lengthsMm) => {
        const found = await plan(demand, lengthsMm.map(bought));
        expect(found.proven).toBe(true);
        expect(found.barsMm).toBe(leastByTrying(demand, lengthsMm, SAW));
      }),
      { numRuns: 40 },
    );
  });

  test('gives every piece wanted and no other, and no bar holds more than its length', async () => {
    await fc.assert(
      fc.asyncProperty(someDemand, async (demand) => {
        const found = await plan(demand, [bought(1000)]);
        const cut = found.bars.flatMap(({ piecesMm }) => piecesMm).sort((a, b) => a - b);
        const wanted = demand.flatMap(({ lengthMm, count }) => Array.from({ length: count }, () => lengthMm));
        expect(cut).toEqual(wanted.sort((a, b) => a - b));
        for (const { barMm, piecesMm } of found.bars) {
          const taken = SAW.trimMm + piecesMm.reduce((sum, mm) => sum + mm, 0) + (piecesMm.length - 1) * SAW.kerfMm;
          expect(taken).toBeLessThanOrEqual(barMm);
        }
      }),
      { numRuns: 40 },
    );
  });

  test('is the same every time', async () => {
    const demand = [210, 180, 95, 60].map((lengthMm, i) => ({ lengthMm, count: 3 + i }));
    expect(await plan(demand, [bought(1000)])).toEqual(await plan(demand, [bought(1000)]));
  });

  test('takes an end from the rack before a new bar is cut into', async () => {
    const found = await plan([{ lengthMm: 120, count: 2 }], [{ lengthMm: 260, count: 1 }, bought(3000)]);
    expect(found.bars).toEqual([{ barMm: 260, piecesMm: [120, 120], leftMm: 9, keep: false }]);
  });

  test('keeps an end that is worth keeping and counts the rest as waste', async () => {
    const found = await plan([{ lengthMm: 500, count: 1 }], [bought(1000)]);
    expect(found.bars[0]).toMatchObject({ leftMm: 492, keep: true });
    expect(found.wasteMm).toBe(8);
  });

  test('too many ways to list them all: a plan all the same, said to be unproven', async () => {
    const demand = Array.from({ length: 14 }, (_, i) => ({ lengthMm: 61 + 7 * i, count: 6 }));
    const found = await plan(demand, [bought(3000)]);
    expect(found.bars.flatMap(({ piecesMm }) => piecesMm)).toHaveLength(14 * 6);
    expect(found.proven).toBe(false);
  });

  test('a piece longer than every bar, and too few bars, are refused', async () => {
    expect(await cuttingPlan([{ lengthMm: 999, count: 1 }], [bought(1000)], SAW, 150)).toMatchObject({
      refusal: { code: 'piece-longer-than-bars', facts: { pieceMm: 999, barMm: 995 } },
    });
    const one = [{ lengthMm: 300, count: 1 }];
    expect(await cuttingPlan([{ lengthMm: 200, count: 2 }], one, SAW, 150)).toMatchObject({
      refusal: { code: 'not-enough-bars' },
    });
  });
});

describe('a cut list', () => {
  const pin = (diameterMm: number, lengthMm: number, count = 1): PartToMake => ({
    ...{ kind: 'pin', name: 'made up', count, material: 'steel', sizes: [] },
    stock: { shape: 'round', diameterMm, widthMm: null, thicknessMm: null, lengthMm },
  });

  test('goes by the bar, thin ones first, each with its plan', async () => {
    const found = orRefuse(await cutList([pin(100, 90), pin(45, 160, 2), pin(45, 120)], rackOf()));
    expect(found.map(({ bar, plan }) => [bar, plan.bars[0]?.piecesMm])).toEqual([
      ['steel round 45', [160, 160, 120]],
      ['steel round 100', [90]],
    ]);
  });

  test('a bar thick enough to turn it from', () => {
    expect(orRefuse(roundBarFor(40))).toBe(45);
    expect(orRefuse(roundBarFor(43))).toBe(45);
    expect(roundBarFor(250)).toMatchObject({ refusal: { code: 'no-bar-that-thick' } });
  });
});
