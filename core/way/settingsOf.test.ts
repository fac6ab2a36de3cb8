import { describe, expect, it } from 'vitest';
import { aMachine, aPoint, aShopLife, aSize } from '#tests/support/aShopLife.ts';
import { USUAL_FORECAST_SETTINGS } from '../shop/forecastSettings.ts';
import type { ShopLife } from '../shop/shopLife.ts';
import { day } from '../units/day.ts';
import { forecastShop, learnClasses, seriesOfShop } from '../way.ts';
import { expectedLnHarshness, settingsOf } from './settingsOf.ts';

const AS_OF = day('2026-11-10');
const doing = (...words: (string | null)[]) =>
  aMachine({
    workShares: words.map((workType, i) => ({
      from: i === 0 ? null : day(`202${3 + i}-01-01`),
      share: 1,
      workType,
    })),
  });
const life = (machine: ReturnType<typeof aMachine>, its: Partial<ShopLife> = {}) =>
  aShopLife({ machines: [machine], points: [aPoint(1), aPoint(2)], ...its });
const rateOf = (of: ShopLife, pointId = 1) =>
  forecastShop(of, AS_OF).machines[0]!.points.find((one) => one.pointId === pointId)!.ratePer1000hMm.middle!;

describe("the shop's word on a machine's work", () => {
  it('moves parts never measured by what its kind stands for, drawn towards the usual', () => {
    const usual = rateOf(life(aMachine()));
    expect(rateOf(life(doing('hard'))) / usual).toBeCloseTo(1.25 ** 0.75, 2);
    expect(rateOf(life(doing(' Light '))) / usual).toBeCloseTo(0.8 ** 0.75, 2);
    expect(rateOf(life(doing('ploughing the moon')))).toBeCloseTo(usual, 9);
  });

  it('is the one that holds on the day asked for, by the list of the shop', () => {
    const own = aShopLife({
      forecastSettings: { changed: { workTypeTrust: 1 }, workTypes: [{ name: 'Silage', timesAsFast: 1.5 }] },
    });
    expect(expectedLnHarshness(doing('silage', 'hard'), day('2023-06-01'), own)).toBeCloseTo(Math.log(1.5), 9);
    expect(expectedLnHarshness(doing('silage', 'hard'), AS_OF, own)).toBe(0);
    expect(expectedLnHarshness(doing('hard', 'silage'), AS_OF, own)).toBeCloseTo(Math.log(1.5), 9);
    expect(expectedLnHarshness(aMachine(), AS_OF, own)).toBe(0);
  });

  it('is overruled by sizes', () => {
    const points = [1, 2, 3].map((pointId) =>
      aPoint(pointId, {
        sizes: ['2022-11-01', '2024-11-01', '2026-11-01'].map((on, i) =>
          aSize(10 * pointId + i, on, 40 - 0.16 * (2 * i + 2)),
        ),
      }),
    );
    const measured = rateOf(life(aMachine(), { points }));
    expect(rateOf(life(doing('hard'), { points })) / measured).toBeLessThan(1.05);
  });
});

it('a setting or a word that is changed is learned from anew', () => {
  const named = (of: ShopLife) => learnClasses(seriesOfShop(of, AS_OF)).fingerprint;
  const before = named(aShopLife());
  expect(named(aShopLife())).toBe(before);
  expect(named(aShopLife({ forecastSettings: { ...USUAL_FORECAST_SETTINGS, changed: { driftDelta: 0.2 } } }))).not.toBe(
    before,
  );
  expect(named(aShopLife({ machines: [doing('hard')] }))).not.toBe(before);
});

it('the length of jobs and the scatter of use come from the settings', () => {
  const set = (changed: Record<string, number>) => ({ forecastSettings: { ...USUAL_FORECAST_SETTINGS, changed } });
  expect(settingsOf(aShopLife(set({ useScaleHours: 80 }))).useScaleHours).toBe(80);
  const habit = (changed: Record<string, number>) => seriesOfShop(aShopLife(set(changed)), AS_OF).hours.habit;
  expect(habit({ useScaleHours: 200 }).jobHours).toBeGreaterThan(habit({ useScaleHours: 10 }).jobHours);
  const spread = (useLnSd: number) => {
    const once = aMachine({ dialEvents: [] });
    const { use } = seriesOfShop(aShopLife({ machines: [once], ...set({ useLnSd }) }), AS_OF).hours.ofMachine(1)!;
    return use.hoursPerYear.high / use.hoursPerYear.low;
  };
  expect(spread(1)).toBeGreaterThan(2 * spread(0.3));
});
