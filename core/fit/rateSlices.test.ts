import { describe, expect, it } from 'vitest';
import { aReading, aSeries } from '#tests/accuracy/aSeries.ts';
import { clearBlock, machineBlock, partLaws, setBlockTimes, sweepBlock } from './machineBlock.ts';
import { defaultModelSettings } from './modelSettings.ts';
import { rateSlices } from './rateSlices.ts';

const PRIOR = { mean: 0.6, sd: 0.5 };

/** Parts of one machine, each read once to so much, swept. */
function swept(partScatter: number, errorSdMm: number, ...wearMm: number[]) {
  const block = machineBlock(
    1,
    wearMm.map((wear, k) =>
      aSeries({ pointId: k + 1, readings: [aReading({ workedHours: 2000, wearMm: wear, errorSdMm, visit: `${k}` })] }),
    ),
    { sharedErrors: true, fewParts: true },
  );
  const figures = { partScatter, pathScatter: 0.02, power: 1, machineScatter: 0.3, visitErrorMm: 0 };
  setBlockTimes(block, 5500, figures);
  clearBlock(block);
  sweepBlock(block, PRIOR.mean, PRIOR.sd ** 2, figures, partLaws(partScatter, defaultModelSettings));
  return block;
}

const bell = (x: number, mean: number, sd: number) => Math.exp(-0.5 * ((x - mean) / sd) ** 2) / sd;

describe("slices of a machine's ln rate", () => {
  it('are asked for only where parts hardly differ and were not read sharply, two of them or more', () => {
    expect(rateSlices(swept(0.02, 0.1, 0.5, 0.6), 0.02)).not.toBeNull();
    expect(rateSlices(swept(0.4, 0.1, 0.5, 0.6), 0.4)).toBeNull();
    expect(rateSlices(swept(0.02, 0.01, 0.5, 0.6), 0.02)).toBeNull();
    expect(rateSlices(swept(0.02, 0.1, 0.5), 0.02)).toBeNull();
  });

  for (const wears of [
    [0.5, 0.6],
    [1.1, 1.3, 1.2],
    [0.02, 0.03],
  ])
    it(`make up what is held without parts between them, wherever it is likely with parts worn ${wears.join(', ')} mm`, () => {
      const block = swept(0.02, 0.25, ...wears);
      const slices = rateSlices(block, 0.02)!.flat();
      const density = (u: number) =>
        slices.reduce((sum, { mean, sd, lnShare }) => sum + Math.exp(lnShare) * bell(u, mean, sd), 0);
      const held = { mean: block.mean[0]!, sd: Math.sqrt(block.cov[0]!) };
      const scale = density(held.mean) / bell(held.mean, PRIOR.mean, PRIOR.sd);
      for (let z = -4; z <= 4; z += 0.25) {
        const u = held.mean + z * held.sd;
        expect(Math.abs(density(u) / bell(u, PRIOR.mean, PRIOR.sd) / scale - 1)).toBeLessThan(5e-3);
      }
      for (const { sd } of slices) expect(sd).toBeLessThanOrEqual(held.sd * (1 + 1e-12));
    });
});
