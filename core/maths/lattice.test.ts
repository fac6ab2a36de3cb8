import { expect, it } from 'vitest';
import { normalLattice } from './lattice.ts';

it('carries the moments of a normal exactly, and its fourth ones nearly', () => {
  const points = normalLattice(64, 3);
  const mean = (f: (row: readonly number[]) => number) => points.reduce((sum, row) => sum + f(row), 0) / points.length;
  for (let i = 0; i < 3; i++) {
    expect(Math.abs(mean((row) => row[i]!))).toBeLessThan(1e-12);
    for (let j = 0; j < 3; j++)
      expect(Math.abs(mean((row) => row[i]! * row[j]!) - (i === j ? 1 : 0))).toBeLessThan(1e-12);
    expect(Math.abs(mean((row) => row[i]! ** 4) - 3)).toBeLessThan(0.6);
  }
});

it('is the same every time', () => expect(normalLattice(32, 5)).toEqual(normalLattice(32, 5)));
