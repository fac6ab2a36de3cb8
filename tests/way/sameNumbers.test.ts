import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import type { ClassPrior } from '#core/fit/classPrior.ts';
import { learnShop } from '#core/fit/learnShop.ts';
import { machineLaws } from '#core/fit/machineLaws.ts';
import { defaultModelSettings } from '#core/fit/modelSettings.ts';
import { hoursAtLimit } from '#core/forecast/hoursAtLimit.ts';
import type { WearSeries } from '#core/series/wearSeries.ts';
import { lifeOf } from '#core/use-cases/context.ts';
import { learnAfresh, learnInBackground } from '#core/use-cases/learning/learnInBackground.ts';
import { forecastShop } from '#core/way.ts';
import { aReading, aSeries } from '#tests/accuracy/aSeries.ts';
import { aLoaderShop, LOADER_DAY, LOADER_FILES } from '#tests/support/aLoaderShop.ts';
import { COARSE } from '#tests/support/coarseForecasts.ts';
import { caseCount } from '#tests/support/counts.ts';
import { seededDice } from '#tests/support/seededDice.ts';

const settings = { ...defaultModelSettings, ...COARSE };
const prior = (partClass: string, limitMm: number): ClassPrior => ({
  ...{ partClass, hRefHours: 5500, m0: Math.log(limitMm), s0: 0.5, from: 'trade' },
});
const priors = [prior('slide', 2.5), prior('pin', 0.8)];
const bySide = (all: readonly ClassPrior[]) => new Map(all.map((one) => [one.partClass, one]));

/** A few machines with slides and pins, visits shared or not, some parts finished, some never read. */
function drawnShop(seed: number): WearSeries[] {
  const dice = seededDice(seed);
  const upTo = (most: number) => Math.floor(most * dice.uniform());
  const series: WearSeries[] = [];
  for (let machineId = 1; machineId <= 2 + upTo(4); machineId++)
    for (let part = 0; part <= upTo(4); part++) {
      const { partClass, m0 } = priors[part % 2]!;
      const rate = Math.exp(m0 + 0.4 * dice.normal());
      const visits = upTo(4);
      const readings = Array.from({ length: visits }, (_, k) =>
        aReading({
          workedHours: 900 * (k + 1) + upTo(300),
          wearMm: (rate * 900 * (k + 1)) / 5500 + 0.05 * dice.normal(),
          visit: dice.uniform() < 0.7 ? `${machineId}@${k}` : `${machineId}/${part}@${k}`,
        }),
      );
      series.push(
        aSeries({ pointId: series.length + 1, machineId, partClass, readings, present: dice.uniform() < 0.85 }),
      );
    }
  return series;
}

/** A list in another order. */
function dealt<T>(list: readonly T[], seed: number): T[] {
  const dice = seededDice(seed);
  return list
    .map((item) => ({ item, at: dice.uniform() }))
    .sort((a, b) => a.at - b.at)
    .map(({ item }) => item);
}

/** What is learned, and the hours of every part by its point. */
function numbersOf(series: readonly WearSeries[], of: readonly ClassPrior[]) {
  const learning = learnShop(series, bySide(of), settings);
  const hours = [...Map.groupBy(series, (one) => one.machineId).values()].flatMap((own) =>
    machineLaws(learning, own, settings).map((law) => ({
      point: law.pointId,
      hours: hoursAtLimit(law, law.partClass === 'slide' ? 2.5 : 0.8, settings),
    })),
  );
  return { learning, hours: hours.sort((a, b) => a.point - b.point) };
}

describe('the same numbers, to the last digit', () => {
  it('twice over, in any order of series and of classes, whatever was worked out in between', () => {
    fc.assert(
      fc.property(fc.nat(1e6), fc.nat(1e6), (seed, order) => {
        const shop = drawnShop(seed);
        const first = numbersOf(shop, priors);
        numbersOf(drawnShop(seed + 1), priors);
        expect(numbersOf(dealt(shop, order), [...priors].reverse())).toEqual(first);
      }),
      { numRuns: caseCount(60), seed: 11, endOnFailure: true },
    );
  });

  /** What is said of the loaders' points by name: numbers of rows differ with their order. */
  const saidOf = (files: Record<string, string>) => {
    const context = aLoaderShop(files);
    try {
      const life = lifeOf(context, { asOf: LOADER_DAY });
      const names = new Map(
        life.points.map(({ pointId, assembly, position, point }) => [pointId, [assembly, position, point].join('/')]),
      );
      const machines = new Map(life.machines.map(({ machineId, name }) => [machineId, name]));
      return forecastShop(life, LOADER_DAY)
        .machines.flatMap(({ machineId, points }) =>
          points.map(({ pointId, ...said }) => ({
            name: `${machines.get(machineId)}: ${names.get(pointId)}`,
            said: JSON.stringify(said, (key, value) => (/Id$/.test(key) ? undefined : value)),
          })),
        )
        .sort((a, b) => (a.name < b.name ? -1 : 1));
    } finally {
      context.close();
    }
  };

  it('through the record, in whatever order the rows of its files were brought in', () => {
    const inFileOrder = saidOf({});
    expect(inFileOrder.length).toBe(4);
    for (const seed of [1, 2]) {
      const files = Object.entries(LOADER_FILES).map(([name, text]) => {
        const [head, ...rows] = text.trimEnd().split('\n');
        return [name, `${[head, ...dealt(rows, seed)].join('\n')}\n`];
      });
      expect(saidOf(Object.fromEntries(files))).toEqual(inFileOrder);
    }
  });

  it('from no thread, one thread, two at once, and a thread that has learned before', async () => {
    const context = aLoaderShop();
    const life = lifeOf(context, { asOf: LOADER_DAY });
    context.close();
    const from = { life, asOf: LOADER_DAY };
    const here = learnAfresh(from);
    expect(await learnInBackground(from)).toEqual(here);
    // the thread of before waits for more; one is new
    expect(await Promise.all([1, 2].map(() => learnInBackground(from)))).toEqual([here, here]);
    expect(
      await learnInBackground({ life: { ...life, machines: life.machines.slice(0, 1), points: [] }, asOf: LOADER_DAY }),
    ).not.toEqual(here);
    expect(await learnInBackground(from)).toEqual(here);
  });
});
