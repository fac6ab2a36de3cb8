import { expect, it } from 'vitest';
import { symmetricEigen } from './symmetricEigen.ts';

it('finds the values 1, 2 and 4 of a matrix built from them', () => {
  // [[3, 1, 0], [1, 3, 0], [0, 0, 1]] has 4 along (1, 1, 0), 2 along (1, -1, 0), 1 along (0, 0, 1)
  const { values, vectors } = symmetricEigen([
    [3, 1, 0],
    [1, 3, 0],
    [0, 0, 1],
  ]);
  expect([...values].sort()).toEqual([1, 2, 4].map((value) => expect.closeTo(value, 12)));
  const four = vectors[values.findIndex((value) => value > 3)]!;
  expect(Math.abs(four[0]!)).toBeCloseTo(Math.SQRT1_2, 12);
  expect(four[0]! * four[1]!).toBeCloseTo(0.5, 12);
});
