import fc from 'fast-check';
import { describe, expect, test } from 'vitest';
import {
  gaugeErrorFigure,
  lengthFigure,
  lengthText,
  limitFigure,
  rateFigure,
  sizeEcho,
  sizeFigure,
} from '#core/words/quantityText.ts';
import { readLength } from './readNumber.ts';

/**
 * Lengths of a shop that measures in inches: shown and typed in inches, kept in mm.
 * @source 1 inch is 25.4 mm exactly: NIST Special Publication 811 (2008), appendix B.8; the worked figures are products of it
 */
const INCH = 'in.';
const mmOf = (typed: string, writing: Parameters<typeof readLength>[1] = INCH) => {
  const read = readLength(typed, writing);
  return read.ok ? read.value : read.why;
};

describe('a length in inches', () => {
  test('is shown with its unit, and with decimals enough for its gauge', () => {
    expect(lengthText(25.4, 2, INCH)).toBe('1.0000\u00A0in');
    expect(lengthText(10.19, 2, '.')).toBe('10.19\u00A0mm');
    expect(sizeFigure(10.19, 0.01, INCH)).toBe('0.4012');
    expect(sizeFigure(12, 1, 'in,')).toBe('0,47');
    expect(limitFigure(12.7, INCH)).toBe('0.50');
    expect(limitFigure(11.1125, INCH)).toBe('0.4375');
    expect(limitFigure(12, INCH)).toBe('0.4724');
    expect(gaugeErrorFigure(0.0508, INCH)).toBe('±0.0040');
    expect(rateFigure(0.000508, INCH)).toBe('0.0200');
  });

  test('is typed as a decimal, or as a whole and a fraction of an inch', () => {
    expect(mmOf('0.4')).toBe(10.16);
    expect(mmOf('0,4 in')).toBe(10.16);
    expect(mmOf('1 3/8')).toBe(34.925);
    expect(mmOf('1-3/8"')).toBe(34.925);
    expect(mmOf('13/32')).toBe(10.3188);
    expect(mmOf('1/3')).toBe('not-a-number');
    expect(mmOf('3/')).toBe('not-a-number');
    expect(mmOf('')).toBe('empty');
  });

  test('a unit typed after the figure goes before the shop’s own', () => {
    expect(mmOf('10.2 mm')).toBe(10.2);
    expect(mmOf('0.4 in', '.')).toBe(10.16);
    expect(mmOf('3/8"', ',')).toBe(9.525);
    expect(mmOf('0.4', '.')).toBe(0.4);
  });

  test('typed and left stands in its box as it was typed, to four decimals', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 400_000 }), (tenths) => {
        const typed = (tenths / 10_000).toFixed(4);
        expect(sizeEcho(mmOf(typed) as number, 2, INCH)).toBe(typed);
      }),
    );
  });

  test('a size in mm shown in inches reads back as that size within half of what its gauge tells apart', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), fc.constantFrom(0, 1, 2, 3), (steps, places) => {
        const sizeMm = steps / 10 ** places;
        for (const writing of ['in.', 'in,'] as const) {
          const shown = lengthFigure(sizeMm, places, writing).replace(/\u2009/g, '');
          expect(Math.abs((mmOf(shown, writing) as number) - sizeMm)).toBeLessThan(0.5 / 10 ** places);
        }
      }),
    );
  });

  test('in a shop that measures in mm nothing is other than it was', () => {
    fc.assert(
      fc.property(fc.integer({ min: 0, max: 1_000_000 }), (steps) => {
        const typed = (steps / 100).toFixed(2);
        expect(mmOf(typed, '.')).toBe(steps / 100);
        expect(sizeEcho(steps / 100, 2, '.').replace(/\u2009/g, '')).toBe(typed);
      }),
    );
  });
});
