import { expect, test } from 'vitest';
import { tenthsPicture } from './tenthsPicture.ts';

test('tenths filled alike end at the even line; one that holds all is cut off at the top', () => {
  const even = tenthsPicture(Array(10).fill(3), 200, 30);
  for (const { height } of even.columns) expect(30 - height).toBeCloseTo(even.evenY, 9);
  const one = tenthsPicture([0, 0, 0, 0, 0, 0, 0, 0, 0, 8], 200, 30);
  expect(one.columns.map(({ height }) => height)).toEqual([0, 0, 0, 0, 0, 0, 0, 0, 0, 30]);
});

test('the outer two are those beyond the range; no size draws nothing', () => {
  const { columns, edges } = tenthsPicture(Array(10).fill(0), 200, 30);
  expect(columns.map(({ outer }) => outer)).toEqual([true, ...Array(8).fill(false), true]);
  expect(edges).toEqual([20, 180]);
  expect(columns.every(({ height }) => height === 0)).toBe(true);
});
