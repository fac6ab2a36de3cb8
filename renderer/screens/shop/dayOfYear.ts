import { months } from '../../words/english.ts';

/** Days of each month in a leap year: 29 Feb is a day of some years. */
const DAYS_OF = [31, 29, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];

/** "11-01" as a person writes it: "1 Nov". */
export function dayOfYearEcho(monthDay: string): string {
  const month = months[Number(monthDay.slice(0, 2)) - 1];
  return month ? `${Number(monthDay.slice(3))} ${month}` : monthDay;
}

/**
 * A day of the year as typed: "1 Nov", "1 November", "11-01" (month first, as the record writes it).
 * @returns "11-01"; null where it is no day of any year
 */
export function readDayOfYear(text: string): string | null {
  const typed = text.trim().toLowerCase().replace(/\.$/, '');
  const named = /^(\d{1,2})\.?\s*([a-z]{3,9})\.?$/.exec(typed) ?? /^([a-z]{3,9})\.?\s*(\d{1,2})$/.exec(typed);
  if (named) {
    const [dayText, monthText] = /^\d/.test(named[1]!) ? [named[1]!, named[2]!] : [named[2]!, named[1]!];
    const month = MONTH_NAMES.findIndex((name) => name.startsWith(monthText));
    return month < 0 ? null : monthDay(month + 1, Number(dayText));
  }
  const iso = /^(\d{2})-(\d{2})$/.exec(typed);
  return iso ? monthDay(Number(iso[1]), Number(iso[2])) : null;
}

const MONTH_NAMES = [
  'january',
  'february',
  'march',
  'april',
  'may',
  'june',
  'july',
  'august',
  'september',
  'october',
  'november',
  'december',
];

const monthDay = (month: number, day: number): string | null =>
  day >= 1 && day <= (DAYS_OF[month - 1] ?? 0)
    ? `${String(month).padStart(2, '0')}-${String(day).padStart(2, '0')}`
    : null;
