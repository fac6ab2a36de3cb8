import { expect, it } from 'vitest';
import { normalCdf, normalQuantile } from './normal.ts';
import { solveProbit } from './solveProbit.ts';

const gauss = (y: number) => normalCdf((y - 3) / 0.4);

it('finds the points of a normal from a poor guess', () => {
  for (const u of [0.001, 0.1, 0.5, 0.9, 0.999]) {
    const found = solveProbit(gauss, u, { y: 0, slope: 0.3 }, 20)!;
    expect(found.y).toBeCloseTo(3 + 0.4 * normalQuantile(u), 6);
  }
});

it('finds a point in a chance with a long flat stretch', () => {
  const two = (y: number) => 0.5 * normalCdf((y - 1) / 0.01) + 0.5 * normalCdf((y - 6) / 0.01);
  expect(solveProbit(two, 0.25, { y: 4, slope: 1 }, 20)!.y).toBeCloseTo(1, 5);
  expect(solveProbit(two, 0.75, { y: 4, slope: 1 }, 20)!.y).toBeCloseTo(6, 5);
});

it('says null where the chance is not reached in time', () => {
  expect(solveProbit(gauss, 0.5, { y: 0, slope: 1 }, 2.5)).toBeNull();
  expect(solveProbit(() => 0.2, 0.5, { y: 0, slope: 1 }, 10)).toBeNull();
});
