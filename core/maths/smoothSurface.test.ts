import { expect, it } from 'vitest';
import { normalLattice } from './lattice.ts';
import { smoothSurface } from './smoothSurface.ts';

const points = normalLattice(60, 2).map((row) => row.map((z) => 1.5 * z));
const elsewhere = normalLattice(40, 2, 500);

it('is the quadratic itself where the values are one', () => {
  const f = ([x, y]: readonly number[]) => 3 - x! * x! + 0.7 * x! * y! - 2 * (y! - 0.4) ** 2;
  const surface = smoothSurface(points, points.map(f));
  for (const z of elsewhere) expect(surface.mean(z)).toBeCloseTo(f(z), 3);
});

it('follows a bend between its points, and owns up to what it cannot know beyond them', () => {
  const f = ([x, y]: readonly number[]) => Math.sin(x!) * Math.exp(0.5 * y!);
  const surface = smoothSurface(points, points.map(f));
  for (const z of elsewhere.filter((row) => Math.hypot(...row) < 1.5)) expect(surface.mean(z)).toBeCloseTo(f(z), 2);
  expect(surface.variance([0.3, -0.2])).toBeLessThan(1e-3);
  expect(surface.variance([9, 9])).toBeGreaterThan(100 * surface.variance([0.3, -0.2]));
});
