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
  it('crosses the ring at four places and leaves the number clear', () => {
    const ends = [...(itemRing('stop', 11).crossPath ?? '').matchAll(/M(\S+) (\S+)L(\S+) ([^M]+)/g)].map((m) =>
      m.slice(1).map(Number),
    );
    expect(ends).toHaveLength(4);
    for (const [x0 = 0, y0 = 0, x1 = 0, y1 = 0] of ends) {
      expect(Math.hypot(x0, y0)).toBeGreaterThan(itemRing('stop', 11).radiusPx);
      expect(Math.hypot(x1, y1)).toBeGreaterThan(6);
      expect(Math.hypot(x1, y1)).toBeLessThan(itemRing('stop', 11).radiusPx);
    }
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
