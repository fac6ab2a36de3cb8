import { sizeEcho, type Writing } from '#core/words/quantityText.ts';
import { readLength } from '../../words/readNumber.ts';

/** No part is thicker than ten metres: the same bound as the contract's. */
const LARGEST_MM = 10_000;

export type TypedSize =
  | { state: 'empty' }
  | { state: 'size'; sizeMm: number }
  /** stays in its box as typed, and out of the strip-down until it reads as a size */
  | { state: 'not-a-size'; why: 'not-a-number' | 'two-decimal-marks' | 'below-nought' | 'too-large' };

/** A size box's text as understood. */
export function typedSize(text: string, writing: Writing): TypedSize {
  const read = readLength(text, writing);
  if (!read.ok) {
    if (read.why === 'empty') return { state: 'empty' };
    return { state: 'not-a-size', why: read.why === 'two-decimal-marks' ? read.why : 'not-a-number' };
  }
  if (read.value < 0) return { state: 'not-a-size', why: 'below-nought' };
  if (read.value > LARGEST_MM) return { state: 'not-a-size', why: 'too-large' };
  return { state: 'size', sizeMm: read.value };
}

/** The text of a box once it is left: echoed when it reads as a size, else as it was typed. */
export function settled(text: string, decimals: number, writing: Writing): string {
  const typed = typedSize(text, writing);
  if (typed.state === 'empty') return '';
  return typed.state === 'size' ? sizeEcho(typed.sizeMm, decimals, writing) : text.trim();
}
