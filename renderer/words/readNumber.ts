import { MM_PER_INCH } from '#core/units/length.ts';
import { inInches, type Writing } from '#core/words/quantityText.ts';

/** What a person typed into a number box, as understood. The echo beside the box shows it in the shop's own writing. */
export type NumberRead =
  | { ok: true; value: number }
  | { ok: false; why: 'empty' | 'not-a-number' | 'two-decimal-marks' | 'thousands-mark' };

/** Parts of an inch, as stock and rules have them: halves down to sixty-fourths (common practice, no source). */
const FRACTION = /^(?:(\d+)(?:\s+|-))?(\d+)\s*\/\s*(2|4|8|16|32|64)$/;
const INCHES = /\s*(?:in|inch|inches|″|")$/;
/** Inches typed become millimetres to a tenth of a micrometre: finer than any gauge, and free of the computer's own rounding. */
const KEPT_PER_MM = 1e4;

const GAPS = /[\s\u00A0\u2009\u202F']/g;
const PLAIN = /^[+-]?(\d+(\.\d*)?|\.\d+)$/;

/**
 * Reads a size or an hour figure as typed. Decimal comma and point are both taken; a gap between thousands is let go.
 * "1.234,5" is refused rather than guessed at. `unit` is dropped when typed after the figure.
 *
 * @param typed text of the box
 * @param unit unit of the box, "mm" or "h"
 * @refuses thousands-mark for an hour figure such as "4.120": a thousands mark or three decimals, nobody can tell
 */
export function readNumber(typed: string, unit: 'mm' | 'h'): NumberRead {
  const bare = typed
    .trim()
    .toLowerCase()
    .replace(new RegExp(`${unit}$`), '')
    .replace(GAPS, '')
    .replace('\u2212', '-');
  if (bare === '') return { ok: false, why: 'empty' };
  const marks = bare.match(/[.,]/g) ?? [];
  if (marks.length > 1) return { ok: false, why: 'two-decimal-marks' };
  const pointed = bare.replace(',', '.');
  if (!PLAIN.test(pointed)) return { ok: false, why: 'not-a-number' };
  if (unit === 'h' && /^[+-]?[1-9]\d{0,2}\.\d{3}$/.test(pointed)) return { ok: false, why: 'thousands-mark' };
  // hours are counted from nought on
  if (unit === 'h' && Number(pointed) < 0) return { ok: false, why: 'not-a-number' };
  return { ok: true, value: Number(pointed) };
}

/**
 * Reads a length in the shop's own unit, as mm. A unit typed after the figure goes before the shop's: 10.2 mm, 0.4 in, 3/8".
 * Inches may be a whole and a fraction: 1 3/8, 13/16, 2-1/4.
 */
export function readLength(typed: string, writing: Writing): NumberRead {
  const text = typed.trim().toLowerCase();
  const inches = INCHES.test(text) || (inInches(writing) && !text.endsWith('mm'));
  if (!inches) return readNumber(typed, 'mm');
  const bare = text.replace(INCHES, '');
  const fraction = FRACTION.exec(bare);
  const read: NumberRead = fraction
    ? { ok: true, value: Number(fraction[1] ?? 0) + Number(fraction[2]) / Number(fraction[3]) }
    : readNumber(bare, 'mm');
  return read.ok ? { ok: true, value: Math.round(read.value * MM_PER_INCH * KEPT_PER_MM) / KEPT_PER_MM } : read;
}
