import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { flagLeft, hoursRule } from './hoursRule.ts';
import { hoursScale, hoursToPx, pxToHours } from './scale.ts';
import { hoursFigureWidth } from './textWidth.ts';

const needs = { figurePx: 15, flag: null, pastBefore: null };
const scale = (fromHours: number, toHours: number, toPx = 750) => hoursScale({ fromHours, toHours, fromPx: 0, toPx });

describe('the hours rule', () => {
  it('has ticks every 100 h, longer ones at 500 and 1 000, over some thousands of hours', () => {
    const rule = hoursRule(scale(1500, 10600), needs);
    expect(rule.unitHours).toBe(100);
    expect(rule.ticks[0]).toMatchObject({ hours: 1500, x: 0, rank: 'mid', lengthPx: 8 });
    expect(rule.ticks.find((tick) => tick.hours === 1600)).toMatchObject({ rank: 'minor', lengthPx: 4 });
    expect(rule.ticks.find((tick) => tick.hours === 2000)).toMatchObject({ rank: 'major', lengthPx: 11 });
    expect(rule.ticks).toHaveLength(92);
    expect(rule.figures.map((figure) => figure.hours)).toEqual([2000, 3000, 4000, 5000, 6000, 7000, 8000, 9000, 10000]);
  });

  it('is finer for a baler of 60 h a year and coarser for a machine of 60 000 h', () => {
    expect(hoursRule(scale(300, 700), needs).unitHours).toBe(10);
    expect(hoursRule(scale(0, 60_000), needs).unitHours).toBe(1000);
    expect(hoursRule(scale(0, 12), needs).unitHours).toBe(1);
  });

  it('leaves out the figure under the flag of present hours, and only that', () => {
    const rule = hoursRule(scale(1500, 10600), { ...needs, flag: { hours: 6840, widthPx: 62 } });
    expect(rule.figures.map((figure) => figure.hours)).toEqual([2000, 3000, 4000, 5000, 6000, 8000, 9000, 10000]);
  });

  it('marks hours before now as past on a scale of hours left', () => {
    const rule = hoursRule(scale(-600, 4000, 510), { ...needs, pastBefore: 0 });
    expect(rule.figures.filter((figure) => figure.past).map((figure) => figure.hours)).toEqual([-500]);
    expect(rule.ticks.find((tick) => tick.hours === 0)?.past).toBe(false);
  });

  it('never lets two figures or two ticks run together, whatever the range and width', () => {
    const ranges = fc.record({
      from: fc.integer({ min: -2000, max: 60_000 }),
      span: fc.integer({ min: 12, max: 70_000 }),
      width: fc.integer({ min: 200, max: 1600 }),
    });
    fc.assert(
      fc.property(ranges, ({ from, span, width }) => {
        const rule = hoursRule(scale(from, from + span, width), needs);
        for (const [i, figure] of rule.figures.entries()) {
          const next = rule.figures[i + 1];
          if (!next) break;
          const halves = (hoursFigureWidth(figure.hours, 15) + hoursFigureWidth(next.hours, 15)) / 2;
          expect(next.x - figure.x).toBeGreaterThan(halves + 10);
        }
        for (const [i, tick] of rule.ticks.entries()) {
          expect((rule.ticks[i + 1]?.x ?? Number.POSITIVE_INFINITY) - tick.x).toBeGreaterThan(3.5);
        }
        expect(rule.ticks.length).toBeGreaterThan(0);
      }),
    );
  });

  it('keeps the flag inside its margins at either end', () => {
    const s = scale(0, 1000);
    expect(flagLeft(s, 500, 60)).toBe(345);
    expect(flagLeft(s, 0, 60)).toBe(-26);
    expect(flagLeft(s, 1000, 60)).toBe(716);
  });
});

describe('a scale', () => {
  it('turns hours into pixels and back', () => {
    const s = hoursScale({ fromHours: 1500, toHours: 10600, fromPx: 260, toPx: 1010 });
    expect(hoursToPx(s, 1500)).toBe(260);
    expect(hoursToPx(s, 10600)).toBeCloseTo(1010, 9);
    expect(pxToHours(s, hoursToPx(s, 6840))).toBeCloseTo(6840, 9);
  });
  it('that spans nothing is no scale', () => {
    expect(() => scale(500, 500)).toThrow('spans some hours');
    expect(() => hoursScale({ fromHours: 0, toHours: 1, fromPx: 10, toPx: 10 })).toThrow('left to right');
  });
});
