/** What a person typed into a number box, as understood. The echo beside the box shows it in the shop's own writing. */
export type NumberRead =
  | { ok: true; value: number }
  | { ok: false; why: 'empty' | 'not-a-number' | 'two-decimal-marks' | 'thousands-mark' };

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
  return { ok: true, value: Number(pointed) };
}
