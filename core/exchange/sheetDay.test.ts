import { describe, expect, test } from 'vitest';
import { findDateOrder, readSheetDay } from './sheetDay.ts';

describe('a day as a sheet writes it', () => {
  test.each([
    ['12.10.2026', 'dmy', '2026-10-12'],
    ['12.10.2026', 'mdy', '2026-12-10'],
    ['12.10.2026', 'ymd', null],
    ['10/12/26', 'mdy', '2026-10-12'],
    ['26/10/12', 'ymd', '2026-10-12'],
    ['2026/3/4', 'dmy', '2026-03-04'],
    ['12 Oct 2026', 'mdy', '2026-10-12'],
    ['12. 10. 2026', 'dmy', '2026-10-12'],
    ['12.10.2026 13:45', 'dmy', '2026-10-12'],
    ['2026-10-12T00:00:00.000Z', 'dmy', '2026-10-12'],
    ['31.12.99', 'dmy', '1999-12-31'],
    ['31.06.2026', 'dmy', null],
    ['12.10', 'dmy', null],
    ['45000', 'dmy', null],
  ] as const)('%s in order %s is %s', (text, order, day) => expect(readSheetDay(text, order)).toBe(day));

  test('two digits of a year are 1969 to 2068', () => {
    expect(readSheetDay('1.1.69', 'dmy')).toBe('1969-01-01');
    expect(readSheetDay('1.1.68', 'dmy')).toBe('2068-01-01');
  });
});

describe('the order of a sheet’s days', () => {
  test('is told by one day that can be read only one way', () => {
    expect(findDateOrder(['03.04.2026', '25.06.2026'])).toEqual({ order: 'dmy', seen: true });
    expect(findDateOrder(['03/04/2026', '06/25/2026'])).toEqual({ order: 'mdy', seen: true });
    expect(findDateOrder(['2026-04-03'])).toEqual({ order: 'ymd', seen: true });
  });
  test('is not guessed where none tells, or where two tell otherwise', () => {
    expect(findDateOrder(['03.04.2026'])).toEqual({ order: null, seen: true });
    expect(findDateOrder(['12/31/2026', '31/12/2026'])).toEqual({ order: null, seen: true });
    expect(findDateOrder(['', 'Loader 1'])).toEqual({ order: null, seen: false });
  });
});
