import { describe, expect, it } from 'vitest';
import { barBasis, intervalBar, pastStub, thinInterval } from './intervalBar.ts';
import { hoursScale } from './scale.ts';

const scale = hoursScale({ fromHours: 0, toHours: 1000, fromPx: 0, toPx: 1000 });
const bar = (low: number | null, middle: number | null, high: number | null, more = {}) =>
  intervalBar({ low, middle, high, nowHours: 100, decides: 'middle', ownReadings: 3, ...more }, scale);

describe('the bar of a forecast', () => {
  it('runs from low to high with the middle as a tick and the triangle over the figure that decides', () => {
    const shape = bar(200, 300, 500);
    expect(shape.ahead).toMatchObject({ x0: 200, x1: 500, left: 'square', right: 'square' });
    expect(shape.past).toBeNull();
    expect(shape.middleX).toBe(300);
    expect(shape.decides?.x).toBe(300);
    expect(bar(200, 300, 500, { decides: 'low' }).decides?.x).toBe(200);
    expect(shape.ahead?.path).toBe('M200 -5.5H500V5.5H200Z');
  });

  it('is solid from three own readings, hatched from one, open from none', () => {
    expect([0, 1, 2, 3, 9].map(barBasis)).toEqual(['borrowed', 'part', 'part', 'own', 'own']);
  });

  it('is parted at now where the limit may have been passed', () => {
    const shape = bar(40, 160, 300);
    expect(shape.past).toMatchObject({ x0: 40, x1: 100 });
    expect(shape.ahead).toMatchObject({ x0: 100, x1: 300 });
  });

  it('lies wholly left of now once even the high figure is passed', () => {
    const shape = bar(20, 50, 90);
    expect(shape.ahead).toBeNull();
    expect(shape.past).toMatchObject({ x0: 20, x1: 90 });
  });

  it('ends in a break where it goes on off the scale', () => {
    const right = bar(400, 900, 1500);
    expect(right.ahead).toMatchObject({ x1: 1000, left: 'square', right: 'break' });
    expect(right.ahead?.path).toMatch(/L1004 /);
    const left = intervalBar(
      { low: -300, middle: 50, high: 200, nowHours: 100, decides: 'low', ownReadings: 0 },
      scale,
    );
    expect(left.past).toMatchObject({ x0: 0, left: 'break' });
    expect(left.decides).toBeNull();
  });

  it('beyond what can be said runs off the scale, with no tick made up for it', () => {
    const shape = bar(400, null, null);
    expect(shape.ahead).toMatchObject({ x0: 400, x1: 1000, right: 'break' });
    expect(shape.middleX).toBeNull();
    expect(shape.decides).toBeNull();
  });

  it('wholly off the scale is an arrow at that end', () => {
    expect(bar(1200, 1500, 2000)).toMatchObject({ wholly: 'off-right', ahead: null, past: null, arrow: { x: 1000 } });
    expect(bar(null, null, null)).toMatchObject({ wholly: 'off-right' });
    expect(bar(-500, -400, -300)).toMatchObject({ wholly: 'off-left', arrow: { x: 0 } });
  });

  it('still shows when low and high are one', () => {
    const shape = bar(300, 300, 300);
    expect((shape.ahead?.x1 ?? 0) - (shape.ahead?.x0 ?? 0)).toBe(3);
  });
});

describe('a thin line of a further position', () => {
  it('runs low to high and stops at the ends of the scale', () => {
    expect(thinInterval({ low: 200, middle: 400, high: 600 }, scale)).toEqual({
      x0: 200,
      x1: 600,
      middleX: 400,
      offLeft: false,
      offRight: false,
    });
    expect(thinInterval({ low: 200, middle: 1400, high: null }, scale)).toMatchObject({
      x1: 1000,
      middleX: null,
      offRight: true,
    });
    expect(thinInterval({ low: 1200, middle: 1400, high: 1500 }, scale)).toBeNull();
  });
});

describe('a part past at its own last size', () => {
  it('is a stub that ends at that reading', () => {
    expect(pastStub(500, scale)).toMatchObject({ x0: 493, x1: 500 });
    expect(pastStub(1500, scale)).toBeNull();
  });
});
