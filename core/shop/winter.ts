import { type Day, day, daysBetween, isDay, yearOf } from '../units/day.ts';

/** The shop's slack season of one year: when machines come in. Both days belong to it. */
export type Winter = { name: string; from: Day; to: Day };

/** First and last day of the slack season, month and day: "11-01" to "02-28". */
export type WinterOfYear = { winterFrom: string; winterTo: string };

/**
 * The winters to plan for, soonest first: the one running on a day, else the next, and those after it.
 * The first is the winter being planned.
 * @example wintersFrom({ winterFrom: '11-01', winterTo: '02-28' }, day('2026-12-24'), 2)[0].name // '26/27'
 */
export function wintersFrom(ofYear: WinterOfYear, asOf: Day, count: number): Winter[] {
  // a winter over the new year that began last year may still run
  const candidates = Array.from({ length: count + 2 }, (_, i) => winterBegun(ofYear, yearOf(asOf) - 1 + i));
  return candidates.filter((winter) => daysBetween(asOf, winter.to) >= 0).slice(0, count);
}

function winterBegun({ winterFrom, winterTo }: WinterOfYear, year: number): Winter {
  const overNewYear = winterTo < winterFrom;
  const endYear = overNewYear ? year + 1 : year;
  return {
    name: overNewYear ? `${twoDigits(year)}/${twoDigits(endYear)}` : String(year),
    from: dayOfYear(year, winterFrom),
    to: dayOfYear(endYear, winterTo),
  };
}

const twoDigits = (year: number): string => String(year % 100).padStart(2, '0');

/** "02-29" is the 28th in a year that lacks it; a 31st is the 30th in a month that lacks it. */
function dayOfYear(year: number, monthDay: string): Day {
  const month = monthDay.slice(0, 2);
  for (let dayOfMonth = Number(monthDay.slice(3)); dayOfMonth > 28; dayOfMonth--) {
    const text = `${year}-${month}-${dayOfMonth}`;
    if (isDay(text)) return text;
  }
  return day(`${year}-${month}-${monthDay.slice(3) > '28' ? '28' : monthDay.slice(3)}`);
}
