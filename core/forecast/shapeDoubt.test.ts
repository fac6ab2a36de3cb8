import { expect, it } from 'vitest';
import { aReading, aSeries } from '#tests/accuracy/aSeries.ts';
import { seededDice } from '#tests/support/seededDice.ts';
import type { ClassPrior } from '../fit/classPrior.ts';
import { learnShop } from '../fit/learnShop.ts';
import { machineLaws } from '../fit/machineLaws.ts';
import { defaultModelSettings as settings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { shapeDoubt } from './shapeDoubt.ts';

const prior: ClassPrior = { partClass: 'slide', hRefHours: 5500, m0: Math.log(2.5), s0: 0.35, from: 'trade' };
const priors = new Map([['slide', prior]]);

function lawOf(hours: readonly number[], errorSdMm = 0.02): PartLaw {
  const series = aSeries({
    readings: hours.map((workedHours) => aReading({ workedHours, wearMm: (2.5 * workedHours) / 5500, errorSdMm })),
  });
  return machineLaws(learnShop([series], priors, settings), [series], settings)[0]!;
}

it('grows with the way from the last size to the limit, and is none for a part never read', () => {
  const [near, far] = [lawOf([1500, 3000, 4800]), lawOf([500, 900, 1300])];
  expect(shapeDoubt(far, 2.5, settings)).toBeGreaterThan(shapeDoubt(near, 2.5, settings) + 0.1);
  expect(shapeDoubt(lawOf([]), 2.5, settings)).toBe(0);
  expect(shapeDoubt(near, 0.5, settings)).toBe(0);
});

it('is less where a coarse gauge leaves the rate itself in doubt', () => {
  expect(shapeDoubt(lawOf([900], 0.3), 2.5, settings)).toBeLessThan(shapeDoubt(lawOf([900], 0.01), 2.5, settings));
});

/** ln hours at limit drawn from a law by chance, and the ln power each was drawn with. */
function drawn(law: PartLaw, drifts: boolean): { lnT: number; lnG: number }[] {
  const dice = seededDice(5);
  let sum = 0;
  const sums = Array.from(law.weight, (weight) => {
    sum += weight;
    return sum;
  });
  return Array.from({ length: 20_000 }, () => {
    const u = dice.uniform();
    const i = Math.min(
      sums.length - 1,
      sums.findIndex((upTo) => upTo >= u),
    );
    const [z1, z2] = [dice.normal(), dice.normal()];
    const b = law.rate[i]!;
    const { power, pathScatter, lastTime } = law.shapes[law.shapeOf[i]!]!;
    const straight = (2.5 - law.wearMm[i]!) / b;
    const hours = law.hRefHours * (lastTime + straight) ** (1 / power);
    const drift = drifts ? Math.sqrt((hours / law.lastHours!) ** (settings.driftDelta ** 2) - 1) * z1 : 0;
    const path = Math.sqrt(law.wearVar[i]! + (b * pathScatter) ** 2 * straight) * z2;
    const dt = (2.5 - law.wearMm[i]! - path) / (b * (1 + drift));
    return { lnT: Math.log(law.hRefHours) + Math.log(lastTime + dt) / power, lnG: Math.log(power) };
  });
}

const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
const covariance = (a: readonly number[], b: readonly number[]) =>
  mean(a.map((value, i) => value * b[i]!)) - mean(a) * mean(b);

it('is the share of the variance of ln hours that bend and drift bring, as drawing by chance shows', () => {
  const law = lawOf([700, 1200, 1700]);
  const whole = drawn(law, true).map(({ lnT }) => lnT);
  const steady = drawn(law, false);
  const lnT = steady.map((one) => one.lnT);
  const lnG = steady.map((one) => one.lnG);
  const total = covariance(whole, whole);
  const drift = total - covariance(lnT, lnT);
  const bend = covariance(lnT, lnG) ** 2 / covariance(lnG, lnG);
  expect(shapeDoubt(law, 2.5, settings)).toBeCloseTo((drift + bend) / total, 1);
});
