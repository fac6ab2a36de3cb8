import { describe, expect, it } from 'vitest';
import { CHANCES, type Foretold } from '#core/check/foretold.ts';
import { scoreSize, scoreWear, smoothedCdf } from '#core/check/scoreSize.ts';
import { crps } from '#core/maths/crps.ts';
import { normalCdf, normalDensity, normalQuantile } from '#core/maths/normal.ts';
import { seededDice } from '#tests/support/seededDice.ts';

/** Gneiting and Raftery 2007, section 4.2, the sign turned. */
const ofNormal = (mean: number, sd: number, y: number): number => {
  const z = (y - mean) / sd;
  return sd * (z * (2 * normalCdf(z) - 1) + 2 * normalDensity(z) - 1 / Math.sqrt(Math.PI));
};

describe('CRPS', () => {
  it.each([
    [0, 1, 0],
    [0, 1, 2.5],
    [1.2, 0.05, 1.13],
    [3, 0.4, -1],
  ])('of a normal with mean %d and sd %d against %d is the published closed form', (mean, sd, y) => {
    const cdf = (x: number) => normalCdf((x - mean) / sd);
    expect(crps(cdf, mean - 9 * sd, mean + 9 * sd, y)).toBeCloseTo(ofNormal(mean, sd, y), 5);
  });

  it('of an even spread is the integral worked by hand, of a single figure the absolute error', () => {
    const even = (x: number) => Math.min(1, Math.max(0, x));
    for (const y of [0, 0.3, 0.5, 1]) expect(crps(even, 0, 1, y)).toBeCloseTo(y ** 3 / 3 + (1 - y) ** 3 / 3, 9);
    const figure = (x: number) => normalCdf((x - 2) / 1e-4);
    expect(crps(figure, 2 - 1e-3, 2 + 1e-3, 2.7)).toBeCloseTo(0.7, 2);
  });
});

describe('a size foretold by its quantiles', () => {
  const [mean, sd, errorSd] = [1.1, 0.2, 0.06];
  const quantilesMm = CHANCES.map((chance) => mean + sd * normalQuantile(chance));
  const looked = { cdf: (x: number) => smoothedCdf(x, quantilesMm, CHANCES, errorSd), from: -1, to: 3 };

  it('read with an error is scored nearly as the normal it was made of', () => {
    const both = Math.hypot(sd, errorSd);
    for (const came of [0.7, 1, 1.1, 1.35, 1.9]) {
      const score = scoreWear({ ...looked, cameMm: came, naiveMm: 1 });
      expect(score.pit).toBeCloseTo(normalCdf((came - mean) / both), 2);
      expect(Math.abs(score.crpsMm - ofNormal(mean, both, came))).toBeLessThan(0.01 * both);
      expect(score.naiveCrpsMm).toBeCloseTo(Math.abs(came - 1), 12);
      expect(score.widthMm).toBeCloseTo(2 * normalQuantile(0.9) * both, 2);
    }
  });

  it('rises from 0 to 1, whatever the error', () => {
    for (const error of [0.002, 0.06, 3]) {
      const at = (x: number) => smoothedCdf(x, quantilesMm, CHANCES, error);
      expect(at(-30)).toBeCloseTo(0, 9);
      expect(at(30)).toBeCloseTo(1, 9);
      for (let x = 0; x < 2; x += 0.05) expect(at(x + 0.05)).toBeGreaterThanOrEqual(at(x));
    }
  });

  it('is given evenly spread chances by sizes that come from it', () => {
    const dice = seededDice(11);
    const n = 1200;
    const pits = Array.from({ length: n }, () => {
      const came = mean + sd * dice.normal() + errorSd * dice.normal();
      return scoreWear({ ...looked, cameMm: came, naiveMm: null }).pit;
    }).sort((a, b) => a - b);
    const most = Math.max(...pits.map((pit, i) => Math.abs(pit - (i + 0.5) / n)));
    // Kolmogorov-Smirnov, 1 in 1000: 1.95 / sqrt(n)
    expect(most).toBeLessThan(1.95 / Math.sqrt(n));
  });

  const told: Foretold = {
    wears: 'down',
    newSizeMm: 12,
    workedHours: 1000,
    machineHours: 4000,
    share: 1,
    last: { workedHours: 1000, wearMm: 0.5 },
    hours: [1000, 2000],
    chances: CHANCES,
    wearMm: [quantilesMm.map((x) => x - 0.6), quantilesMm],
    visitErrorMm: 0,
    limitWearMm: 2,
    hoursAtLimit: { low: 2500, middle: 3500, high: 5000 },
    basis: { ownReadings: 1, own: 0.5, likeParts: 3, likeMachines: 2 },
    widenedBy: 1,
  };

  it('is told for hours between those kept, as sizes, and not for hours beyond them', () => {
    const score = scoreSize(told, { workedHours: 1500, sizeMm: 11.2, errorSdMm: errorSd })!;
    expect(score.middleMm).toBeCloseTo(11.2, 3);
    expect(score.pit).toBeCloseTo(0.5, 3);
    expect(score.leastWornMm).toBeGreaterThan(score.mostWornMm);
    expect(score.naiveCrpsMm).toBeCloseTo(0.05, 9);
    for (const workedHours of [900, 2001])
      expect(scoreSize(told, { workedHours, sizeMm: 11, errorSdMm: errorSd })).toBeNull();
  });
});
