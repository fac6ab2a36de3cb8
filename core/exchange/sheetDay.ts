import { type Day, isDay } from '../units/day.ts';

/** In which order a sheet writes day, month and year; an ISO day is read in any. */
export type DateOrder = 'ymd' | 'dmy' | 'mdy';
export const dateOrders: readonly DateOrder[] = ['ymd', 'dmy', 'mdy'];

const ISO = /^(\d{4}-\d\d-\d\d)(?:[T ][\d:.]+Z?)?$/;
const PARTED = /^(\d{1,4})\s?[./\- ]\s?(\d{1,2}|\p{L}{3,}\.?)\s?[./\- ]\s?(\d{1,4})(?:[ T]\d{1,2}:\d\d(?::\d\d)?)?$/u;

const MONTHS = ['jan', 'feb', 'mar', 'apr', 'may', 'jun', 'jul', 'aug', 'sep', 'oct', 'nov', 'dec'];

/**
 * A day as a sheet writes it: 12.10.2026, 10/12/26, 12 Oct 2026. Null: no day, or none in this order.
 * Two digits of a year are 1969 to 2068.
 *
 * @source IEEE Std 1003.1 (POSIX), strptime, %y: 69-99 are 1969-1999, 00-68 are 2000-2068
 */
export function readSheetDay(text: string, order: DateOrder): Day | null {
  const iso = ISO.exec(text)?.[1];
  if (iso !== undefined) return isDay(iso) ? iso : null;
  const parts = PARTED.exec(text)?.slice(1, 4);
  if (!parts) return null;
  const [first = '', middle = '', last = ''] = parts;
  const named = monthNamed(middle);
  if (named !== null) return dayOf(first.length === 4 ? [first, named, last] : [last, named, first]);
  if (/\D/.test(middle)) return null;
  // four digits in front are a year, whatever the order of the others
  if (order === 'ymd' || first.length === 4) return dayOf([first, Number(middle), last]);
  return order === 'dmy' ? dayOf([last, Number(middle), first]) : dayOf([last, Number(first), middle]);
}

const monthNamed = (word: string): number | null => {
  const place = /^\p{L}/u.test(word) ? MONTHS.indexOf(word.slice(0, 3).toLowerCase()) : -1;
  return place === -1 ? null : place + 1;
};

function dayOf([year, month, date]: [year: string, month: number, date: string]): Day | null {
  if ((year.length !== 4 && year.length !== 2) || date.length > 2) return null;
  const short = Number(year);
  const full = year.length === 4 ? short : short + (short >= 69 ? 1900 : 2000);
  const text = `${full}-${String(month).padStart(2, '0')}-${date.padStart(2, '0')}`;
  return isDay(text) ? text : null;
}

/**
 * The order a sheet's days are written in, when they tell: 31.12.2026 can only be read one way, 03.04.2026 two ways.
 * `order` null: asked of a person. `seen`: whether there are any days at all.
 */
export function findDateOrder(texts: Iterable<string>): { order: DateOrder | null; seen: boolean } {
  const fits: Record<DateOrder, number> = { ymd: 0, dmy: 0, mdy: 0 };
  let days = 0;
  let tells = false;
  for (const text of texts) {
    if (!ISO.test(text) && !PARTED.test(text)) continue;
    const read = dateOrders.filter((order) => readSheetDay(text, order) !== null);
    if (read.length === 0) continue;
    days++;
    for (const order of read) fits[order]++;
    if (read.length === 1) tells = true;
  }
  if (days === 0) return { order: null, seen: false };
  const whole = dateOrders.filter((order) => fits[order] === days);
  // ISO days, and days with the month by name, are read the same in every order
  if (!tells && whole.length === dateOrders.length) return { order: 'ymd', seen: true };
  return { order: whole.length === 1 ? (whole[0] ?? null) : null, seen: true };
}
