import { describe, expect, test } from 'vitest';
import { findDecimalMark, readNumberCell } from './decimalMark.ts';

describe('the decimal mark of a file', () => {
  test.each([
    [['12.5', '3'], ',', '.', false],
    [['12,5', '3'], ';', ',', false],
    [['12,5', '3'], ',', ',', false], // in quotes, where commas part the cells
    [['12.5', '3'], ';', '.', false],
    [['1.234', '12,5'], ';', ',', false],
    [['1,234', '0,125'], ',', ',', false],
    [['0.125', '1.234'], ';', '.', false],
    [['49,985', '50,012'], ';', ',', false],
    [['49.985', '50.012'], ',', '.', false],
    [['1.234'], ';', ',', true],
    [['1,234'], ',', '.', true],
    [['12,5', '12.5', '3,1'], ',', ',', false],
    [['12,5', '12.5'], ';', ',', false],
    [[], ';', ',', false],
  ] as const)('of %j parted by "%s" is "%s", unclear: %s', (numbers, delimiter, mark, unclear) => {
    expect(findDecimalMark(numbers, delimiter)).toEqual({ mark, unclear });
  });
});

describe('a number cell', () => {
  const comma = { mark: ',', unclear: false } as const;
  const point = { mark: '.', unclear: false } as const;

  test.each([
    ['11,95', 'mm', comma, 11.95],
    ['11.95mm', 'mm', point, 11.95],
    ['11.95 MM', 'mm', point, 11.95],
    ['4120 h', 'h', point, 4120],
    ['-0,05', 'mm', comma, -0.05],
    ['.5', 'mm', point, 0.5],
    ['7', null, comma, 7],
  ] as const)('%s is read', (text, unit, mark, value) => {
    expect(readNumberCell(text, unit, mark)).toEqual({ value });
  });

  test.each([
    ['1.234', 'mm', comma, 'mixed-decimal-marks'],
    ['1,234', 'mm', point, 'mixed-decimal-marks'],
    ['1.234,5', 'h', comma, 'thousands-mark'],
    ['1,234.5', 'h', point, 'thousands-mark'],
    ['12 345', 'h', point, 'thousands-mark'],
    ['12\u00a0345', 'h', point, 'thousands-mark'],
    ["12'345", 'h', point, 'thousands-mark'],
    ['0.47 in', 'mm', point, 'inches'],
    ['0.47"', 'mm', point, 'inches'],
    ['1.234', 'h', { mark: ',', unclear: true }, 'decimal-mark-unclear'],
    ['about 12', 'mm', point, 'not-a-number'],
    ['1e3', 'mm', point, 'not-a-number'],
    ['12.', 'mm', point, 'not-a-number'],
    ['=1+1', 'mm', point, 'not-a-number'],
    ['12 mm', null, point, 'not-a-number'],
    ['NaN', 'mm', point, 'not-a-number'],
    ['Infinity', 'mm', point, 'not-a-number'],
  ] as const)('%s is refused, not guessed', (text, unit, mark, code) => {
    expect(readNumberCell(text, unit, mark)).toMatchObject({ code });
  });
});
