import { describe, expect, it } from 'vitest';
import { partChances } from './partChances.ts';
import { thinCloud, type WeighedFigures } from './thinCloud.ts';

/** A lopsided cloud on a grid: both scatters bunched by 0, reaching far. Invented. */
const cloud: WeighedFigures[] = Array.from({ length: 15 }, (_, i) =>
  Array.from({ length: 15 }, (_, j) =>
    Array.from({ length: 5 }, (_, k) => ({
      figures: {
        partScatter: 0.01 * 1.4 ** i,
        pathScatter: 0.005 * 1.35 ** j,
        power: Math.exp(0.1 * (k - 2)),
        machineScatter: 0,
        visitErrorMm: 0,
      },
      lnWeight: -0.1 * (i - 7) ** 2 - 0.08 * (j - 6) ** 2 + 0.03 * (i - 7) * (j - 6) - 0.5 * (k - 2) ** 2,
    })),
  ),
).flat(2);

const mean = (
  points: readonly { figures: WeighedFigures['figures']; weight: number }[],
  of: (figures: WeighedFigures['figures']) => number,
): number =>
  points.reduce((sum, { figures, weight }) => sum + weight * of(figures), 0) /
  points.reduce((sum, { weight }) => sum + weight, 0);

describe('a cloud thinned to few points', () => {
  for (const count of [24, 96, 192])
    it(`keeps ${count} points at most, and their sums of low degree to nine digits`, () => {
      const whole = cloud.map(({ figures, lnWeight }) => ({ figures, weight: Math.exp(lnWeight) }));
      const few = thinCloud(cloud, count, 0);
      expect(few.length).toBeLessThanOrEqual(count);
      for (const [a, b, c] of [
        [1, 0, 0],
        [0, 1, 0],
        [0, 0, 1],
        [2, 0, 0],
        [1, 1, 0],
        [0, 1, 1],
        [0, 0, 3],
      ]) {
        const sum = (f: WeighedFigures['figures']) =>
          f.partScatter ** a! * f.pathScatter ** b! * Math.log(f.power) ** c!;
        expect(mean(few, sum)).toBeCloseTo(mean(whole, sum), 9);
      }
    });

  it('keeps the chances of its parts where they were asked', () => {
    const asked = cloud.map((point, k) => ({
      ...point,
      bells: Float64Array.of(0.8 + 0.3 * Math.sin(k), 0.1 + point.figures.partScatter, 0.9, 0.2),
    }));
    const top = asked.reduce((sum, { lnWeight }) => sum + Math.exp(lnWeight), 0);
    const chances = partChances(
      asked,
      asked.map(({ lnWeight }) => Math.exp(lnWeight) / top),
      0.9,
      8,
    );
    expect(chances).toHaveLength(8);
    const few = thinCloud(asked, 48, 0.9);
    const at = new Map(few.map(({ figures, weight }) => [figures, weight]));
    for (const row of chances) {
      const of = (weight: (k: number) => number) => asked.reduce((sum, _, k) => sum + weight(k) * row[k]!, 0);
      expect(of((k) => at.get(asked[k]!.figures) ?? 0)).toBeCloseTo(
        of((k) => Math.exp(asked[k]!.lnWeight) / top),
        6,
      );
    }
  });
});
