import { expect, test } from 'vitest';
import { day } from '../units/day.ts';
import { mondayOf, weekFrom, weekOf, weeksOfWinter } from './weeksOfWinter.ts';

const WINTER = { name: '26/27', from: day('2026-11-01'), to: day('2027-02-28') };

test('a winter has the weeks with a working day in it: one that begins on a Sunday begins on the Monday after', () => {
  const weeks = weeksOfWinter(WINTER);
  expect([weeks[0], weeks.at(-1), weeks.length]).toEqual(['2026-11-02', '2027-02-22', 17]);
  expect(weeksOfWinter({ ...WINTER, from: day('2026-11-06') })[0]).toBe('2026-11-02');
});

test('a day is in the week of its Monday, before 1970 too', () => {
  expect(mondayOf(day('2026-11-08'))).toBe('2026-11-02');
  expect(mondayOf(day('1969-12-31'))).toBe('1969-12-29');
});

test('what is told of a day beyond the winter stays within its weeks', () => {
  const weeks = weeksOfWinter(WINTER);
  expect(weekOf(weeks, day('2026-10-01'))).toBe(0);
  expect(weekOf(weeks, day('2027-05-01'))).toBe(16);
  expect(weekFrom(weeks, day('2026-11-03'))).toBe(1);
  expect(weekFrom(weeks, day('2027-05-01'))).toBe(17);
});
