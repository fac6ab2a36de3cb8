import { expect, it } from 'vitest';
import { aDial, aMachine } from '#tests/support/aShopLife.ts';
import { hoursLine } from '../reading/hoursLine.ts';
import { machineHoursOn } from '../reading/machineHours.ts';
import { day } from '../units/day.ts';
import { dayOfPastHours } from './dayOfHours.ts';

const line = hoursLine(
  aMachine({ dialEvents: [aDial('2024-01-01', 1000), aDial('2024-01-11', 1100)] }),
  day('2024-06-01'),
);

it('the day by whose end some hours had run, between two readings', () => {
  expect(dayOfPastHours(line, 1050)).toBe('2024-01-06');
  expect(dayOfPastHours(line, 1051)).toBe('2024-01-07');
  expect(machineHoursOn(line, dayOfPastHours(line, 1050))!.hours).toBe(1050);
});

it('never after the day of the last reading, nor before hours began', () => {
  expect(dayOfPastHours(line, 1100)).toBe('2024-01-11');
  expect(dayOfPastHours(line, 5000)).toBe('2024-01-11');
  expect(dayOfPastHours(line, 0) < '2024-01-01').toBe(true);
});
