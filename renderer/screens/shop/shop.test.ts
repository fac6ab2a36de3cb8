import { describe, expect, it } from 'vitest';
import { dayOfYearEcho, readDayOfYear } from './dayOfYear.ts';
import { seasonOf, seasonPercent } from './season.ts';

describe('a day of the year', () => {
  it('is taken as people write it', () => {
    for (const text of ['1 Nov', '1 November', 'nov 1', '1. nov.', '11-01']) expect(readDayOfYear(text)).toBe('11-01');
    expect(readDayOfYear('29 Feb')).toBe('02-29');
  });
  it('that is no day of any year is not taken', () => {
    for (const text of ['31 Nov', '0 Mar', '30 Feb', 'winter', '', '2026-11-01', '13-01']) {
      expect(readDayOfYear(text)).toBeNull();
    }
  });
  it('is echoed with its month by name', () => {
    expect(dayOfYearEcho('02-28')).toBe('28 Feb');
  });
});

describe('the season', () => {
  it('is brought to mean 1, whatever the months were typed in', () => {
    const season = seasonOf([2, 2, 4, 8, 12, 16, 20, 16, 10, 6, 2, 2])!;
    expect(season.reduce((sum, month) => sum + month, 0) / 12).toBeCloseTo(1, 3);
    expect(season[6]! / season[0]!).toBeCloseTo(10, 1);
  });
  it('of no use at all is none', () => {
    expect(seasonOf(Array(12).fill(0))).toBeNull();
  });
  it('is shown as shares of the year', () => {
    expect(seasonPercent(Array(12).fill(1))).toEqual(Array(12).fill(8.3));
  });
});
