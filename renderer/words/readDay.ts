import { addDays, type Day, isDay } from '#core/units/day.ts';
import { months } from './english.ts';

/**
 * A day as typed: 2026-10-12, 12.10.2026, 12/10/26, 12 Oct 2026, 12 oct, today, yesterday. Day before month, as said.
 * Without a year it is the latest such day up to today. Null when it is no day that exists.
 */
export function readDay(typed: string, today: Day): Day | null {
  const text = typed.trim().toLowerCase();
  if (text === 'today') return today;
  if (text === 'yesterday') return addDays(today, -1);
  if (isDay(text)) return text;
  const parts = text.match(/^(\d{1,2})[\s./-]*(\d{1,2}|[a-z]{3,9})\.?(?:[\s./-]+(\d{4}|\d{2}))?[.,]?$/);
  if (!parts) return null;
  const [, dayOfMonth = '', monthText = '', yearText] = parts;
  const month = monthNumber(monthText);
  if (month === null) return null;
  const monthDay = `${String(month).padStart(2, '0')}-${dayOfMonth.padStart(2, '0')}`;
  if (yearText !== undefined) return existing(`${fullYear(yearText)}-${monthDay}`);
  const thisYear = Number(today.slice(0, 4));
  const candidates = [thisYear, thisYear - 1, thisYear - 2, thisYear - 3, thisYear - 4];
  return candidates.map((year) => existing(`${year}-${monthDay}`)).find((day) => day !== null && day <= today) ?? null;
}

const existing = (text: string): Day | null => (isDay(text) ? text : null);

const fullYear = (text: string): string => (text.length === 2 ? `20${text}` : text);

function monthNumber(text: string): number | null {
  if (/^\d+$/.test(text)) return Number(text);
  const index = months.findIndex((month) => text.startsWith(month.toLowerCase()));
  return index < 0 ? null : index + 1;
}
