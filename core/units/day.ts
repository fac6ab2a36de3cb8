import type { Brand } from './brand.ts';

/** A calendar day as ISO text, "2026-10-12". Days carry no time zone. */
export type Day = Brand<string, 'Day'>;

const MS_PER_DAY = 86_400_000;
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

/** Days since 1970-01-01; whole. */
export const dayNumber = (of: Day): number => Date.parse(`${of}T00:00:00Z`) / MS_PER_DAY;

export const dayFromNumber = (number: number): Day =>
  new Date(Math.round(number) * MS_PER_DAY).toISOString().slice(0, 10) as Day;

/** Whole days from `from` to `to`; negative when `to` is earlier. */
export const daysBetween = (from: Day, to: Day): number => dayNumber(to) - dayNumber(from);

export const addDays = (to: Day, days: number): Day => dayFromNumber(dayNumber(to) + days);

export const yearOf = (of: Day): number => Number(of.slice(0, 4));
