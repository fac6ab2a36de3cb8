import { describe, expect, it } from 'vitest';
import { lnGamma, lnGammaDensity } from './gamma.ts';

describe('the gamma function', () => {
  it('is the factorial at whole numbers', () => {
    let factorial = 1;
    for (let n = 1; n <= 20; n++) {
      expect(lnGamma(n)).toBeCloseTo(Math.log(factorial), 12);
      factorial *= n;
    }
  });
  it('is sqrt(pi) at 1/2, and 1.7724538509 / 2 at 3/2 (Abramowitz and Stegun 6.1.8, 6.1.9)', () => {
    expect(lnGamma(0.5)).toBeCloseTo(0.5 * Math.log(Math.PI), 13);
    expect(lnGamma(1.5)).toBeCloseTo(Math.log(1.772453850905516 / 2), 13);
  });
  it('keeps the reflection Gamma(x) Gamma(1-x) = pi / sin(pi x) (Abramowitz and Stegun 6.1.17)', () => {
    for (const x of [0.01, 0.1, 0.3, 0.49]) {
      expect(lnGamma(x) + lnGamma(1 - x)).toBeCloseTo(Math.log(Math.PI / Math.sin(Math.PI * x)), 12);
    }
  });
  it('keeps the doubling rule at large x (Abramowitz and Stegun 6.1.18)', () => {
    for (const x of [3.3, 25, 400, 9000]) {
      const doubled = lnGamma(x) + lnGamma(x + 0.5) + (2 * x - 0.5) * Math.LN2 - 0.5 * Math.log(2 * Math.PI);
      expect(doubled / lnGamma(2 * x)).toBeCloseTo(1, 12);
    }
  });
});

describe('the gamma density', () => {
  it('sums to 1, with mean shape x scale and variance shape x scale^2', () => {
    for (const [shape, scale] of [
      [0.8, 40],
      [12.5, 40],
      [300, 2],
    ] as const) {
      let mass = 0;
      let mean = 0;
      let square = 0;
      const step = 1 / 64;
      for (let lnX = -40; lnX < 12; lnX += step) {
        const x = Math.exp(lnX);
        const weight = Math.exp(lnGammaDensity(x, shape, scale)) * x * step;
        mass += weight;
        mean += weight * x;
        square += weight * x * x;
      }
      expect(mass).toBeCloseTo(1, 9);
      expect(mean / (shape * scale)).toBeCloseTo(1, 9);
      expect((square - mean ** 2) / (shape * scale ** 2)).toBeCloseTo(1, 7);
    }
  });
});
