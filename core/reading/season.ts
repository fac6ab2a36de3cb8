import { type Day, dateOfNumber, dayNumber } from '../units/day.ts';

/** Relative use of a machine in each calendar month, January first. Only the ratios count: the mean over the year is made 1. */
export type Season = readonly number[];

/**
 * Grass and tillage: little in winter, most from May to September, the drills in spring and autumn.
 * Common practice, no source; the shop may set its own.
 */
export const GRASS_AND_TILLAGE: Season = [0.4, 0.5, 0.9, 1.2, 1.5, 1.3, 1.4, 1.5, 1.4, 0.9, 0.6, 0.4];

/** The same in every month. */
export const EVEN_USE: Season = [1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1, 1];

const MONTH_DAYS = [31, 28, 31, 30, 31, 30, 31, 31, 30, 31, 30, 31];
const FEBRUARY = 1;

/**
 * Season-weighted days from the end of one day to the end of another:
 *   S(a, b) = sum of s(d) over the days a < d <= b,   s the month's weight, mean 1 over a year of 365 days
 *
 * @param season twelve weights, not negative, not all 0
 * @param from first day, itself not counted
 * @param to last day, counted
 * @returns average days [d]; negative when `to` is earlier
 * @source own derivation: counting days
 */
export const seasonDays = (season: Season, from: Day, to: Day): number =>
  seasonDaysSince1970(season, dayNumber(to)) - seasonDaysSince1970(season, dayNumber(from));

/** S from the start of 1970 to the end of a day given by its number since 1970-01-01; whole days only. */
export function seasonDaysSince1970(season: Season, dayOf: number): number {
  const { scale, before } = counted(season);
  const { year, month, dayOfMonth } = dateOfNumber(dayOf);
  const leapDays = leapYearsBefore(year) - leapYearsBefore(1970) + (isLeap(year) && month > FEBRUARY ? 1 : 0);
  const weighted = leapDays * season[FEBRUARY]! + dayOfMonth * season[month]! + before[month]!;
  return (year - 1970) * 365 + weighted * scale;
}

/** A season as it is counted by. */
type SeasonCounted = {
  /** what makes the mean 1 */
  scale: number;
  /** weighted days of a year before each month */
  before: Float64Array;
  /** the same season with mean 1 */
  evened: Season;
};

/** Worked out once of each season. */
function counted(season: Season): SeasonCounted {
  const known = seasons.get(season);
  if (known) return known;
  const before = new Float64Array(13);
  for (let month = 0; month < 12; month++) before[month + 1] = before[month]! + MONTH_DAYS[month]! * season[month]!;
  const scale = 365 / before[12]!;
  const made = { scale, before, evened: season.map((weight) => weight * scale) };
  seasons.set(season, made);
  return made;
}

const seasons = new WeakMap<Season, SeasonCounted>();

const isLeap = (year: number): boolean => (year % 4 === 0 && year % 100 !== 0) || year % 400 === 0;

const leapYearsBefore = (year: number): number =>
  Math.floor((year - 1) / 4) - Math.floor((year - 1) / 100) + Math.floor((year - 1) / 400);

/** Feeding and yard work: most in winter. Common practice, no source. */
export const WINTER_FEEDING: Season = [1.6, 1.6, 1.4, 1.0, 0.7, 0.6, 0.6, 0.6, 0.7, 0.9, 1.2, 1.5];

/** The same season with mean 1 over a year of 365 days. */
export const meanOne = (season: Season): Season => counted(season).evened;
