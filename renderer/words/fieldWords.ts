import { inInches, type Writing } from '#core/words/quantityText.ts';
import type { NumberRead } from './readNumber.ts';

/** What stands beside a box that could not be read: what would be. */
export const numberFaultWords = (
  why: Extract<NumberRead, { ok: false }>['why'],
  unit: 'mm' | 'h',
  writing: Writing = '.',
): string =>
  ({
    empty: unit === 'mm' ? `Write a size in ${exampleOf(writing)}` : 'Write hours, such as 6 840',
    'not-a-number': unit === 'mm' ? `A size is a figure in ${exampleOf(writing)}` : 'Hours are a figure, such as 6 840',
    'two-decimal-marks': 'Two marks in one figure: write it with one, 1234.5 or 1234,5',
    'thousands-mark': 'Thousands or decimals? Write 4120 or 4.12',
  })[why];

const exampleOf = (writing: Writing): string =>
  inInches(writing) ? 'inches, such as 0.4012 or 13/32' : 'mm, such as 10.19';

export const fieldWords = {
  unreadDay: 'A day is written 12 Oct 2026, 12.10.2026 or 2026-10-12',
  futureDay: 'That day has not come yet',
  optional: 'may stay empty',
  nothingFound: 'Nothing of that name',
  choose: 'choose',
  staysInMm: 'These figures stand in mm, as the tables and stock lists they go by do. 1 in is 25.4 mm.',
  recordInMm: 'Lengths on this sheet stand in mm, as the record holds them. 1 in is 25.4 mm.',
  theme: { light: 'light', dark: 'dark', system: 'as the system' },
} as const;
