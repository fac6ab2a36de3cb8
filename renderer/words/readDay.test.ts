import { describe, expect, it } from 'vitest';
import { day } from '#core/units/day.ts';
import { readDay } from './readDay.ts';

const today = day('2026-10-19');

describe('a typed day', () => {
  it.each([
    ['2026-10-12', '2026-10-12'],
    ['12.10.2026', '2026-10-12'],
    ['12/10/26', '2026-10-12'],
    ['12 Oct 2026', '2026-10-12'],
    ['12 october 2026', '2026-10-12'],
    ['3.5.2024', '2024-05-03'],
    ['29.2.2024', '2024-02-29'],
    ['today', '2026-10-19'],
    ['Yesterday', '2026-10-18'],
  ])('%s is %s', (typed, understood) => {
    expect(readDay(typed, today)).toBe(understood);
  });

  it('without a year is the latest such day that has come', () => {
    expect(readDay('12 oct', today)).toBe('2026-10-12');
    expect(readDay('19.10', today)).toBe('2026-10-19');
    expect(readDay('1.11', today)).toBe('2025-11-01');
    expect(readDay('29.2', today)).toBe('2024-02-29');
  });

  it('that does not exist is no day', () => {
    for (const typed of ['', '31.2.2026', '2026-13-01', '12 foo 2026', 'next week', '29.2.2025']) {
      expect(readDay(typed, today)).toBeNull();
    }
  });
});
