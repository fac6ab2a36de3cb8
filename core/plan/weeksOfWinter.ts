import type { Winter } from '../shop/winter.ts';
import { addDays, type Day, dayNumber } from '../units/day.ts';

/** Monday of the week a day is in. */
export const mondayOf = (on: Day): Day => addDays(on, -((((dayNumber(on) + 3) % 7) + 7) % 7));

/** Mondays of a winter's weeks: those with a working day, Monday to Friday, in it. */
export function weeksOfWinter({ from, to }: Winter): Day[] {
  const first = mondayOf(from);
  const weeks: Day[] = [];
  for (let monday = first; monday <= to; monday = addDays(monday, 7))
    if (addDays(monday, 4) >= from) weeks.push(monday);
  return weeks;
}

/** Number of the first week that begins on a day or later; as many as there are when none does. */
export function weekFrom(weeks: readonly Day[], on: Day): number {
  const found = weeks.findIndex((monday) => monday >= on);
  return found < 0 ? weeks.length : found;
}

/** Number of the week a day is in: 0 before the first, the last after it. */
export const weekOf = (weeks: readonly Day[], on: Day): number =>
  Math.max(
    0,
    weeks.findLastIndex((monday) => monday <= on),
  );
