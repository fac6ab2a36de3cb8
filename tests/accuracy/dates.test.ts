import { expect, it } from 'vitest';
import { defaultModelSettings } from '#core/fit/modelSettings.ts';
import { longRun } from '#tests/support/counts.ts';
import { chance } from './chance.ts';
import { bandOverFarms, datesOf, simulatedChancesBy } from './dates.ts';
import { knownUses } from './tables/datesTable.ts';

for (const [k, { title, of }] of knownUses.entries())
  it(`the 10, 50 and 90 % days are those of a simulation that knows none of the program's sums: ${title}`, () => {
    const { low, middle, high } = datesOf(of);
    const chances = simulatedChancesBy(of, [low!, middle!, high!], longRun ? 400_000 : 40_000, chance(300 + k));
    // a day more or less is up to 0.004; what is drawn by lot another 0.006 (2 sd of the fewest that count)
    for (const [i, want] of [0.1, 0.5, 0.9].entries()) expect(Math.abs(chances[i]! - want)).toBeLessThan(0.012);
  });

it('from sizes to days: the 80 % band holds 72 to 88 % of restless farms with seasons of their own', () => {
  const { farms, inside } = bandOverFarms(longRun ? 50 : 3, 1, defaultModelSettings, 40_000);
  expect(farms).toBeGreaterThan(longRun ? 1500 : 80);
  // three shops are few: chance alone moves their share by 0.04
  expect(inside).toBeGreaterThan(longRun ? 0.72 : 0.66);
  expect(inside).toBeLessThan(longRun ? 0.88 : 0.92);
});
