import type { Delimiter } from './csvTable.ts';

export type DecimalMark = '.' | ',';

/** The mark of a file; `unclear`: what stands there may as well be thousands, and is not guessed at. */
export type FoundMark = { mark: DecimalMark; unclear: boolean };

const WITH_MARK = /^[+-]?\d*[.,]\d+$/;
/** 1.234 and 12,345: one to three digits, none of them a leading zero, then exactly three. */
const MAY_BE_THOUSANDS = /^[+-]?[1-9]\d{0,2}[.,]\d{3}$/;

/**
 * Which decimal mark a file uses, from all of its numbers.
 * A number such as 12,5 shows it; 1.234 does not. Where only such numbers stand, the mark is the point in a file parted
 * by commas and the comma in one parted by semicolons; the other way round it is unclear.
 *
 * @param numbers texts of the number cells, without units
 */
export function findDecimalMark(numbers: Iterable<string>, delimiter: Delimiter): FoundMark {
  const clear = { '.': 0, ',': 0 };
  const perhaps = { '.': 0, ',': 0 };
  for (const number of numbers) {
    if (!WITH_MARK.test(number)) continue;
    const mark = number.includes(',') ? ',' : '.';
    if (MAY_BE_THOUSANDS.test(number)) perhaps[mark]++;
    else clear[mark]++;
  }
  const usual: DecimalMark = delimiter === ';' ? ',' : '.';
  if (clear['.'] !== clear[',']) return { mark: clear['.'] > clear[','] ? '.' : ',', unclear: false };
  if (clear['.'] > 0) return { mark: usual, unclear: false };
  const other = usual === '.' ? ',' : '.';
  return { mark: usual, unclear: perhaps[other] > 0 };
}

export type NumberReading = { value: number } | { code: string; expected: string };

const THOUSANDS = /^[+-]?\d{1,3}(?:[.,' \u2019\u00a0\u202f]\d{3})+(?:[.,]\d+)?$/;
const INCHES = /(?:in|inch|inches|["\u2033])$/i;

/** A number cell without the unit that may stand after it. */
export const withoutUnit = (text: string, unit: 'mm' | 'h' | null): string =>
  unit === null ? text : text.replace(unit === 'mm' ? /\s*mm$/i : /\s*h$/i, '');

/**
 * A number as it stands in a file, read by the file's own decimal mark; nothing is guessed.
 * Codes: inches, mixed-decimal-marks, thousands-mark, decimal-mark-unclear, not-a-number.
 */
export function readNumberCell(text: string, unit: 'mm' | 'h' | null, { mark, unclear }: FoundMark): NumberReading {
  const number = withoutUnit(text, unit);
  const example = mark === '.' ? '12.5' : '12,5';
  const inWords = unit === 'mm' ? 'a number in mm' : unit === 'h' ? 'a number of hours' : 'a number';
  if (/^[+-]?\d+$/.test(number)) return { value: Number(number) };
  if (WITH_MARK.test(number)) {
    if (unclear && MAY_BE_THOUSANDS.test(number)) {
      return { code: 'decimal-mark-unclear', expected: `${inWords} that cannot be read two ways: 1234, or 1.2340` };
    }
    if (!number.includes(mark)) {
      return { code: 'mixed-decimal-marks', expected: `${inWords} like ${example}, as elsewhere in this file` };
    }
    return { value: Number(number.replace(',', '.')) };
  }
  if (THOUSANDS.test(number)) return { code: 'thousands-mark', expected: `${inWords} without a mark for thousands` };
  if (/\d/.test(number) && INCHES.test(number)) return { code: 'inches', expected: 'mm: 1 inch is 25.4 mm' };
  return { code: 'not-a-number', expected: `${inWords} like ${example}` };
}
