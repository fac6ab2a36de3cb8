import { type Day, day } from '../units/day.ts';

/** The only clock of the program. */
export type Clock = {
  /** the calendar day where the computer stands */
  today(): Day;
  /** ISO instant, to the millisecond, UTC */
  now(): string;
};

export const systemClock: Clock = {
  today: () => {
    const at = new Date();
    const two = (number: number) => String(number).padStart(2, '0');
    return day(`${at.getFullYear()}-${two(at.getMonth() + 1)}-${two(at.getDate())}`);
  },
  now: () => new Date().toISOString(),
};

/** The same with the day fixed; entries still get the instant at which they are made. */
export const clockFixedOn = (asOf: Day): Clock => ({ ...systemClock, today: () => asOf });
