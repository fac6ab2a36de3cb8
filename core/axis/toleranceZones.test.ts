import { describe, expect, it } from 'vitest';
import { toleranceZones } from './toleranceZones.ts';

const frame = { fromPx: 60, toPx: 560, topPx: 20, bottomPx: 220 };
const zones = (hole: [number, number], shaft: [number, number]) =>
  toleranceZones({
    hole: { upperDeviationUm: hole[0], lowerDeviationUm: hole[1] },
    shaft: { upperDeviationUm: shaft[0], lowerDeviationUm: shaft[1] },
    ...frame,
  });

describe('tolerance zones of a hole and a shaft', () => {
  it('both are drawn to one scale about the nominal size: 50 H7/g6', () => {
    const { hole, shaft, nominalY, pxPerUm } = zones([25, 0], [-9, -25]);
    // 50 micrometres on 200 px
    expect(pxPerUm).toBe(4);
    expect([hole.upperY, hole.lowerY, nominalY]).toEqual([20, 120, 120]);
    expect([shaft.upperY, shaft.lowerY]).toEqual([156, 220]);
    expect(hole.x1).toBeLessThan(shaft.x0);
  });

  it('the nominal size is in the picture when both zones lie on one side of it: 50 H7/s6 and 50 S7/h6', () => {
    expect(zones([25, 0], [59, 43]).nominalY).toBe(220);
    expect(zones([-34, -59], [0, -16]).nominalY).toBe(20);
    expect(zones([119, 80], [0, -39]).nominalY).toBeLessThan(220);
  });

  it('least runs from the smallest hole to the largest shaft, most from the largest hole to the smallest shaft', () => {
    const { least, most, hole, shaft } = zones([25, 0], [-9, -25]);
    expect([least.holeY, least.shaftY]).toEqual([hole.lowerY, shaft.upperY]);
    expect([most.holeY, most.shaftY]).toEqual([hole.upperY, shaft.lowerY]);
    expect(least.x).toBeGreaterThan(hole.x1);
    expect(most.x).toBeLessThan(shaft.x0);
  });

  it('ticks are round, inside the picture and never touch', () => {
    for (const shaft of [
      [-9, -25],
      [59, 43],
      [-1900, -2870],
      [2, -2],
    ] as const) {
      const { ticks } = zones([25, 0], [...shaft]);
      expect(ticks.length).toBeGreaterThan(1);
      expect(ticks.length).toBeLessThan(10);
      for (const { y } of ticks) expect(y >= frame.topPx - 1e-9 && y <= frame.bottomPx + 1e-9).toBe(true);
      const gaps = ticks.slice(1).map(({ y }, at) => (ticks[at]?.y ?? 0) - y);
      for (const gap of gaps) expect(gap).toBeGreaterThanOrEqual(26 - 1e-9);
      expect(ticks.map(({ um }) => um)).toContain(0);
    }
  });

  it('arrows of a narrow dimension point in from outside', () => {
    const lengthPx = (arrows: string) => {
      const [from = 0, to = 0] = (/ ([\d.]+)V([\d.]+)/.exec(arrows) ?? []).slice(1).map(Number);
      return to - from;
    };
    // no clearance at least: only the two tails, 18 px each
    expect(lengthPx(zones([25, 0], [0, -16]).least.arrows)).toBe(36);
    expect(lengthPx(zones([25, 0], [-9, -25]).most.arrows)).toBe(200);
  });
});
