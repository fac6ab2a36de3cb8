import { describe, expect, it } from 'vitest';
import { compareWithPlain, plainSettings, share } from '#tests/accuracy/agreement.ts';
import { plainPartOf, plainPrior } from '#tests/accuracy/plainForetell.ts';
import { simulatedClass } from '#tests/accuracy/simulatedClass.ts';
import { axis, fittedPlainClass, plainClass, plainHours, plainPart } from './plainModel.ts';

const long = process.env.HOURS_LONG === '1';
const truth = { pathScatter: 0.15, power: 1.05, partScatter: 0.3 };

describe('production against the plain model summed over grids, additions switched off', () => {
  // few parts leave the class wide open, and the production cloud of points has more to stand for
  const classes = [
    { parts: 12, hours: 0.02, chance: 0.01 },
    ...(long
      ? [
          { parts: 30, hours: 0.01, chance: 0.005 },
          { parts: 300, hours: 0.005, chance: 0.002 },
        ]
      : []),
  ];
  for (const { parts, hours, chance } of classes)
    it(`${parts} parts: hours within ${100 * hours} %, chances within ${100 * chance} points, 100 times as fast`, () => {
      const run = compareWithPlain(simulatedClass(8000 + parts, parts, truth), plainSettings);
      expect(run.parts.length).toBeGreaterThan(0.6 * parts);
      for (const key of ['low', 'middle', 'high'] as const)
        expect(
          share(
            run.parts.map((one) => one[key]),
            0.95,
          ),
          key,
        ).toBeLessThan(hours);
      expect(
        share(
          run.parts.map((one) => one.chance),
          0.95,
        ),
      ).toBeLessThan(chance);
      // half of all parts are far closer, whatever the class
      for (const key of ['low', 'middle', 'high'] as const)
        expect(
          share(
            run.parts.map((one) => one[key]),
            0.5,
          ),
        ).toBeLessThan(0.005);
      expect(run.forecastSeconds).toBeLessThan(run.referenceSeconds / 100);
    });
});

it('halving the steps of the plain model moves no hours by more than 0.1 %', () => {
  const set = simulatedClass(8100, 4, truth);
  const prior = plainPrior([...set.priors.values()][0]!, plainSettings);
  const parts = set.series.map(plainPartOf);
  const usual = fittedPlainClass(parts, prior);
  const finer = plainClass(parts, prior, {
    // in the short run the two axes that shape a path; in the long one all four
    mu: long ? halved(usual.grid.mu.nodes) : usual.grid.mu,
    omega: long ? halved(usual.grid.omega.nodes, prior.least) : usual.grid.omega,
    c: halved(usual.grid.c.nodes, prior.least),
    lnG: halved(usual.grid.lnG.nodes),
  });
  for (const part of parts.slice(0, long ? 4 : 1)) {
    const last = part.readings.at(-1)!.hours;
    const [a, b] = [usual, finer].map((of) => {
      const nodes = plainPart(of, part);
      return [0.1, 0.5, 0.9].map((u) => plainHours(nodes, prior.hRefHours, last, 2.5, u, 0.15)!);
    });
    a!.forEach((hours, i) => {
      expect(Math.abs(hours / b![i]! - 1)).toBeLessThan(1e-3);
    });
  }
});

/** The same axis with a node between every two; a floored one counts what lies below its floor there. */
function halved(nodes: readonly number[], floor = 0) {
  const finer = axis(nodes[0]!, nodes.at(-1)!, 2 * nodes.length - 1);
  if (nodes[0]! <= floor) finer.weights[0] = finer.weights[0]! + floor;
  return finer;
}
