import { describe, expect, it } from 'vitest';
import type { ShopSettings } from '#core/contract/shop.ts';
import { dayOfYearEcho, readDayOfYear } from './dayOfYear.ts';
import { seasonOf, seasonPercent } from './season.ts';
import { shopForm, shopSettings } from './shopForm.ts';

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

describe('the shop’s settings', () => {
  const settings: ShopSettings = {
    name: 'Under Crag Works',
    headLines: ['Agricultural engineers'],
    phone: '0100',
    email: '',
    winterFrom: '11-01',
    winterTo: '02-28',
    winterHoursPerWeek: 37.5,
    decimalMark: ',',
    season: Array(12).fill(1),
    hoursPerYearDefault: 1200,
    greaseAndWatch: ['Grease it.', 'Watch it.'],
    theme: 'system',
    lengths: 'mm',
  };
  it('come back from the form as they went in', () => {
    const back = shopSettings(shopForm(settings)).settings;
    expect(back).toEqual(settings);
    expect(shopForm(settings)).toMatchObject({ winterFromText: '1 Nov', winterHoursText: '37,5' });
  });
  it('name the fields that could not be read', () => {
    const { settings: none, remarks } = shopSettings({
      ...shopForm(settings),
      winterToText: '31 Feb',
      hoursPerYearText: '0',
      headText: 'a\nb\nc\nd\ne',
      seasonTexts: Array(12).fill('-1'),
    });
    expect(none).toBeNull();
    expect([...remarks].sort()).toEqual(['headText', 'hoursPerYearText', 'seasonTexts', 'winterToText']);
  });
});
