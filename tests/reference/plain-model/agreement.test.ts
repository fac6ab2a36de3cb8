import { describe, expect, it } from 'vitest';
import {
  additions,
  agreementClasses,
  agrees,
  compareWithPlain,
  plainSettings,
  variedClass,
  withOneNeverRead,
} from '#tests/accuracy/agreement.ts';
import { halvings } from '#tests/accuracy/halving.ts';
import { longRun } from '#tests/support/counts.ts';

/** A class of 5,000 takes minutes. */
const LONG_MS = 3_600_000;

/** Half a per cent of every hours figure and 0.002 of every chance, for every part. */
const GOAL = { meeting: 1, hours: 0.005, chance: 0.002 };
/** So sharp a class is forecast from one node, the mean of its figures: what was found is held. */
const SHARP = { meeting: 0.97, hours: 0.01, chance: 0.004 };

describe('production against the plain model summed over grids', () => {
  for (const [parts, classes] of agreementClasses(longRun)) {
    // the daily run takes half of them: the accuracy table and the long run compare them all
    const count = longRun ? classes : Math.ceil(classes / 2);
    const { meeting, hours, chance } = parts >= 300 ? SHARP : GOAL;
    it(`additions at zero, ${count} classes of ${parts} and one never read in each: hours within ${100 * hours} %, chances within ${chance}`, {
      timeout: LONG_MS,
    }, () => {
      const all = Array.from(
        { length: count },
        (_, k) => compareWithPlain(withOneNeverRead(variedClass(parts, k)), plainSettings).parts,
      );
      const found = all.flat();
      expect(found.length).toBeGreaterThan(0.6 * parts * count);
      expect(found.filter(agrees).length / found.length).toBeGreaterThanOrEqual(meeting);
      for (const one of found) {
        expect(Math.max(one.low, one.middle, one.high)).toBeLessThan(hours);
        expect(one.chance).toBeLessThan(chance);
      }
    });
  }

  for (const { title, settings } of longRun ? additions.slice(1) : additions.slice(-1))
    it(`with ${title}, one never read in each class, the plain model extended by the same: within 0.5 %, chances within 0.002`, {
      timeout: LONG_MS,
    }, () => {
      for (const [parts, from, to] of longRun ? [...additionRuns, ...moreAdditionRuns] : additionRuns) {
        const all = Array.from({ length: to - from }, (_, k) =>
          compareWithPlain(withOneNeverRead(variedClass(parts, from + k)), settings),
        );
        const found = all.flatMap((run) => run.parts);
        expect(found.filter(agrees).length, `${parts}`).toBe(found.length);
      }
    });
});

/** Classes with the additions in: parts of each, and which. */
const additionRuns: [parts: number, from: number, to: number][] = [
  // one whose parts contradict each other: each may be the odd one
  [3, 104, 105],
  // one with two parts that wore next to nothing
  [3, 147, 148],
];
/** And in the long run. */
const moreAdditionRuns: typeof additionRuns = [
  [3, 102, 104],
  [10, 100, 103],
  [30, 100, 102],
];

describe('halving the steps of the plain model', () => {
  for (const parts of longRun ? [3, 30, 300, 5000] : [3])
    it(`moves no hours of a class of ${parts} by 0.1 %`, { timeout: LONG_MS }, () => {
      for (const { axis, stepOfSd, most } of halvings(parts)) {
        expect(stepOfSd, axis).toBeLessThanOrEqual(0.5);
        expect(most, axis).toBeLessThan(1e-3);
      }
    });
});
