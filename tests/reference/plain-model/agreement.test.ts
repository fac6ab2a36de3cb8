import { describe, expect, it } from 'vitest';
import { additions, compareWithPlain, plainSettings, share, variedClass } from '#tests/accuracy/agreement.ts';
import { plainPartOf, plainPrior } from '#tests/accuracy/plainForetell.ts';
import { longRun } from '#tests/support/counts.ts';
import { axisNames, halved } from './plainGrid.ts';
import { plainHours } from './plainHours.ts';
import type { PlainPart } from './plainKernel.ts';
import { fittedPlainClass, type PlainClass, plainClass, plainPart } from './plainModel.ts';

/** The goal is half a per cent of every hours figure and 0.002 of every chance; `npm run accuracy -- agreement --full` says of how many of 2,000 parts it is met. */
describe('production against the plain model summed over grids', () => {
  // with ten parts or more the class is held tightly enough for the whole tolerance; three parts leave it wide open
  const classes = [
    { parts: 10, classes: longRun ? 6 : 1, hours: 0.005, chance: 0.005 },
    ...(longRun
      ? [
          { parts: 30, classes: 3, hours: 0.005, chance: 0.005 },
          { parts: 100, classes: 1, hours: 0.005, chance: 0.005 },
        ]
      : []),
  ];
  for (const { parts, classes: count, hours, chance } of classes)
    it(`additions at zero, ${count} classes of ${parts}: nine parts of ten within ${100 * hours} %, chances within ${chance}`, () => {
      const all = Array.from({ length: count }, (_, k) => compareWithPlain(variedClass(parts, k), plainSettings).parts);
      expect(all.flat().length).toBeGreaterThan(0.6 * parts * count);
      const worst = all.flat().map(({ low, middle, high }) => Math.max(low, middle, high));
      expect(share(worst, 0.9)).toBeLessThan(hours);
      expect(
        share(
          all.flat().map((one) => one.chance),
          0.9,
        ),
      ).toBeLessThan(chance);
    });

  it('additions at zero, three parts: within 1 %, half of them within 0.5 %', () => {
    const all = Array.from({ length: longRun ? 12 : 2 }, (_, k) => compareWithPlain(variedClass(3, k), plainSettings));
    const worst = all.flatMap(({ parts }) => parts.map(({ low, middle, high }) => Math.max(low, middle, high)));
    expect(share(worst, 0.95)).toBeLessThan(0.01);
    expect(share(worst, 0.5)).toBeLessThan(0.005);
  });

  for (const { title, settings } of longRun ? additions.slice(1) : additions.slice(-1))
    it(`with ${title}, the plain model extended by the same: within 1 %, half of them within 0.5 %`, () => {
      const all = Array.from({ length: longRun ? 3 : 1 }, (_, k) =>
        compareWithPlain(variedClass(10, 100 + k), settings),
      );
      const worst = all.flatMap(({ parts }) => parts.map(({ low, middle, high }) => Math.max(low, middle, high)));
      expect(share(worst, 0.95)).toBeLessThan(0.01);
      expect(share(worst, 0.5)).toBeLessThan(0.005);
    });
});

describe('halving the steps of the plain model', () => {
  // an axis at a time: errors of equal nodes on several axes add up
  for (const parts of longRun ? [3, 30, 300] : [3])
    it(`moves no hours of a class of ${parts} by 0.1 %`, () => {
      const set = variedClass(parts, 0);
      const prior = plainPrior([...set.priors.values()][0]!, plainSettings);
      const all = set.series.map(plainPartOf);
      const few = all.slice(0, 20);
      const usual = fittedPlainClass(all, prior);
      for (const name of axisNames) {
        const { nodes } = usual.grid[name];
        expect(nodes[1]! - nodes[0]!).toBeLessThanOrEqual(0.5 * usual.marginals[name].sd);
      }
      const before = few.map((part) => hoursOf(usual, part));
      for (const name of axisNames) {
        const finer = plainClass(all, prior, { ...usual.grid, [name]: halved(usual.grid[name]) });
        few.forEach((part, i) => {
          hoursOf(finer, part).forEach((hours, k) => {
            expect(Math.abs(hours / before[i]![k]! - 1), name).toBeLessThan(1e-3);
          });
        });
      }
    });
});

/** 10, 50 and 90 % points of hours to 2.5 mm; beyond the last that is spoken of: that last. */
const hoursOf = (of: PlainClass, part: PlainPart): number[] => {
  const nodes = plainPart(of, part);
  const { hRefHours } = of.prior;
  const last = part.readings.at(-1)!.hours;
  return [0.1, 0.5, 0.9].map((u) => plainHours(nodes, hRefHours, last, 2.5, u, 0.15) ?? 20 * hRefHours);
};
