import { expect, it } from 'vitest';
import { aPoint, aShopLife, aSize } from '#tests/support/aShopLife.ts';
import { defaultModelSettings } from '../fit/modelSettings.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import { day } from '../units/day.ts';
import { lawsOfMachine, learnClasses, seriesOfShop } from '../way.ts';
import { partsOfMachine } from './shopSeries.ts';
import { type WidthSource, widthWithout } from './widthWithout.ts';

const AS_OF = day('2026-11-10');

/** What share of the range each source takes with it once it is known. */
function narrower(points: readonly PointOnRecord[], pointId: number): Record<WidthSource, number> {
  const shop = seriesOfShop(aShopLife({ points }), AS_OF);
  const learning = learnClasses(shop);
  const { laws } = lawsOfMachine(shop, 1, learning);
  const from = {
    laws,
    pool: learning.shop,
    parts: partsOfMachine(shop, 1),
    coverage: [],
    settings: defaultModelSettings,
  };
  const width = widthWithout({ ...from, pointId, limitWearMm: 1 })!;
  const shares = width.without.map(({ source, hours }) => [source, 1 - hours / width.hours]);
  return Object.fromEntries(shares) as Record<WidthSource, number>;
}

const read = (gaugeErrorMm: number, pointId = 1) =>
  aPoint(pointId, { gaugeErrorMm, sizes: [aSize(1, '2023-11-01', 39.7), aSize(2, '2026-11-01', 39.4)] });

it('knowing more never widens the range, and nothing takes it whole', () => {
  for (const pointId of [1, 2])
    for (const [source, share] of Object.entries(narrower([read(0.03), aPoint(2)], pointId))) {
      expect(share, source).toBeGreaterThan(-0.01);
      expect(share, source).toBeLessThan(1);
    }
});

it('a part never read is uncertain by its class, its machine and itself, not by its gauge or by drift', () => {
  const share = narrower([read(0.03), aPoint(2)], 2);
  expect(share['own-rate'] + share.class + share.machine).toBeGreaterThan(0.3);
  expect(share['own-rate']).toBeGreaterThan(0.1);
  expect(share.gauge).toBeCloseTo(0, 9);
  expect(share.start).toBeCloseTo(0, 9);
  expect(share.drift).toBeCloseTo(0, 9);
});

it('a coarse gauge takes more of the range with it once it is fine', () => {
  expect(narrower([read(0.15)], 1).gauge).toBeGreaterThan(narrower([read(0.02)], 1).gauge + 0.05);
});

it('unknown hours of fitting count as a doubtful start', () => {
  const unknown = aPoint(1, { fittedMachineHours: null, sizes: [aSize(2, '2026-11-01', 39.4)] });
  expect(narrower([unknown], 1).start).toBeGreaterThan(0.02);
  expect(narrower([read(0.03)], 1).start).toBeCloseTo(0, 9);
});

it('sizes of its own leave less to its class than none do', () => {
  const share = (pointId: number) => narrower([read(0.02), aPoint(2)], pointId).class;
  expect(share(1)).toBeLessThan(share(2));
});

it('drift says more the further the limit lies beyond the last size', () => {
  const early = aPoint(1, { sizes: [aSize(1, '2023-11-01', 39.9)] });
  const late = aPoint(1, { sizes: [aSize(1, '2023-11-01', 39.7), aSize(2, '2026-11-01', 39.2)] });
  expect(narrower([early], 1).drift).toBeGreaterThan(narrower([late], 1).drift);
});
