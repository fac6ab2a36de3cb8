import { join } from 'node:path';
import { expect, test } from 'vitest';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import type { ShopLife } from '#core/shop/shopLife.ts';
import { day } from '#core/units/day.ts';
import { rateOfPoint } from '#core/way/rateOfPoint.ts';
import { forecastsOfMachine, hoursLeftOfMachine, seriesOfShop } from '#core/way.ts';
import { aRecord, brought, filesOf } from '#tests/support/aRecord.ts';
import { longRun } from '#tests/support/counts.ts';
import { DEMO_DAY, learningOfDemo } from '#tests/support/learnedDemo.ts';

/** In the daily run every third machine, and those with something found at them. */
const machinesTried = ({ machines, findings }: ShopLife) =>
  machines.filter(({ machineId }, place) => longRun || place % 3 === 0 || isFoundAt(machineId, findings));
const isFoundAt = (machineId: number, findings: ShopLife['findings']): boolean =>
  findings.some((finding) => finding.machineId === machineId);

test('hours left and rates alone are those of the whole forecast, parts not to be used included', async () => {
  const asOf = day(DEMO_DAY);
  const record = aRecord();
  brought(record, filesOf(join(import.meta.dirname, '..', '..', 'demo-data', 'workshop')), { asOf });
  const shop = seriesOfShop(loadShopLife(record, { asOf }), asOf);
  record.close();
  const learning = await learningOfDemo();
  let stopped = 0;
  for (const { machineId } of machinesTried(shop.life)) {
    const { points, laws } = forecastsOfMachine(shop, machineId, learning);
    stopped += points.filter(({ cautions }) => cautions.includes('do-not-use')).length;
    const whole = new Map(points.map(({ pointId, hoursLeft }) => [pointId, hoursLeft]));
    expect(hoursLeftOfMachine(shop, machineId, learning)).toEqual(whole);
    for (const { pointId, ratePer1000hMm } of points) {
      const point = shop.life.points.find((one) => one.pointId === pointId)!;
      expect(rateOfPoint(shop, point, laws)).toEqual(ratePer1000hMm);
    }
  }
  expect(stopped).toBeGreaterThan(0);
});
