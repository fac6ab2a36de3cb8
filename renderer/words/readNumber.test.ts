import { describe, expect, it } from 'vitest';
import { readNumber } from './readNumber.ts';

describe('a typed figure', () => {
  it('takes comma and point alike, and a unit after it', () => {
    expect(readNumber('10,19', 'mm')).toEqual({ ok: true, value: 10.19 });
    expect(readNumber(' 10.19 mm', 'mm')).toEqual({ ok: true, value: 10.19 });
    expect(readNumber('.5', 'mm')).toEqual({ ok: true, value: 0.5 });
    expect(readNumber('6 838 h', 'h')).toEqual({ ok: true, value: 6838 });
    expect(readNumber('6\u2009838', 'h')).toEqual({ ok: true, value: 6838 });
    expect(readNumber('-0,02', 'mm')).toEqual({ ok: true, value: -0.02 });
  });
  it('is not guessed at when it can be read two ways', () => {
    expect(readNumber('1.234,5', 'mm')).toEqual({ ok: false, why: 'two-decimal-marks' });
    expect(readNumber('4.120', 'h')).toEqual({ ok: false, why: 'thousands-mark' });
    expect(readNumber('-5', 'h')).toEqual({ ok: false, why: 'not-a-number' });
    expect(readNumber('4120.5', 'h')).toEqual({ ok: true, value: 4120.5 });
    expect(readNumber('10.194', 'mm')).toEqual({ ok: true, value: 10.194 });
  });
  it('that is none is said to be none', () => {
    expect(readNumber('ten', 'mm')).toEqual({ ok: false, why: 'not-a-number' });
    expect(readNumber('3 in', 'mm')).toEqual({ ok: false, why: 'not-a-number' });
    expect(readNumber('1e3', 'h')).toEqual({ ok: false, why: 'not-a-number' });
    expect(readNumber('  ', 'mm')).toEqual({ ok: false, why: 'empty' });
  });
});
