import { expect, it } from 'vitest';
import { dateOfNumber, dayFromNumber, dayNumber } from './day.ts';

it('counts days and dates as the calendar of the standard library does, leap years and centuries too', () => {
  for (let number = -141_000; number < 200_000; number += 1) {
    const date = new Date(number * 86_400_000);
    const { year, month, dayOfMonth } = dateOfNumber(number);
    if (year !== date.getUTCFullYear() || month !== date.getUTCMonth() || dayOfMonth !== date.getUTCDate())
      expect({ number, year, month, dayOfMonth }).toEqual(date.toISOString());
    if (number % 97 === 0) expect(dayFromNumber(number)).toBe(date.toISOString().slice(0, 10));
    if (dayNumber(dayFromNumber(number)) !== number) expect(dayFromNumber(number)).toBe(number);
  }
});
