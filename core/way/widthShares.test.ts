import { expect, it } from 'vitest';
import { aPoint, aShopLife, aSize } from '#tests/support/aShopLife.ts';
import { defaultModelSettings } from '../fit/modelSettings.ts';
import { day } from '../units/day.ts';
import { learnClasses, seriesOfShop } from '../way.ts';
import { partsOfMachine } from './shopSeries.ts';
import { type WidthShare, widthShares } from './widthShares.ts';

const AS_OF = day('2026-11-10');

function sharesOf(points: ReturnType<typeof aPoint>[], pointId: number): Map<WidthShare['source'], number> {
  const shop = seriesOfShop(aShopLife({ points }), AS_OF);
  const pool = learnClasses(shop).shop;
  const parts = partsOfMachine(shop, 1);
  const shares = widthShares({ pool, parts, pointId, limitWearMm: 1, settings: defaultModelSettings });
  return new Map(shares.map(({ source, share }) => [source, share]));
}

const read = (gaugeErrorMm: number) =>
  aPoint(1, { gaugeErrorMm, sizes: [aSize(1, '2023-11-01', 39.7), aSize(2, '2026-11-01', 39.4)] });

it('shares add up to the whole', () => {
  const shares = sharesOf([read(0.03), aPoint(2)], 1);
  expect([...shares.values()].reduce((sum, share) => sum + share, 0)).toBeCloseTo(1, 9);
  expect([...shares.values()].every((share) => share >= 0)).toBe(true);
});

it('a part never read is uncertain by its own rate and its class, not by its gauge or by drift', () => {
  const shares = sharesOf([read(0.03), aPoint(2)], 2);
  expect(shares.get('own-rate')! + shares.get('class')!).toBeGreaterThan(0.4);
  expect(shares.get('drift')).toBe(0);
});

it('a coarse gauge takes a greater share of the width', () => {
  expect(sharesOf([read(0.15)], 1).get('gauge')!).toBeGreaterThan(sharesOf([read(0.02)], 1).get('gauge')!);
});

it('unknown hours of fitting count as a doubtful start', () => {
  const unknown = aPoint(1, { fittedMachineHours: null, sizes: [aSize(2, '2026-11-01', 39.4)] });
  expect(sharesOf([unknown], 1).get('start')!).toBeGreaterThan(0.02);
  expect(sharesOf([read(0.03)], 1).get('start')).toBe(0);
});
