import { expect, it } from 'vitest';
import { decidingHours } from './decidingHours.ts';

const left = { low: 150, middle: 470, high: 880 };

it('a towing or lifting part goes by the low figure, any other by the middle one', () => {
  expect(decidingHours({ safety: true }, left)).toBe(150);
  expect(decidingHours({ safety: false }, left)).toBe(470);
});

it('a figure beyond reckoning decides nothing', () => {
  expect(decidingHours({ safety: false }, { low: 4000, middle: null, high: null })).toBeNull();
  expect(decidingHours({ safety: true }, { low: 4000, middle: null, high: null })).toBe(4000);
});
