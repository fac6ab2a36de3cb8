import { expect, it } from 'vitest';
import { normalCdf, normalDensity, normalQuantile, quickNormalCdf, quickNormalQuantile } from './normal.ts';

// scipy 1.17.1: [norm.cdf(z) for z in ...], [norm.ppf(p) for p in ...]
const CDF: [number, number][] = [
  [-8, 6.22096057427174e-16],
  [-6.5, 4.016000583859088e-11],
  [-5, 2.866515718791933e-7],
  [-3, 0.0013498980316300933],
  [-1, 0.15865525393145707],
  [-0.3, 0.3820885778110474],
  [0, 0.5],
  [0.5, 0.6914624612740131],
  [2, 0.9772498680518208],
  [6, 0.9999999990134123],
];
const QUANTILE: [number, number][] = [
  [1e-10, -6.361340902404056],
  [1e-4, -3.7190164854556804],
  [0.01, -2.3263478740408408],
  [0.1, -1.2815515655446004],
  [0.3, -0.5244005127080409],
  [0.77, 0.7388468491852137],
  [0.999, 3.090232306167813],
];

it('the chance below z agrees with scipy to 1e-8 of itself, far tail included', () => {
  for (const [z, chance] of CDF) expect(Math.abs(normalCdf(z) / chance - 1)).toBeLessThan(1e-8);
});

it('the z of a chance agrees with scipy to 1e-9', () => {
  for (const [chance, z] of QUANTILE) expect(Math.abs(normalQuantile(chance) - z)).toBeLessThan(1e-9);
});

it('the quick z of a chance is within 1.2e-9 of itself of the exact one', () => {
  for (let chance = 1e-12; chance < 0.5; chance *= 1.07)
    for (const p of [chance, 1 - chance]) {
      const z = normalQuantile(p);
      expect(Math.abs(quickNormalQuantile(p) - z)).toBeLessThan(1.2e-9 * Math.abs(z));
    }
});

it('the ends are what they must be', () => {
  expect(normalCdf(-40)).toBe(0);
  expect(normalCdf(40)).toBe(1);
  expect(normalQuantile(0)).toBe(Number.NEGATIVE_INFINITY);
  expect(normalQuantile(1)).toBe(Number.POSITIVE_INFINITY);
  expect(normalDensity(0)).toBeCloseTo(0.3989422804014327, 15);
});

it('the quick chance is within 2e-10 of the exact one everywhere, and rises', () => {
  let before = 0;
  for (let z = -10; z <= 10; z += 0.00137) {
    const quick = quickNormalCdf(z);
    expect(Math.abs(quick - normalCdf(z))).toBeLessThan(2e-10);
    expect(quick).toBeGreaterThanOrEqual(before);
    before = quick;
  }
  expect(quickNormalCdf(Number.NEGATIVE_INFINITY)).toBe(0);
  expect(quickNormalCdf(Number.POSITIVE_INFINITY)).toBe(1);
});
