import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { machineBlock, nodesOfPart, setBlockTimes, sweepBlock } from '#core/fit/machineBlock.ts';
import { defaultModelSettings } from '#core/fit/modelSettings.ts';
import type { PartLaw } from '#core/fit/partLaw.ts';
import { makeTilt } from '#core/fit/partTilt.ts';
import { hoursAtLimit } from '#core/forecast/hoursAtLimit.ts';
import { chanceWornPast } from '#core/forecast/wearLaw.ts';
import { aReading, aSeries } from '#tests/accuracy/aSeries.ts';
import { addNode, emptyLaw, plainChance, plainHours, summingToOne } from '../plain-model/plainHours.ts';
import { kernel, type PlainPart } from '../plain-model/plainKernel.ts';

type Golden = {
  hours: number | number[];
  reading: number | number[];
  sd: number | number[];
  tau0: number;
  H_ref: number;
  mu: number;
  omega: number;
  c: number;
  g: number;
  limit: number;
  delta: number;
  kernel: { beta: number; loglik: number; filtered_mean: number; filtered_var: number }[];
  log_marginal: number;
  posterior_mean_beta: number;
  posterior_sd_beta: number;
  state_now: { mean: number; sd: number };
  prob_past_limit_now: number;
  hours_at_limit: { q10: number; q50: number; q90: number };
  cdf: { h: number; p_reached: number }[];
};

const { golden } = JSON.parse(readFileSync(new URL('expected.json', import.meta.url), 'utf8'));
const cases = Object.entries(golden).filter(([, value]) => typeof value === 'object') as [string, Golden][];
const list = (value: number | number[]): number[] => (Array.isArray(value) ? value : [value]);

const partOf = (one: Golden): PlainPart => ({
  tau0Mm: one.tau0,
  readings: list(one.hours).map((hours, i) => ({ hours, wearMm: list(one.reading)[i]!, sdMm: list(one.sd)[i]! })),
});

const close = (found: number, want: number, tolerance: number) =>
  expect(Math.abs(found - want)).toBeLessThan(tolerance);
const closeShare = (found: number, want: number, tolerance: number) =>
  expect(Math.abs(found / want - 1)).toBeLessThan(tolerance);

describe('one part at given class figures, against adaptive quadrature', () => {
  it('holds four golden parts', () => expect(cases.length).toBe(4));

  for (const [name, one] of cases) {
    it(`${name}: the plain sum over 20,001 rates gives the golden numbers`, () => {
      const part = partOf(one);
      for (const want of one.kernel) {
        const found = kernel(part, one.H_ref, want.beta, one.c, one.g);
        closeShare(found.lnChance, want.loglik, 1e-10);
        closeShare(found.meanMm, want.filtered_mean, 1e-10);
        closeShare(found.varMm2, want.filtered_var, 1e-10);
      }
      const count = 20_001;
      const betas = Array.from({ length: count }, (_, k) => one.mu + one.omega * (-10 + (20 * k) / (count - 1)));
      const sums = emptyLaw(one.H_ref);
      sums.powers.push({ g: one.g, time: kernel(part, one.H_ref, one.mu, one.c, one.g).time });
      for (const beta of betas) {
        const z = (beta - one.mu) / one.omega;
        const found = kernel(part, one.H_ref, beta, one.c, one.g);
        const weight = Math.exp(found.lnChance - 0.5 * z * z) / one.omega / Math.sqrt(2 * Math.PI);
        addNode(sums, weight, beta, one.c, 0, found);
      }
      const total = sums.weight.reduce((sum, weight) => sum + weight, 0);
      close(Math.log((total * 20 * one.omega) / (count - 1)), one.log_marginal, 1e-8);
      const law = summingToOne(sums);
      const mean = betas.reduce((sum, beta, k) => sum + law.weight[k]! * beta, 0);
      close(mean, one.posterior_mean_beta, 1e-8);
      const square = betas.reduce((sum, beta, k) => sum + law.weight[k]! * (beta - mean) ** 2, 0);
      close(Math.sqrt(square), one.posterior_sd_beta, 1e-8);
      const last = list(one.hours).at(-1)!;
      for (const want of one.cdf) close(plainChance(law, last, one.limit, want.h, one.delta), want.p_reached, 1e-6);
      for (const [u, want] of [
        [0.1, one.hours_at_limit.q10],
        [0.5, one.hours_at_limit.q50],
        [0.9, one.hours_at_limit.q90],
      ] as const)
        closeShare(plainHours(law, last, one.limit, u, one.delta)!, want, 1e-5);
    });

    it(`${name}: so does the production path, on 61 rates`, () => {
      const law = productionLaw(one);
      close(law.lnZ, one.log_marginal, 1e-6);
      const settings = { ...defaultModelSettings, driftDelta: one.delta };
      for (const want of one.cdf) close(chanceWornPast(law.law, one.limit, want.h, one.delta), want.p_reached, 1e-6);
      const found = hoursAtLimit(law.law, one.limit, settings);
      closeShare(found.low!, one.hours_at_limit.q10, 1e-5);
      closeShare(found.middle!, one.hours_at_limit.q50, 1e-5);
      closeShare(found.high!, one.hours_at_limit.q90, 1e-5);
      close(found.chancePastAtLastSize, one.prob_past_limit_now, 1e-12);
      let wear = 0;
      for (let i = 0; i < law.law.weight.length; i++) wear += law.law.weight[i]! * law.law.wearMm[i]!;
      close(wear, one.state_now.mean, 1e-6);
    });
  }
});

/** The production sum at figures that are given: one part, the class's mean known, one law of ln rate. */
function productionLaw(one: Golden): { law: PartLaw; lnZ: number } {
  const figures = { partScatter: one.omega, pathScatter: one.c, power: one.g, machineScatter: 0, visitErrorMm: 0 };
  const laws = { share: [1], sd: [one.omega] };
  const part = partOf(one);
  const block = machineBlock(
    1,
    [
      aSeries({
        newSizeSdMm: one.tau0,
        readings: part.readings.map((r) => aReading({ workedHours: r.hours, wearMm: r.wearMm, errorSdMm: r.sdMm })),
      }),
    ],
    { sharedErrors: true, fewParts: false },
  );
  setBlockTimes(block, one.H_ref, figures);
  sweepBlock(block, one.mu, 1e-14, figures, laws);
  const tilt = makeTilt();
  const site = block.read[0]!;
  nodesOfPart(block, site, figures, laws, tilt, { centre: site.bellMean, half: 7 * site.bellSd, count: 61 });
  const { count, lnWeight, beta, wearMm, wearVar } = tilt.nodes;
  const kept = Array.from({ length: count }, (_, i) => i).filter((i) => lnWeight[i]! > Number.NEGATIVE_INFINITY);
  const weights = kept.map((i) => Math.exp(lnWeight[i]! - tilt.lnZ));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return {
    lnZ: tilt.lnZ,
    law: {
      pointId: 1,
      ordinal: 0,
      machineId: 1,
      partClass: 'liner',
      hRefHours: one.H_ref,
      readings: site.n,
      lastHours: site.hours[site.n - 1]!,
      weight: Float64Array.from(weights, (weight) => weight / total),
      rate: Float64Array.from(kept, (i) => Math.exp(beta[i]!)),
      wearMm: Float64Array.from(kept, (i) => wearMm[i]!),
      wearVar: Float64Array.from(kept, (i) => wearVar[i]!),
      shapeOf: new Uint16Array(kept.length),
      shapes: [{ pathScatter: one.c, power: one.g, lastTime: site.t[site.n - 1]!, visitErrorMm: 0 }],
      basis: { own: 0, machine: 0, lnRateMean: 0, lnRateVar: 0, lnRateVarClassAndMachine: 0, lnRateVarClass: 0 },
    },
  };
}
