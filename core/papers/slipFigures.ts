import type { Slip } from '../contract/slip.ts';
import { type Day, yearOf } from '../units/day.ts';
import { months } from '../words/english.ts';
import { hoursFigure } from '../words/quantityText.ts';

/** Days and hours as the farmer's page writes them. */

const monthNames = [
  'January',
  'February',
  'March',
  'April',
  'May',
  'June',
  'July',
  'August',
  'September',
  'October',
  'November',
  'December',
] as const;

/** "6 November 2026" */
export const longDay = (of: Day): string => `${Number(of.slice(8))} ${monthName(of)} ${yearOf(of)}`;
/** "12 October", where the year is plain */
export const longDayOfYear = (of: Day): string => `${Number(of.slice(8))} ${monthName(of)}`;
export const shortDay = (of: Day): string =>
  `${Number(of.slice(8))} ${months[Number(of.slice(5, 7)) - 1]} ${yearOf(of)}`;
export const monthName = (of: Day): string => monthNames[Number(of.slice(5, 7)) - 1] ?? '';

/** Forecast hours are written to ten: nobody knows them closer. */
export const toTen = (hours: number): number => Math.round(hours / 10) * 10;

/** What the meter will show at those hours: past its full scale it starts again from nought. Below 0: before it was fitted. */
export function meterFigure(slip: Slip, dialHours: number): string {
  const scale = fullScale(slip);
  return hoursFigure(scale === null || dialHours < 0 ? dialHours : dialHours % scale);
}

export const forecastFigure = (slip: Slip, dialHours: number): string => meterFigure(slip, toTen(dialHours));

/** Where the meter starts again [h]; null: not known, or no meter. */
export const fullScale = (slip: Slip): number | null =>
  slip.hoursAre === 'dial' && slip.meterDigits !== null ? 10 ** slip.meterDigits : null;

/** The meter will have started again by then. */
export const turnsOver = (slip: Slip, dialHours: number): boolean => {
  const scale = fullScale(slip);
  return (
    scale !== null && slip.dialHours !== null && Math.floor(dialHours / scale) > Math.floor(slip.dialHours / scale)
  );
};

/** "8 500 hours on the meter", "350 hours on the meter after it has started again from 0", "900 hours". */
export function hoursPhrase(slip: Slip, dialHours: number): string {
  const figure = `${forecastFigure(slip, dialHours)} hours`;
  if (slip.hoursAre === 'machine') return figure;
  return turnsOver(slip, dialHours)
    ? `${figure} on ${meterOf(slip)}, once it has started again from 0`
    : `${figure} on ${meterOf(slip)}`;
}

/** Its own meter, or that of the machine that pulls it, by name. */
export const meterOf = ({ dialMachine }: Slip): string =>
  dialMachine === null ? 'the meter' : `the meter of ${dialMachine}`;

/** "6 870", or "about 6 870" where nobody read it that day. */
export const presentFigure = (slip: Slip, dialHours: number): string =>
  slip.estimated ? `about ${forecastFigure(slip, dialHours)}` : meterFigure(slip, dialHours);

/** "780": hours a year, to ten. */
export const hoursPerYearFigure = (hoursPerYear: number): string => hoursFigure(toTen(hoursPerYear));
