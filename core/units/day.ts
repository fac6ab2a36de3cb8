import type { Brand } from './brand.ts';

/** A calendar day as ISO text, "2026-10-12". Days carry no time zone. */
export type Day = Brand<string, 'Day'>;

const ISO_DAY = /^\d{4}-\d{2}-\d{2}$/;

/** True for a day that exists: "2024-02-29" yes, "2025-02-29" no. */
export function isDay(text: string): text is Day {
  if (!ISO_DAY.test(text)) return false;
  const ms = Date.parse(`${text}T00:00:00Z`);
  return Number.isFinite(ms) && new Date(ms).toISOString().slice(0, 10) === text;
}

/** @throws when the text is no day that exists; check with {@link isDay} where input comes from a person */
export function day(text: string): Day {
  if (!isDay(text)) throw new Error(`Broken invariant: ${text} is a day that exists`);
  return text;
}

/** Days since 1970-01-01; whole. Asked of every reading: it goes by the digits. */
export const dayNumber = (of: Day): number => daysSince1970(digits(of, 0, 4), digits(of, 5, 7), digits(of, 8, 10));

function digits(text: string, from: number, to: number): number {
  let number = 0;
  for (let at = from; at < to; at++) number = 10 * number + text.charCodeAt(at) - 48;
  return number;
}

const DAYS_PER_ERA = 146_097;
/** Days from 0000-03-01 to 1970-01-01. */
const BEFORE_1970 = 719_468;

/**
 * Years are counted from the first of March, so that a leap day is the last of its year, in eras of 400.
 * @source H. Hinnant, "chrono-compatible low-level date algorithms" (2013), days_from_civil
 */
function daysSince1970(year: number, month: number, dayOfMonth: number): number {
  const from = month > 2 ? year : year - 1;
  const era = Math.floor(from / 400);
  const yearOfEra = from - era * 400;
  const dayOfYear = Math.floor((153 * (month > 2 ? month - 3 : month + 9) + 2) / 5) + dayOfMonth - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * DAYS_PER_ERA + dayOfEra - BEFORE_1970;
}

/**
 * The calendar date of a day number; month counts from 0.
 * @source H. Hinnant, "chrono-compatible low-level date algorithms" (2013), civil_from_days
 */
export function dateOfNumber(number: number): { year: number; month: number; dayOfMonth: number } {
  const since = number + BEFORE_1970;
  const era = Math.floor(since / DAYS_PER_ERA);
  const dayOfEra = since - era * DAYS_PER_ERA;
  const leaps = Math.floor(dayOfEra / 1460) - Math.floor(dayOfEra / 36_524) + Math.floor(dayOfEra / 146_096);
  const yearOfEra = Math.floor((dayOfEra - leaps) / 365);
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const fromMarch = Math.floor((5 * dayOfYear + 2) / 153);
  const month = fromMarch < 10 ? fromMarch + 2 : fromMarch - 10;
  return {
    year: yearOfEra + era * 400 + (month < 2 ? 1 : 0),
    month,
    dayOfMonth: dayOfYear - Math.floor((153 * fromMarch + 2) / 5) + 1,
  };
}

export function dayFromNumber(number: number): Day {
  const { year, month, dayOfMonth } = dateOfNumber(Math.round(number));
  return `${String(year).padStart(4, '0')}-${TWO_DIGITS[month + 1]}-${TWO_DIGITS[dayOfMonth]}` as Day;
}

const TWO_DIGITS = Array.from({ length: 32 }, (_, number) => String(number).padStart(2, '0'));

/** Whole days from `from` to `to`; negative when `to` is earlier. */
export const daysBetween = (from: Day, to: Day): number => dayNumber(to) - dayNumber(from);

export const addDays = (to: Day, days: number): Day => dayFromNumber(dayNumber(to) + days);

export const yearOf = (of: Day): number => Number(of.slice(0, 4));
