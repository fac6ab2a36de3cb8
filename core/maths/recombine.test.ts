import { describe, expect, it } from 'vitest';
import { normalLattice } from './lattice.ts';
import { recombine } from './recombine.ts';

const powers = (x: number, y: number) => [1, x, y, x * x, x * y, y * y, x ** 3, x * x * y, x * y * y, y ** 3];

const columnsOf = (rows: readonly number[][]) => rows[0]!.map((_, j) => rows.map((row) => row[j]!));

describe('fewer points with the same sums', () => {
  it('keeps all moments to the third of 200 points in two dimensions on ten of them', () => {
    const points = normalLattice(200, 2);
    const values = points.map(([x, y]) => powers(x!, y!));
    const weights = points.map(([x]) => Math.exp(0.3 * x!) / 200);
    const kept = recombine(columnsOf(values), weights);
    expect(kept.filter((weight) => weight > 0).length).toBeLessThanOrEqual(10);
    expect(kept.every((weight) => weight >= 0)).toBe(true);
    for (let j = 0; j < 10; j++) {
      const sum = (of: readonly number[]) => of.reduce((total, weight, k) => total + weight * values[k]![j]!, 0);
      expect(Math.abs(sum(kept) - sum(weights))).toBeLessThan(1e-10);
    }
  });

  it('is not troubled by points that are all the same', () => {
    const kept = recombine(
      [1, 5, 25].map((value) => [1, 2, 3, 4, 5].map(() => value)),
      [0.2, 0.3, 0.1, 0.1, 0.3],
    );
    expect(kept.filter((weight) => weight > 0).length).toBeLessThanOrEqual(3);
    expect(kept.reduce((sum, weight) => sum + weight, 0)).toBeCloseTo(1, 12);
  });

  it('leaves few points as they are', () => {
    expect(recombine([[1], [0], [0]], [1])).toEqual([1]);
  });
});
