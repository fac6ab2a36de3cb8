import { describe, expect, it } from 'vitest';
import { sizeEcho } from '#core/words/quantityText.ts';
import { settled, typedSize } from './typedSize.ts';

describe('a size as typed', () => {
  it('is taken with comma or point, with or without its unit', () => {
    expect(typedSize('9,94', '.')).toEqual({ state: 'size', sizeMm: 9.94 });
    expect(typedSize('9.94 mm', '.')).toEqual({ state: 'size', sizeMm: 9.94 });
    expect(typedSize('', '.')).toEqual({ state: 'empty' });
  });
  it('that is none says why', () => {
    expect(typedSize('9.9.4', '.')).toEqual({ state: 'not-a-size', why: 'two-decimal-marks' });
    expect(typedSize('1/2', '.')).toEqual({ state: 'not-a-size', why: 'not-a-number' });
    expect(typedSize('-3', '.')).toEqual({ state: 'not-a-size', why: 'below-nought' });
    expect(typedSize('30000', '.')).toEqual({ state: 'not-a-size', why: 'too-large' });
  });
});

describe('the echo of a size', () => {
  it('has the decimals of its gauge, in the shop’s own writing', () => {
    expect(sizeEcho(10.6, 2, '.')).toBe('10.60');
    expect(sizeEcho(10.6, 2, ',')).toBe('10,60');
    expect(settled(' 10,6 ', 2, '.')).toBe('10.60');
  });
  it('never rounds what was typed away', () => {
    expect(sizeEcho(10.194, 2, '.')).toBe('10.194');
    expect(sizeEcho(10.19, 1, ',')).toBe('10,19');
  });
  it('leaves alone what is no size', () => {
    expect(settled(' ten ', 2, '.')).toBe('ten');
    expect(settled('  ', 2, '.')).toBe('');
  });
});
