import { expect, it } from 'vitest';
import { choleskyInPlace, invertPositive } from './cholesky.ts';

// A = [[4, 12, -16], [12, 37, -43], [-16, -43, 98]] has L = [[2], [6, 1], [-8, 5, 3]], |A| = 36: a textbook example
const A = () => Float64Array.of(4, 12, -16, 12, 37, -43, -16, -43, 98);

it('factors a matrix whose root is known', () => {
  const a = A();
  expect(choleskyInPlace(a, 3)).toBeCloseTo(Math.log(36), 12);
  expect([a[0], a[3], a[4], a[6], a[7], a[8]]).toEqual([2, 6, 1, -8, 5, 3]);
});

it('inverts it: A times its inverse is one', () => {
  const inverse = new Float64Array(9);
  invertPositive(A(), inverse, 3);
  const a = A();
  for (let i = 0; i < 3; i++)
    for (let j = 0; j < 3; j++) {
      let sum = 0;
      for (let k = 0; k < 3; k++) sum += a[i * 3 + k]! * inverse[k * 3 + j]!;
      expect(sum).toBeCloseTo(i === j ? 1 : 0, 10);
    }
});

it('says NaN of a matrix that is not positive', () => {
  expect(choleskyInPlace(Float64Array.of(1, 2, 2, 1), 2)).toBeNaN();
  expect(invertPositive(Float64Array.of(-1), new Float64Array(1), 1)).toBeNaN();
});
