import { describe, expect, it } from 'vitest';
import { itemRing } from './itemRing.ts';
import { struckBoxPath } from './struckBox.ts';

describe('an item ring', () => {
  it('tells what a position asks for by its shape, without colour', () => {
    const shapes = (['now', 'with-it', 'leave', 'stop'] as const).map((state) => itemRing(state, 4));
    expect(shapes.map((s) => [s.filled, s.innerRadiusPx !== null, s.crossPath !== null])).toEqual([
      [true, false, false],
      [false, true, false],
      [false, false, false],
      [false, false, true],
    ]);
  });
  it('keeps the cross inside its circle', () => {
    const reach = Number(itemRing('stop', 11).crossPath?.match(/L([\d.]+) /)?.[1]);
    expect(Math.hypot(reach, reach)).toBeCloseTo(itemRing('stop', 11).radiusPx, 1);
  });
  it('sets longer numbers smaller', () => {
    expect([4, 11, 120].map((item) => itemRing('leave', item).figurePx)).toEqual([14, 13, 10]);
  });
});

describe('a struck box', () => {
  it('has an outline and both diagonals', () => {
    expect(struckBoxPath(1, 1, 28, 18)).toBe('M1 1h28v18h-28zl28 18m0 -18l-28 18');
  });
});
