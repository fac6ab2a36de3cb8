import { describe, expect, it } from 'vitest';
import { aReading, aSeries } from '#tests/accuracy/aSeries.ts';
import { seededDice } from '#tests/support/seededDice.ts';
import { learnShop } from '../fit/learnShop.ts';
import { defaultModelSettings as settings } from '../fit/modelSettings.ts';
import { classOffCoverage, widenedBy } from '../forecast/guards.ts';
import { widenedLaw } from '../forecast/widenedLaw.ts';
import { day } from '../units/day.ts';
import { classCoverage } from './classCoverage.ts';
import { looksBefore, scored as scoredLook, scoredSizes } from './scoredSizes.ts';

/** A shop of 16 machines, each with two slides measured three times; all of it is invented. */
function aShop(seed: number) {
  const dice = seededDice(seed);
  return Array.from({ length: 16 }, (_, machine) => {
    const harshness = 0.2 * dice.normal();
    return [1, 2].map((k) => {
      const rate = (2.5 / 5500) * Math.exp(harshness + 0.25 * dice.normal());
      return aSeries({
        pointId: 10 * machine + k,
        machineId: machine + 1,
        readings: [1200, 2500, 3900].map((workedHours, visit) =>
          aReading({
            workedHours,
            wearMm: rate * workedHours + 0.05 * dice.normal(),
            visit: `${machine}@${visit}`,
            takenOn: day(`202${3 + visit}-11-01`),
          }),
        ),
      });
    });
  }).flat();
}

const priors = new Map([
  ['slide', { partClass: 'slide', hRefHours: 5500, m0: Math.log(2.5), s0: 0.35, from: 'trade' as const }],
]);

describe('past sizes laid against what would have been foretold', () => {
  const parts = aShop(3);
  const pool = learnShop(parts, priors, settings);

  it('of a class that has been learned lie within the range as often as is said', () => {
    const [scored] = classCoverage(scoredSizes(pool, parts, settings));
    expect(scored).toMatchObject({ partClass: 'slide', sizes: 96 });
    expect(scored!.inside / scored!.sizes).toBeGreaterThan(0.7);
    expect(classOffCoverage(scored, true, settings)).toBeNull();
  });

  it('of a class too sure of itself do not, and it is said with how many', () => {
    const sure = {
      classes: pool.classes.map((one) => ({
        ...one,
        nodes: one.nodes.map((node) => ({ ...node, partScatter: 0.01, pathScatter: 0.01, machineScatter: 0.01 })),
      })),
    };
    const [scored] = classCoverage(scoredSizes(sure, parts, settings));
    expect(scored!.inside / scored!.sizes).toBeLessThan(0.65);
    expect(classOffCoverage(scored, true, settings)).toMatchObject({
      code: 'class-off-coverage',
      facts: { count: 96, tooNarrow: true, share: scored!.inside / scored!.sizes },
    });
  });

  it('of a class too sure of itself: as much wider as it is told then, 80 in 100 lie within', () => {
    const sure = {
      classes: pool.classes.map((one) => ({
        ...one,
        nodes: one.nodes.map((node) => ({ ...node, partScatter: 0.08, pathScatter: 0.03, machineScatter: 0.05 })),
      })),
    };
    const before = scoredSizes(sure, parts, settings);
    const [off] = classCoverage(before);
    const by = widenedBy(off, true, settings);
    expect(by).toBeGreaterThan(1.1);
    expect(by).toBeLessThan(3);
    expect(widenedBy(off, false, settings)).toBe(1);
    const after = [...Map.groupBy(before, ({ machineId, takenOn }) => `${machineId} ${takenOn}`).values()].flatMap(
      ([{ machineId, takenOn } = before[0]!]) =>
        looksBefore(
          takenOn,
          parts.filter((part) => part.machineId === machineId),
          sure,
          settings,
        ).map((look) => scoredLook({ ...look, law: widenedLaw(look.law, by) }, settings)),
    );
    const inside = after.filter((size) => size.inside).length / after.length;
    expect(inside).toBeGreaterThan(0.76);
    expect(inside).toBeLessThan(0.84);
  });

  it('gives the same in any order of parts', () => {
    const [scored] = classCoverage(scoredSizes(pool, parts, settings));
    const [turned] = classCoverage(scoredSizes(pool, [...parts].reverse(), settings));
    expect(turned).toMatchObject({ sizes: scored!.sizes, inside: scored!.inside });
    expect(turned!.z).toBeCloseTo(scored!.z, 9);
  });

  it('leaves out sizes taken as a part went in, and a shop without sizes', () => {
    const fresh = parts.map((part) => ({ ...part, readings: [aReading({ workedHours: 0, wearMm: 0 })] }));
    expect(classCoverage(scoredSizes(pool, fresh, settings))).toEqual([]);
    expect(classCoverage(scoredSizes(pool, [], settings))).toEqual([]);
  });
});

it('under twenty scored sizes nothing is said, nor where the share is as it should be', () => {
  expect(classOffCoverage(undefined, true, settings)).toBeNull();
  expect(classOffCoverage({ sizes: 19, inside: 2, z: -6, widenBy: 2 }, true, settings)).toBeNull();
  expect(classOffCoverage({ sizes: 40, inside: 30, z: -0.8, widenBy: 1.2 }, true, settings)).toBeNull();
  expect(classOffCoverage({ sizes: 200, inside: 192, z: 5.6, widenBy: 1 }, true, settings)).toMatchObject({
    facts: { tooNarrow: false, widenedBy: 1 },
  });
});
