import { expect, it } from 'vitest';
import { aReading, aSeries } from '#tests/accuracy/aSeries.ts';
import { learnShop } from '../fit/learnShop.ts';
import { machineLaws } from '../fit/machineLaws.ts';
import { defaultModelSettings as settings } from '../fit/modelSettings.ts';
import { hoursAtLimit } from '../forecast/hoursAtLimit.ts';
import { wearAt } from '../forecast/wearAt.ts';
import { lawsAsSaid } from './lawsAsSaid.ts';

const parts = [
  aSeries({ pointId: 1, readings: [aReading({ workedHours: 1500, wearMm: 0.7 })] }),
  aSeries({ pointId: 2, readings: [] }),
];
const priors = new Map([
  ['slide', { partClass: 'slide', hRefHours: 5500, m0: Math.log(2.5), s0: 0.35, from: 'trade' as const }],
]);
const pool = learnShop(parts, priors, settings);
const plain = machineLaws(pool, parts, settings);
const coverage = (change: object) => [{ partClass: 'slide', sizes: 40, inside: 20, z: -4, widenBy: 1.5, ...change }];

it('a class too sure of itself is told as much wider, about the same middle', () => {
  const said = lawsAsSaid(pool, parts, settings, coverage({}));
  said.forEach((law, i) => {
    expect(law.widenedBy).toBe(1.5);
    const [was, is] = [plain[i]!, law].map((one) => hoursAtLimit(one, 2.5, settings));
    expect(is!.low!).toBeLessThan(was!.low!);
    expect(is!.high!).toBeGreaterThan(was!.high!);
    expect(is!.middle! / was!.middle!).toBeCloseTo(1, 1);
    const [before, after] = [plain[i]!, law].map((one) => wearAt(one, 3500, settings));
    const widthOf = ({ low, high }: { low: number; high: number }) => high - low;
    expect(widthOf(after!) / widthOf(before!)).toBeGreaterThan(1.35);
    expect(widthOf(after!) / widthOf(before!)).toBeLessThan(1.75);
  });
});

it('no other class is: too wide, within chance, of too few sizes, or where the shop has switched it off', () => {
  for (const change of [{ z: 4 }, { z: -2 }, { sizes: 19 }, { partClass: 'pin' }])
    expect(lawsAsSaid(pool, parts, settings, coverage(change))).toEqual(plain);
  expect(lawsAsSaid(pool, parts, { ...settings, widenOffCoverage: 0 }, coverage({}))).toEqual(plain);
});
