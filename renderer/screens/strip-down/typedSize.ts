import { type DecimalMark, decimalFigure } from '#core/words/quantityText.ts';
import { readNumber } from '../../words/readNumber.ts';

/** No part is thicker than ten metres: the same bound as the contract's. */
const LARGEST_MM = 10_000;

export type TypedSize =
  | { state: 'empty' }
  | { state: 'size'; sizeMm: number }
  /** stays in its box as typed, and out of the strip-down until it reads as a size */
  | { state: 'not-a-size'; why: 'not-a-number' | 'two-decimal-marks' | 'below-nought' | 'too-large' };

/** A size box's text as understood. */
export function typedSize(text: string): TypedSize {
  const read = readNumber(text, 'mm');
  if (!read.ok) {
    if (read.why === 'empty') return { state: 'empty' };
    return { state: 'not-a-size', why: read.why === 'two-decimal-marks' ? read.why : 'not-a-number' };
  }
  if (read.value < 0) return { state: 'not-a-size', why: 'below-nought' };
  if (read.value > LARGEST_MM) return { state: 'not-a-size', why: 'too-large' };
  return { state: 'size', sizeMm: read.value };
}

/**
 * How a size is echoed once its box is left: in the shop's own writing, with the gauge's decimals, or as many more as
 * were typed (up to three), so that the echo never rounds what goes into the record.
 */
export function sizeEcho(sizeMm: number, decimals: number, mark: DecimalMark): string {
  const places = [decimals, decimals + 1, 3].find(
    (n) => Math.abs(sizeMm * 10 ** n - Math.round(sizeMm * 10 ** n)) < 1e-6,
  );
  return decimalFigure(sizeMm, Math.max(decimals, Math.min(3, places ?? 3)), mark);
}

/** The text of a box once it is left: echoed when it reads as a size, else as it was typed. */
export function settled(text: string, decimals: number, mark: DecimalMark): string {
  const typed = typedSize(text);
  if (typed.state === 'empty') return '';
  return typed.state === 'size' ? sizeEcho(typed.sizeMm, decimals, mark) : text.trim();
}
