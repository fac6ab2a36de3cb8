import { type Day, daysBetween, yearOf } from '../units/day.ts';
import { type LengthUnit, MM_PER_INCH } from '../units/length.ts';
import { months, shared } from './english.ts';

/** Thousands gap. It breaks at a line's end, so figures stand in a no-wrap span: see Figures.tsx. */
export const THIN_GAP = '\u2009';
export const MINUS = '\u2212';
/** Between a figure and its unit. */
export const NO_BREAK_SPACE = '\u00A0';

/** The mark between whole and decimals. The record always holds a point. */
export type Point = '.' | ',';

/** How the shop writes figures, in input and output alike: its decimal mark, and "in" before it where lengths stand in inches. */
export type Writing = Point | `in${Point}`;

export const writingOf = ({ decimalMark, lengths }: { decimalMark: Point; lengths: LengthUnit }): Writing =>
  lengths === 'inch' ? `in${decimalMark}` : decimalMark;

export const pointOf = (writing: Writing): Point => (writing.endsWith(',') ? ',' : '.');

export const inInches = (writing: Writing): boolean => writing.startsWith('in');

/** What stands after a length, or in the head of its column. */
export const lengthUnit = (writing: Writing): 'mm' | 'in' => (inInches(writing) ? 'in' : 'mm');

/** What lengths are counted in [mm]: 1, or an inch. */
export const unitMmOf = (writing: Writing): number => (inInches(writing) ? MM_PER_INCH : 1);

/** Low, middle, high; null where the figure lies beyond what the model will say. */
export type Range = { low: number | null; middle: number | null; high: number | null };

const grouped = (digits: string): string => digits.replace(/\B(?=(\d{3})+$)/g, THIN_GAP);

const signed = (negative: boolean, digits: string): string => (negative ? MINUS + digits : digits);

/** A whole number with thousands gaps: 8 500, -1 200 with a true minus. */
export function wholeFigure(value: number): string {
  const whole = Math.round(Math.abs(value));
  return signed(value < 0 && whole !== 0, grouped(String(whole)));
}

/** A decimal figure with a fixed number of places: 10.19, or 10,19 in a shop that writes commas. */
export function decimalFigure(value: number, places: number, writing: Writing = '.'): string {
  const digits = Math.abs(value).toFixed(places);
  const [whole = '0', fraction] = digits.split('.');
  const text = fraction === undefined ? grouped(whole) : `${grouped(whole)}${pointOf(writing)}${fraction}`;
  return signed(value < 0 && Number(digits) !== 0, text);
}

/**
 * A length in the shop's unit, without it: "10.19", "0.4012". In inches it has two decimals more than in millimetres, the
 * fewest that lose nothing: half of the last one is 0.00127 mm where half of the last one in mm is 0.005.
 * @param places decimals it has in mm
 */
export const lengthFigure = (lengthMm: number, places: number, writing: Writing = '.'): string =>
  inInches(writing)
    ? decimalFigure(lengthMm / MM_PER_INCH, places + INCH_PLACES_MORE, writing)
    : decimalFigure(lengthMm, places, writing);

const INCH_PLACES_MORE = 2;

/** A length with its unit: "10.19 mm", "0.4012 in". */
export const lengthText = (lengthMm: number, places: number, writing: Writing = '.'): string =>
  `${lengthFigure(lengthMm, places, writing)}${NO_BREAK_SPACE}${lengthUnit(writing)}`;

/** Machine hours or dial hours, whole: "6 840". */
export const hoursFigure = (hours: number): string => wholeFigure(hours);

/** Hours left: whole, and to ten where fewer than 100 are left either way, since nobody knows them closer. */
export const hoursLeftFigure = (hoursLeft: number): string =>
  wholeFigure(Math.abs(hoursLeft) < 100 ? Math.round(hoursLeft / 10) * 10 : hoursLeft);

/** A figure with its unit: "6 840 h". */
export const hoursText = (hours: number): string => `${hoursFigure(hours)}${NO_BREAK_SPACE}h`;

/** Decimals a gauge's reading step deserves: 0.01 two, 0.1 one, 0.001 three; a step not known is taken as a calliper's. */
export function decimalsOfGauge(stepMm: number): number {
  if (!(stepMm > 0)) return 2;
  return Math.min(3, Math.max(0, Math.ceil(-Math.log10(stepMm) - 1e-9)));
}

/** A size as its gauge reads it: 10.19. The unit stands in the column head. */
export const sizeFigure = (sizeMm: number, stepMm = 0.01, writing: Writing = '.'): string =>
  lengthFigure(sizeMm, decimalsOfGauge(stepMm), writing);

/**
 * A size as it stands in its box once that is left: with the gauge's decimals, or as many more as were typed (up to three),
 * so that the echo never rounds what goes into the record.
 * @param decimals of its gauge, in mm
 */
export function sizeEcho(sizeMm: number, decimals: number, writing: Writing): string {
  const more = inInches(writing) ? INCH_PLACES_MORE : 0;
  const size = inInches(writing) ? sizeMm / MM_PER_INCH : sizeMm;
  const [least, most] = [decimals + more, 3 + more];
  // what was read of an inch is exact to a tenth of a micrometre
  const exact = inInches(writing) ? 4e-6 : 1e-6 / 10 ** least;
  const places = [least, least + 1, most].find((n) => Math.abs(size - Math.round(size * 10 ** n) / 10 ** n) < exact);
  return decimalFigure(size, Math.max(least, Math.min(most, places ?? most)), writing);
}

/** A limit: one decimal, or as many more as it was set with (up to three): 12.0, 9.5, 40.25. In inches two to four: 0.50, 0.4375. */
export function limitFigure(limitMm: number, writing: Writing = '.'): string {
  const limit = inInches(writing) ? limitMm / MM_PER_INCH : limitMm;
  const [few, more, most] = inInches(writing) ? [2, 3, 4] : [1, 2, 3];
  const places = [few, more].find((n) => Math.abs(limit * 10 ** n - Math.round(limit * 10 ** n)) < 1e-6) ?? most;
  return decimalFigure(limit, places, writing);
}

/** A limit with its unit. */
export const limitText = (limitMm: number, writing: Writing = '.'): string =>
  `${limitFigure(limitMm, writing)}${NO_BREAK_SPACE}${lengthUnit(writing)}`;

/** A gauge's error as the shop writes it, U = 2 sd: "±0.10", under a head that names the unit. The record holds the sd. */
export const gaugeErrorFigure = (errorSdMm: number, writing: Writing = '.'): string =>
  `±${lengthFigure(2 * errorSdMm, 2 * errorSdMm < 0.01 ? 3 : 2, writing)}`;

/** The same with its unit: "±0.10 mm". */
export const gaugeErrorText = (errorSdMm: number, writing: Writing = '.'): string =>
  `${gaugeErrorFigure(errorSdMm, writing)}${NO_BREAK_SPACE}${lengthUnit(writing)}`;

/** What stands after a wear rate: "mm in 1 000 h"; an inch is written "in" and would read twice. */
export const rateUnit = (writing: Writing): string =>
  inInches(writing) ? `in per 1${THIN_GAP}000${NO_BREAK_SPACE}h` : `mm in 1${THIN_GAP}000${NO_BREAK_SPACE}h`;

/** Wear rate on screens: the shop's unit in 1 000 h, where code holds mm per hour. */
export const rateFigure = (rateMmPerHour: number, writing: Writing = '.'): string =>
  lengthFigure(rateMmPerHour * 1000, 2, writing);

/** A chance in words a farmer uses: "about 3 in 10"; never 0 or 10 of 10. */
export function chanceText(chance: number): string {
  if (chance < 0.05) return 'less than 1 in 20';
  if (chance > 0.95) return 'more than 19 in 20';
  return `about ${Math.min(9, Math.max(1, Math.round(chance * 10)))} in 10`;
}

/** Date in a sentence: "12 Oct 2026". The title block and the record write ISO. */
export const dayText = (day: Day): string => `${Number(day.slice(8))} ${monthOf(day)} ${day.slice(0, 4)}`;

/** "12 Oct", where the year is plain from the place it stands. */
export const dayOfYearText = (day: Day): string => `${Number(day.slice(8))} ${monthOf(day)}`;

/** "Nov 2026": no forecast is sharper than a month. */
export const monthYearText = (day: Day): string => `${monthOf(day)} ${yearOf(day)}`;

const monthOf = (day: Day): string => months[Number(day.slice(5, 7)) - 1] ?? '';

/** Two farming years on: beyond it a month would promise more than is known (common practice, no source). */
export const DAYS_OF_TWO_SEASONS = 730;

/** When a limit is likely reached: a month, "passed", or "check next winter" past two seasons or beyond reckoning. */
export function whenText(dayAtLimit: Day | null, asOf: Day): string {
  if (dayAtLimit === null || daysBetween(asOf, dayAtLimit) > DAYS_OF_TWO_SEASONS) return shared.checkNextWinter;
  return daysBetween(asOf, dayAtLimit) < 0 ? shared.passed : monthYearText(dayAtLimit);
}

/**
 * Hours left as a sentence: "150 to 880 hours, likely 470".
 * Negative figures are hours since the limit has probably passed, and are said so.
 */
export function hoursLeftSentence({ low, middle, high }: Range, noun: 'hours' | 'hours left' = 'hours'): string {
  if (low === null || middle === null) {
    return low === null ? 'further off than can be reckoned' : `from ${hoursLeftFigure(low)} hours on`;
  }
  if (high !== null && high < 0) {
    return `passed, ${agoRange(high, low)} hours ago, likely ${hoursLeftFigure(-middle)}`;
  }
  if (low < 0) {
    const likely =
      middle < 0 ? `likely passed ${hoursLeftFigure(-middle)} hours ago` : `likely ${hoursLeftFigure(middle)} left`;
    const upTo = high === null ? 'may have far to go' : `at most ${hoursLeftFigure(high)} left`;
    return `may have passed up to ${hoursLeftFigure(-low)} hours ago, ${upTo}, ${likely}`;
  }
  if (high === null) return `from ${hoursLeftFigure(low)} hours on, likely ${hoursLeftFigure(middle)}`;
  return `${hoursLeftFigure(low)} to ${hoursLeftFigure(high)} ${noun}, likely ${hoursLeftFigure(middle)}`;
}

const agoRange = (nearest: number, furthest: number): string =>
  `${hoursLeftFigure(-nearest)} to ${hoursLeftFigure(-furthest)}`;

/** Basis as it stands in a column: "2 + 14". */
export const basisFigure = (ownReadings: number, likeParts: number): string =>
  `${wholeFigure(ownReadings)} + ${wholeFigure(likeParts)}`;

/** Basis in words: "2 own readings, 14 like parts". */
export function basisText(ownReadings: number, likeParts: number): string {
  const own = ownReadings === 0 ? 'no own reading' : `${ownReadings} own reading${ownReadings === 1 ? '' : 's'}`;
  const like = likeParts === 0 ? 'no like parts' : `${wholeFigure(likeParts)} like part${likeParts === 1 ? '' : 's'}`;
  return `${own}, ${like}`;
}

const COUNTS = [
  'no',
  'one',
  'two',
  'three',
  'four',
  'five',
  'six',
  'seven',
  'eight',
  'nine',
  'ten',
  'eleven',
  'twelve',
];

/** Small counts as words, as a person says them. */
export const countWord = (count: number): string => COUNTS[count] ?? wholeFigure(count);
