import { describe, expect, it } from 'vitest';
import { aReading, aSeries } from '#tests/accuracy/aSeries.ts';
import { machineBlock } from './machineBlock.ts';
import { visitSlices } from './visitSlices.ts';

/** Two parts measured in one visit, so much worn. */
const together = (...wearMm: number[]) =>
  machineBlock(
    1,
    wearMm.map((wear, k) =>
      aSeries({
        pointId: k + 1,
        readings: [aReading({ workedHours: 2000, wearMm: wear, errorSdMm: 0.02, visit: 'v' })],
      }),
    ),
    { sharedErrors: true, fewParts: false },
  );

const bell = (x: number, mean: number, sd: number) => Math.exp(-0.5 * ((x - mean) / sd) ** 2) / sd;

describe("slices of a visit's error", () => {
  it('are asked for only where the error is wide beside the wear', () => {
    expect(visitSlices(together(1.5, 0.9), 0.1, 'few')).toBeNull();
    expect(visitSlices(together(1.5, 0.3), 0.1, 'few')).not.toBeNull();
    expect(visitSlices(together(1.5, 0.3), 0.1, 'many')).toBeNull();
    expect(visitSlices(together(1.5, 0.9), 0.1, 'fewest')).not.toBeNull();
    expect(visitSlices(together(1.5, 1.1), 0.1, 'fewest')).toBeNull();
    expect(visitSlices(together(0.3), 0.1, 'few')).toBeNull();
  });

  for (const error of [0.06, 0.08, 0.12, 0.3])
    it(`make up an error of ${error} mm between them, each narrow`, () => {
      const slices = visitSlices(together(1.5, 0.3), error, 'few')!.flat();
      const sum = (value: (slice: (typeof slices)[number]) => number) =>
        slices.reduce((total, slice) => total + Math.exp(slice.lnShare) * value(slice), 0);
      expect(sum(() => 1)).toBeCloseTo(1, 12);
      expect(sum(({ mean }) => mean)).toBeCloseTo(0, 12);
      expect(sum(({ mean, sd }) => mean ** 2 + sd ** 2)).toBeCloseTo(error ** 2, 12);
      for (let x = -2.5; x <= 2.5; x += 0.25) {
        const density = sum(({ mean, sd }) => bell(x * error, mean, sd));
        expect(Math.abs(density / bell(x * error, 0, error) - 1)).toBeLessThan(0.03);
      }
      expect(slices.length).toBeLessThan(18);
      // a tenth or so of the least wear, or a good quarter of the error itself
      for (const { sd } of slices) expect(sd).toBeLessThan(1.15 * Math.max(0.08 * 0.3, 0.28 * error));
    });
});
