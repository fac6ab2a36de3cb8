import { describe, expect, it } from 'vitest';
import { aReading, aSeries } from '#tests/accuracy/aSeries.ts';
import { forecastSet } from '#tests/accuracy/forecastSet.ts';
import { scoreHours } from '#tests/accuracy/scores.ts';
import { type ShopSet, shopH } from '#tests/accuracy/shopSets.ts';
import { COARSE } from '#tests/support/coarseForecasts.ts';
import { seededDice } from '#tests/support/seededDice.ts';
import type { ClassPrior } from './classPrior.ts';
import { learnShop } from './learnShop.ts';
import { machineLaws } from './machineLaws.ts';
import { defaultModelSettings as settings } from './modelSettings.ts';

const prior: ClassPrior = { partClass: 'slide', hRefHours: 5500, m0: Math.log(2.5), s0: 0.35, from: 'trade' };

/** Four machines with two parts each that wear as the trade says; the fifth is the one told of. */
function rateOnFifth(expectedLnHarshness: number, readings: number): number {
  const usual = [1, 2, 3, 4].flatMap((machineId) =>
    [1, 2].map((k) => {
      const pointId = 10 * machineId + k;
      return aSeries({
        pointId,
        machineId,
        readings: [1500, 3000].map((workedHours) =>
          aReading({
            workedHours,
            wearMm: ((2.5 * workedHours) / 5500) * (0.86 + 0.055 * machineId + 0.05 * k),
            visit: `${machineId}@${workedHours}`,
          }),
        ),
      });
    }),
  );
  const fifth = [1, 2, 3].map((pointId) =>
    aSeries({
      pointId,
      machineId: 5,
      expectedLnHarshness,
      readings: Array.from({ length: readings }, (_, j) =>
        aReading({ workedHours: 1200 * (j + 1), wearMm: (2.5 * 1200 * (j + 1)) / 5500, visit: `5@${j}` }),
      ),
    }),
  );
  const coarse = { ...settings, ...COARSE };
  const learning = learnShop([...usual, ...fifth], new Map([['slide', prior]]), coarse);
  return machineLaws(learning, fifth, coarse)[0]!.basis.lnRateMean;
}

describe("the shop's word on a machine", () => {
  const hard = Math.log(1.25);

  it('without readings is what is expected', () => {
    const without = rateOnFifth(0, 0);
    expect(rateOnFifth(hard, 0) - without).toBeGreaterThan(0.9 * hard);
    expect(rateOnFifth(-hard, 0) - without).toBeLessThan(-0.9 * hard);
  });

  it('is overruled by readings that say otherwise', () => {
    const once = rateOnFifth(hard, 1) - rateOnFifth(0, 1);
    const often = rateOnFifth(hard, 5) - rateOnFifth(0, 5);
    expect(once).toBeLessThan(0.5 * hard);
    expect(often).toBeLessThan(0.1 * hard);
  });
});

/** The same shop with a word on each machine. */
function told(set: ShopSet, wordOf: (machineId: number) => number): ShopSet {
  const series = new Map(
    set.series.map((one) => [one, { ...one, expectedLnHarshness: wordOf(one.machineId) }] as const),
  );
  return {
    ...set,
    series: set.series.map((one) => series.get(one)!),
    scored: set.scored.map((one) => ({ ...one, series: series.get(one.series)! })),
  };
}

/** Machines in thirds by how fast their parts truly wore: -1 light, 0 normal, 1 hard. */
function trueThirds({ scored, priors }: ShopSet): Map<number, number> {
  const lnRate = ({ series, trueHoursAtLimit }: ShopSet['scored'][number]) =>
    Math.log(priors.get(series.partClass)!.hRefHours / trueHoursAtLimit);
  const mean = (own: ShopSet['scored']) => own.reduce((sum, one) => sum + lnRate(one), 0) / own.length;
  const sorted = [...Map.groupBy(scored, (one) => one.series.machineId)]
    .map(([machineId, own]) => ({ machineId, lnRate: mean(own) }))
    .sort((a, b) => a.lnRate - b.lnRate);
  return new Map(sorted.map(({ machineId }, i) => [machineId, Math.floor((3 * i) / sorted.length) - 1]));
}

describe('in a shop of 60 machines worked hard and softly', () => {
  const shop = shopH();
  const size = settings.workTypeTrust * Math.log(1.25);
  const neverRead = (set: ShopSet) => {
    const { cases } = forecastSet(set, settings);
    return { all: scoreHours(cases), unread: scoreHours(cases.filter(({ series }) => series.readings.length === 0)) };
  };
  const none = neverRead(shop);

  it('a word that is right helps, parts never read the most', () => {
    const thirds = trueThirds(shop);
    const right = neverRead(told(shop, (machineId) => size * (thirds.get(machineId) ?? 0)));
    expect(right.all.pinball).toBeLessThan(none.all.pinball);
    expect(right.unread.pinball).toBeLessThan(0.98 * none.unread.pinball);
    expect(right.all.cover).toBeGreaterThan(0.78);
  });

  it('a word drawn by lot costs little', () => {
    const dice = seededDice(1);
    const lot = new Map(shop.series.map((one) => [one.machineId, 0]));
    for (const machineId of lot.keys()) lot.set(machineId, Math.floor(3 * dice.uniform()) - 1);
    const drawn = neverRead(told(shop, (machineId) => size * lot.get(machineId)!));
    expect(drawn.all.pinball).toBeLessThan(1.02 * none.all.pinball);
    expect(drawn.unread.pinball).toBeLessThan(1.03 * none.unread.pinball);
    expect(drawn.all.cover).toBeGreaterThan(0.78);
  });
});
