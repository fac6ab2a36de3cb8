import { describe, expect, test } from 'vitest';
import { caseCount } from '#tests/support/counts.ts';
import { seededDice } from '#tests/support/seededDice.ts';
import { boundProgram, type IntegerProgram, solveProgram } from './integerProgram.ts';

/** A knapsack: the most profit within a capacity, as the least of its opposite. */
const knapsack = (profits: readonly number[], weights: readonly (readonly number[])[], room: readonly number[]) =>
  ({
    cost: profits.map((profit) => -profit),
    yesOrNo: new Set(profits.keys()),
    rules: weights.map((of, row) => ({
      sum: of.map((weight, item) => [item, weight] as const),
      is: '<=' as const,
      than: room[row]!,
    })),
  }) satisfies IntegerProgram;

describe('an integer program', () => {
  /** @source J. Burkardt, Florida State University, KNAPSACK_01, data set P01: ten items, best profit 309 (from memory) */
  test('finds the best of a published knapsack', async () => {
    const profits = [92, 57, 49, 68, 60, 43, 67, 84, 87, 72];
    const weights = [23, 31, 29, 44, 53, 38, 63, 85, 89, 82];
    const solved = (await solveProgram(knapsack(profits, [weights], [165])))!;
    expect(solved.cost).toBeCloseTo(-309, 6);
    expect(solved.values.map((value) => Math.abs(Math.round(value)))).toEqual([1, 1, 1, 1, 0, 1, 0, 0, 0, 0]);
    expect(solved.proven).toBe(true);
  });

  test('says that nothing holds every rule', async () => {
    const none = { cost: [1], yesOrNo: new Set([0]), rules: [{ sum: [[0, 1]] as const, is: '>=' as const, than: 2 }] };
    expect(await boundProgram(none, 10)).toEqual({ found: null, bound: Number.POSITIVE_INFINITY });
  });

  test('ended after its first branch, what it proves lies under the best choice and what it found holds every rule', async () => {
    const { uniform } = seededDice(165);
    let ended = 0;
    for (let round = 0; round < caseCount(40); round++) {
      const items = 16;
      const some = () => Array.from({ length: items }, () => 5 + Math.floor(40 * uniform()));
      const profits = some();
      const weights = Array.from({ length: 12 }, some);
      const room = weights.map((of) => Math.floor(of.reduce((sum, each) => sum + each, 0) / 2));
      const best = mostProfit(profits, weights, room);
      const { found, bound } = await boundProgram(knapsack(profits, weights, room), 1);
      expect(bound).toBeLessThanOrEqual(-best + 1e-6);
      expect(bound).toBeGreaterThan(Number.NEGATIVE_INFINITY);
      if (found) expect(found.cost).toBeGreaterThanOrEqual(-best - 1e-6);
      if (found)
        for (const [row, of] of weights.entries())
          expect(of.reduce((sum, each, k) => sum + each * found.values[k]!, 0)).toBeLessThanOrEqual(room[row]! + 1e-5);
      if (!found?.proven) ended++;
    }
    // else nothing was ended
    expect(ended).toBeGreaterThan(0);
  });
});

function mostProfit(profits: readonly number[], weights: readonly (readonly number[])[], room: readonly number[]) {
  let most = 0;
  for (let choice = 0; choice < 2 ** profits.length; choice++) {
    const sum = (of: readonly number[]) => of.reduce((all, each, k) => all + (((choice >> k) & 1) === 1 ? each : 0), 0);
    if (weights.every((of, row) => sum(of) <= room[row]!)) most = Math.max(most, sum(profits));
  }
  return most;
}
