import { type Day, isDay } from '../units/day.ts';
import type { FoundMark } from './decimalMark.ts';
import { readNumberCell } from './decimalMark.ts';
import { asWritten } from './inertText.ts';

export type CellReading<T> = { value: T } | { code: string; expected: string };

/** What may stand in a cell, and how it is read. */
export type CellKind<T> = {
  read(text: string, mark: FoundMark): CellReading<T>;
  /** a number: its cells tell the file's decimal mark; `unit` may stand after it */
  number: { unit: 'mm' | 'h' | null } | null;
};

/** A column of a file; `empty`: what an empty cell, or a missing column, reads as. */
export type Column<T> = { kind: CellKind<T>; empty: { value: T } | null };

export const required = <T>(kind: CellKind<T>): Column<T> => ({ kind, empty: null });

export const mayBeEmpty = <T, E>(kind: CellKind<T>, value: E): Column<T | E> => ({ kind, empty: { value } });

export const text = (mostCharacters = 120): CellKind<string> => ({
  number: null,
  read: (cell) => {
    const written = asWritten(cell);
    return written.length <= mostCharacters
      ? { value: written }
      : { code: 'too-long', expected: `at most ${mostCharacters} characters` };
  },
});

export const isoDay: CellKind<Day> = {
  number: null,
  read: (cell) =>
    isDay(cell) && cell >= '1900-01-01' && cell < '2200-01-01'
      ? { value: cell }
      : { code: 'not-a-day', expected: 'a day that exists, like 2026-10-12' },
};

export const oneOf = <const T extends string>(...words: readonly T[]): CellKind<T> => ({
  number: null,
  read: (cell) => {
    const word = words.find((one) => one === cell.toLowerCase());
    return word === undefined ? { code: 'not-one-of', expected: words.join(' | ') } : { value: word };
  },
});

type Bounds = { unit: 'mm' | 'h' | null; least: number; most: number; aboveLeast?: boolean; whole?: boolean };

export const number = ({ unit, least, most, aboveLeast = false, whole = false }: Bounds): CellKind<number> => ({
  number: { unit },
  read: (cell, mark) => {
    const reading = readNumberCell(cell, unit, mark);
    if ('code' in reading) return reading;
    const { value } = reading;
    if (whole && !Number.isInteger(value)) return { code: 'not-a-number', expected: 'a whole number' };
    if (value >= least && value <= most && !(aboveLeast && value === least)) return reading;
    const from = aboveLeast ? `above ${least}` : `from ${least}`;
    return { code: 'out-of-range', expected: `a number ${from} to ${most}${unit ? ` ${unit}` : ''}` };
  },
});
