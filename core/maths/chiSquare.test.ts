import { expect, it } from 'vitest';
import { chiSquareQuantile } from './chiSquare.ts';

it('agrees with the printed 99.9 % and 50 % points (Abramowitz and Stegun, table 26.8)', () => {
  for (const [p, n, printed, tolerance] of [
    [0.999, 1, 10.828, 0.035],
    [0.999, 5, 20.515, 0.012],
    [0.999, 10, 29.588, 0.006],
    [0.999, 30, 59.703, 0.002],
    [0.999, 100, 149.449, 0.001],
    [0.5, 10, 9.34182, 0.001],
  ] as const) {
    expect(Math.abs(chiSquareQuantile(p, n) / printed - 1)).toBeLessThan(tolerance);
  }
});
