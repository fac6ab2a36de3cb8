import { describe, expect, it } from 'vitest';
import { aReading, aSeries } from '#tests/accuracy/aSeries.ts';
import { sweepInSlices } from './alongSlices.ts';
import { clearBlock, machineBlock, partLaws, setBlockTimes, sweepBlock } from './machineBlock.ts';
import { defaultModelSettings } from './modelSettings.ts';

const RATE = { mean: 0.6, sd: 0.4 };
const VISIT_ERROR_MM = 0.16;
const READ = { workedHours: 2500, errorSdMm: 0.05 };
const NEW_SIZE_SD_MM = 0.03;
const H_REF_HOURS = 5500;
const FIGURES = { partScatter: 0.15, pathScatter: 0.05, power: 1, machineScatter: 0.3, visitErrorMm: VISIT_ERROR_MM };
const laws = partLaws(FIGURES.partScatter, defaultModelSettings);

/** Parts of one machine, all read in one visit. */
function machineOf(wears: readonly number[]) {
  const block = machineBlock(
    1,
    wears.map((wearMm, k) =>
      aSeries({ pointId: k + 1, newSizeSdMm: NEW_SIZE_SD_MM, readings: [aReading({ ...READ, wearMm, visit: 'v' })] }),
    ),
    { sharedErrors: true, fewParts: true },
  );
  setBlockTimes(block, H_REF_HOURS, FIGURES);
  clearBlock(block);
  return block;
}

const bell = (x: number, mean: number, sd: number) =>
  Math.exp(-0.5 * ((x - mean) / sd) ** 2) / sd / Math.sqrt(2 * Math.PI);
const steps = (count: number, reach: number) =>
  Array.from({ length: 2 * count + 1 }, (_, k) => ((k - count) * reach) / count);

/** ln Z and what is held of u, by plain sums over u, the error and each part's ln rate. */
function summed(wears: readonly number[]) {
  const t = READ.workedHours / H_REF_HOURS;
  const rates = steps(100, 3).map((off) => RATE.mean + off);
  const errors = steps(40, 5 * VISIT_ERROR_MM);
  const ofPart = rates.map((u) =>
    rates.map((beta) => laws.share.reduce((sum, share, r) => sum + share * bell(beta, u, laws.sd[r]!), 0) * 0.03),
  );
  const held = [0, 0, 0];
  for (const error of errors) {
    const read = wears.map((wear) =>
      rates.map((beta) => {
        const rate = Math.exp(beta);
        return bell(
          wear,
          rate * t + error,
          Math.hypot(READ.errorSdMm, NEW_SIZE_SD_MM, rate * FIGURES.pathScatter * Math.sqrt(t)),
        );
      }),
    );
    for (const [i, u] of rates.entries()) {
      let chance = bell(error, 0, VISIT_ERROR_MM) * (errors[1]! - errors[0]!) * bell(u, RATE.mean, RATE.sd) * 0.03;
      for (const one of read) chance *= ofPart[i]!.reduce((sum, share, k) => sum + share * one[k]!, 0);
      for (const power of [0, 1, 2]) held[power]! += chance * u ** power;
    }
  }
  const mean = held[1]! / held[0]!;
  return { lnZ: Math.log(held[0]!), mean, variance: held[2]! / held[0]! - mean ** 2 };
}

describe('a sweep in slices', () => {
  for (const wears of [
    [0.42, 0.39, 0.31],
    [1.2, 1.17, 1.16],
  ])
    it(`finds the chance of the readings and the rate of a machine whose parts wore ${wears.join(', ')} mm, give or take ${VISIT_ERROR_MM} in that visit`, () => {
      const exact = summed(wears);
      const block = machineOf(wears);
      const priorVar = RATE.sd ** 2;
      for (let round = 0; round < 2; round++) sweepBlock(block, RATE.mean, priorVar, FIGURES, laws);
      const lnZ = sweepInSlices(block, RATE.mean, priorVar, FIGURES, laws);
      const variance = 1 / (block.lambda + 1 / priorVar);
      const mean = variance * (block.eta + RATE.mean / priorVar);
      // as a normal of rate and error: 0.023 and 0.007; 0.0025 and 0.0008; 7.6 and 2.6 %
      expect(Math.abs(lnZ - exact.lnZ)).toBeLessThan(0.002);
      expect(Math.abs(mean - exact.mean)).toBeLessThan(5e-4);
      expect(Math.abs(variance / exact.variance - 1)).toBeLessThan(0.01);
    });
});
