import { addDays, type Day, day, isDay, yearOf } from '../units/day.ts';
import type { RecallShop, RecallTerms } from './recallMachine.ts';

/** The last day a machine called in this winter must last to: the end of the winter, and of the farm's season after it. */
export function lastsTo({ asOf, winters }: RecallShop, { seasonTo }: Pick<RecallTerms, 'seasonTo'>): Day {
  const [winter, next] = winters;
  const winterEnd = winter?.to ?? asOf;
  if (seasonTo === null) return next ? addDays(next.from, -1) : winterEnd;
  return seasonEndAfter(winterEnd, seasonTo);
}

/** The first such day of the year after a day; the 29th of February is the 28th where there is none. */
function seasonEndAfter(after: Day, monthDay: string): Day {
  const ofYear = (year: number): Day => {
    const text = `${year}-${monthDay}`;
    return isDay(text) ? text : day(`${year}-${monthDay.slice(0, 2)}-28`);
  };
  const sameYear = ofYear(yearOf(after));
  return sameYear > after ? sameYear : ofYear(yearOf(after) + 1);
}
