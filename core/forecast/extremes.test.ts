import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { aReading, aSeries } from '#tests/accuracy/aSeries.ts';
import { COARSE } from '#tests/support/coarseForecasts.ts';
import { longRun } from '#tests/support/counts.ts';
import type { ClassPrior } from '../fit/classPrior.ts';
import { learnShop } from '../fit/learnShop.ts';
import { machineLaws } from '../fit/machineLaws.ts';
import {
  type ModelSettings,
  modelSettingNames,
  modelSettingNotes,
  modelSettingsWith,
  defaultModelSettings as settings,
} from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { orRefuse } from '../outcome.ts';
import { GRASS_AND_TILLAGE } from '../reading/season.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import { addDays, day, isDay } from '../units/day.ts';
import { chanceByHours } from './chanceByHours.ts';
import { dateAtLimit } from './dateAtLimit.ts';
import { forecastPart } from './forecastPart.ts';
import { type ShopUse, type UseOfYear, useOfYear } from './useOfYear.ts';
import { wearFan } from './wearFan.ts';
import { chanceReadingBelow } from './wearLaw.ts';

const runs = longRun ? 200 : 5;

/** As sheets have them: to a thousandth. */
const anything = (low: number, high: number) =>
  fc.integer({ min: Math.round(1000 * low), max: Math.round(1000 * high) }).map((thousandths) => thousandths / 1000);

const reading = fc.record({
  workedHours: fc.oneof(fc.constantFrom(0, 1, 60_000), anything(0, 60_000)),
  wearMm: fc.oneof(fc.constantFrom(0, -0.3, 500, -500), anything(-3, 10), anything(-500, 500)),
  errorSdMm: fc.oneof(fc.constantFrom(0.001, 2), anything(0.001, 2)),
  workedHoursSd: fc.constantFrom(0, 50, 5000),
  visit: fc.constantFrom('a', 'b', 'c', 'd'),
});

const part = fc.record({
  machineId: fc.integer({ min: 1, max: 3 }),
  newSizeSdMm: fc.constantFrom(0, 0.01, 0.05, 5),
  startHoursSd: fc.constantFrom(0, 0, 300, 20_000),
  present: fc.boolean(),
  /** the shop's word on its machine: not given, or as far as the list of kinds of work goes */
  expectedLnHarshness: fc.constantFrom(0, 0, Math.log(5), -Math.log(5)),
  readings: fc.array(reading, { maxLength: 5 }),
});

const prior = fc.record({
  hRefHours: fc.constantFrom(50, 5500, 60_000),
  m0: fc.constantFrom(Math.log(0.01), Math.log(2.5), Math.log(400)),
  s0: fc.constantFrom(0.1, 0.5, 1),
});

type Part = typeof part extends fc.Arbitrary<infer T> ? T : never;

function seriesFrom(parts: readonly Part[]): WearSeries[] {
  return parts.map((one, i) =>
    aSeries({
      ...one,
      pointId: i + 1,
      readings: [...one.readings].sort((a, b) => a.workedHours - b.workedHours).map((r) => aReading(r)),
    }),
  );
}

/** Everything that is said of a part is a number, in its order, within its bounds. */
function checkForecast(law: PartLaw, limitWearMm: number, asOfHours: number, by: ModelSettings = settings): void {
  const said = orRefuse(forecastPart(law, limitWearMm, asOfHours, by));
  for (const range of [said.wearMm, said.ratePerHourMm]) {
    for (const value of [range.low, range.middle, range.high]) expect(Number.isFinite(value)).toBe(true);
    expect(range.low).toBeLessThanOrEqual(range.middle);
    expect(range.middle).toBeLessThanOrEqual(range.high);
  }
  const { low, middle, high, chancePastAtLastSize } = said.hoursAtLimit!;
  const known = [low, middle, high].filter((hours) => hours !== null);
  for (const hours of known) {
    expect(Number.isFinite(hours)).toBe(true);
    expect(hours).toBeGreaterThanOrEqual(law.lastHours ?? 0);
  }
  expect(known).toEqual([...known].sort((a, b) => a - b));
  // what is beyond all hours comes last
  if (low === null) expect(middle).toBeNull();
  if (middle === null) expect(high).toBeNull();
  for (const chance of [said.chancePast!, chancePastAtLastSize]) {
    expect(chance).toBeGreaterThanOrEqual(0);
    expect(chance).toBeLessThanOrEqual(1);
  }
  for (const share of [said.basis.own, said.basis.machine]) {
    expect(share).toBeGreaterThanOrEqual(0);
    expect(share).toBeLessThanOrEqual(1);
  }
  if (said.pastLimitMm !== null) expect(Number.isFinite(said.pastLimitMm)).toBe(true);
  const byHours = chanceByHours(law, limitWearMm, by);
  for (const hours of [0, 1, 100, 5500, 60_000, 1e6]) {
    const chance = byHours(hours);
    expect(chance >= 0 && chance <= 1).toBe(true);
    expect(Number.isFinite(chanceReadingBelow(law, limitWearMm, Math.max(hours, law.lastHours ?? 0), 0.05, 0.15))).toBe(
      true,
    );
  }
  for (const at of wearFan(law, [0, 1000, 1e5], by)) expect(Number.isFinite(at.middle)).toBe(true);
  for (const use of USES) checkDates(byHours, use);
}

const START = day('2024-06-15');
const SHOP: ShopUse = { hoursPerDay: 500 / 365, season: GRASS_AND_TILLAGE };
const ran = (hours: number, from: string, to: string) => ({ from: day(from), to: day(to), hours, sdHours: 0 });
/** Nothing known of it; hardly run in ten years; a thousand hours in a week. */
const USES = [[], [ran(3, '2014-06-15', '2024-06-15')], [ran(1000, '2024-06-08', '2024-06-15')]].map((stretches) =>
  useOfYear(stretches, SHOP),
);

/** Days in their order, from the day of the last size on, or beyond what anybody plans; how much of them is use, a share. */
function checkDates(chancePastBy: (hours: number) => number, use: UseOfYear): void {
  const dates = dateAtLimit(
    { chancePastBy, leastHoursAhead: -100, use, from: START, dayOf: (ahead) => addDays(START, Math.round(ahead)) },
    true,
  );
  const known = [dates.low, dates.middle, dates.high].filter((on) => on !== null);
  for (const on of known) expect(isDay(on) && on >= addDays(START, -100)).toBe(true);
  expect(known).toEqual([...known].sort());
  if (dates.low === null) expect(dates.middle).toBeNull();
  if (dates.middle === null) expect(dates.high).toBeNull();
  if (dates.useShare !== null) expect(dates.useShare >= 0 && dates.useShare <= 1).toBe(true);
}

describe('a forecast of anything that may be entered', () => {
  it('is made of numbers in their order, whatever was read', () => {
    fc.assert(
      fc.property(
        fc.array(part, { minLength: 1, maxLength: 5 }),
        prior,
        anything(0.01, 500),
        anything(0, 60_000),
        (parts, its, limitWearMm, asOfHours) => {
          const series = seriesFrom(parts);
          const priors = new Map<string, ClassPrior>([['slide', { partClass: 'slide', from: 'wide', ...its }]]);
          // fewer nodes, so that more may be tried
          const learning = learnShop(series, priors, { ...settings, cloudPoints: 12, ...COARSE });
          for (const { nodes } of learning.classes)
            for (const node of nodes)
              for (const value of Object.values(node)) expect(Number.isFinite(value)).toBe(true);
          for (const own of Map.groupBy(series, (one) => one.machineId).values())
            for (const law of machineLaws(learning, own, settings)) {
              expect(Math.abs(law.weight.reduce((sum, weight) => sum + weight, 0) - 1)).toBeLessThan(1e-9);
              checkForecast(law, limitWearMm, asOfHours);
            }
        },
      ),
      { numRuns: runs, seed: 20_261, endOnFailure: true },
    );
  });

  const usual: ClassPrior = { partClass: 'slide', hRefHours: 5500, m0: Math.log(2.5), s0: 0.5, from: 'trade' };
  const lawOf = (series: WearSeries): PartLaw =>
    machineLaws(learnShop([series], new Map([['slide', usual]]), settings), [series], settings)[0]!;

  for (const [title, readings] of [
    ['one reading at 0 h', [aReading({ workedHours: 0, wearMm: 0.02 })]],
    ['no wear at all', [1000, 2000, 3000].map((workedHours) => aReading({ workedHours, wearMm: 0 }))],
    ['better than new', [aReading({ workedHours: 2000, wearMm: -0.2 })]],
    ['all readings equal', [1000, 2000, 3000].map((workedHours) => aReading({ workedHours, wearMm: 0.7 }))],
    ['far past the limit', [aReading({ workedHours: 2000, wearMm: 9 })]],
    ['two readings at the same hours', [0.8, 0.9].map((wearMm) => aReading({ workedHours: 1500, wearMm }))],
  ] as const)
    it(`holds for ${title}`, () => checkForecast(lawOf(aSeries({ readings })), 2.5, 4000));

  it('says how far a part is past its limit, and leaves its hours at the last size', () => {
    const law = lawOf(aSeries({ readings: [aReading({ workedHours: 5000, wearMm: 3.1 })] }));
    const said = orRefuse(forecastPart(law, 2.5, 5200, settings));
    expect(said.pastLimitMm).toBeGreaterThan(0.5);
    expect(said.pastLimitMm).toBeLessThan(0.65);
    expect(said.hoursAtLimit).toMatchObject({ low: 5000, middle: 5000, high: 5000, pastAtLastSize: true });
  });

  it('refuses a limit at or under new size, and hours that are none', () => {
    const law = lawOf(aSeries({ readings: [] }));
    for (const limit of [0, -1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(forecastPart(law, limit, 100, settings)).toMatchObject({
        ok: false,
        refusal: { code: 'limit-not-positive' },
      });
    for (const hours of [-1, Number.NaN, Number.POSITIVE_INFINITY])
      expect(forecastPart(law, 2, hours, settings)).toMatchObject({ ok: false, refusal: { code: 'hours-not-known' } });
    expect(orRefuse(forecastPart(law, null, 100, settings)).hoursAtLimit).toBeNull();
  });

  /** Settings that are put at a bound of theirs together: in the long run each by itself, first at the one and then at the other. */
  const AT_A_TIME = longRun ? 1 : 9;
  it(`is made of numbers with ${AT_A_TIME} of its settings at a bound`, () => {
    const parts = [
      aSeries({
        pointId: 1,
        readings: [aReading({ workedHours: 900, wearMm: 0.3 }), aReading({ workedHours: 4000, wearMm: 2.1 })],
      }),
      aSeries({ pointId: 2, readings: [aReading({ workedHours: 900, wearMm: -0.1 })] }),
      aSeries({ pointId: 3, machineId: 2, readings: [], expectedLnHarshness: Math.log(5) }),
    ];
    for (let from = 0; from < modelSettingNames.length; from += AT_A_TIME)
      for (const bound of longRun
        ? (['from', 'to'] as const)
        : ([(from / AT_A_TIME) % 2 === 0 ? 'from' : 'to'] as const)) {
        const names = modelSettingNames.slice(from, from + AT_A_TIME);
        const changed = Object.fromEntries(names.map((name) => [name, modelSettingNotes[name][bound]]));
        const by = modelSettingsWith(changed);
        expect(by).toMatchObject(changed);
        const learning = learnShop(parts, new Map([['slide', usual]]), by);
        for (const own of Map.groupBy(parts, (one) => one.machineId).values())
          for (const law of machineLaws(learning, own, by)) checkForecast(law, 2.5, 4500, by);
      }
  });
});
