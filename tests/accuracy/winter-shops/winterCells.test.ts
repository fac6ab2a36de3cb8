import { describe, expect, test } from 'vitest';
import { longRun } from '#tests/support/counts.ts';
import { printWinterCells } from '../tables/wintersTable.ts';
import { everyHours } from './policies.ts';
import { costOfRun, shopRun } from './shopRun.ts';
import { POSITIONS, pricesOf, trueShop } from './trueShop.ts';
import { CELLS, winterCells } from './winterCells.ts';

describe('winters of invented shops', () => {
  test('prices say what they are called: the strip-down is its share of a job that renews everything', () => {
    const work = POSITIONS.reduce((sum, { ownHours, partsCost }) => sum + ownHours + partsCost, 0);
    for (const { breakdownCost, stripDownShare } of CELLS) {
      const { visitHours, takeOffHours } = pricesOf(breakdownCost, stripDownShare);
      const opening = [...takeOffHours.values()].reduce((sum, hours) => sum + hours, visitHours);
      expect(opening / (opening + work)).toBeCloseTo(stripDownShare, 9);
    }
  });

  test('a part wears upwards and reaches its limit at its hours at limit, whatever becomes of the others', () => {
    const shop = trueShop(5, 2);
    for (const [position, { of }] of POSITIONS.entries()) {
      const { atLimitHours, wearMm } = shop.life(1, position, 3);
      expect(wearMm(atLimitHours)).toBeCloseTo(of.limitMm, 6);
      for (let k = 0; k < 20; k++)
        expect(wearMm((k * atLimitHours) / 20)).toBeLessThanOrEqual(wearMm(((k + 1) * atLimitHours) / 20));
      expect(trueShop(5, 2).life(1, position, 3).atLimitHours).toBe(atLimitHours);
    }
  });

  test('a run is paid for what it did', async () => {
    const shop = trueShop(5, 2);
    const prices = pricesOf(30, 0.5);
    const run = await shopRun(shop, everyHours, prices);
    expect(run.renewals).toBeGreaterThan(run.breakdowns);
    expect(costOfRun(run, pricesOf(130, 0.5)) - costOfRun(run, prices)).toBeCloseTo(100 * run.breakdowns, 6);
  });

  test('the plan costs less than the best of three rules of thumb, and lets no more break than renewing all every 5,500 h', async () => {
    const [seeds, machines, winters] = longRun ? [[1], 6, 14] : [[1], 2, 7];
    const cells = longRun
      ? CELLS
      : CELLS.filter(({ breakdownCost: cost, stripDownShare }) => cost === 30 && stripDownShare === 0.5);
    const results = await winterCells(cells, seeds, machines, winters);
    printWinterCells(results, seeds.length, machines, winters);
    for (const { breakdownCost, stripDownShare, ofBest, breakdowns } of results) {
      const cell = `breakdown ${breakdownCost} h, strip-down ${stripDownShare}`;
      expect(ofBest, cell).toBeLessThan(1);
      expect(breakdowns.plan, cell).toBeLessThanOrEqual(breakdowns.everyHours);
    }
    expect(results.filter(({ ofBest }) => ofBest <= 0.85).length).toBeGreaterThan(results.length / 2);
    const found = results.reduce((sum, cell) => sum + cell.found, 0);
    const inside = results.reduce((sum, cell) => sum + cell.cover * cell.found, 0);
    // few sizes of few machines scatter by themselves
    const [low, high] = longRun ? [0.76, 0.84] : [0.68, 0.92];
    expect(inside / found).toBeGreaterThanOrEqual(low);
    expect(inside / found).toBeLessThanOrEqual(high);
  });
});
