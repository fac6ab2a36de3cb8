import { describe, expect, it } from 'vitest';
import { GRASS_AND_TILLAGE } from '../reading/season.ts';
import { day } from '../units/day.ts';
import { useOfYear } from './useOfYear.ts';
import { useOfPulled, useReckoned } from './useWithoutMeter.ts';

const SHOP = { hoursPerDay: 400 / 365, season: GRASS_AND_TILLAGE };
const PULLER = useOfYear(
  [2020, 2021, 2022, 2023].map((year) => ({
    from: day(`${year}-01-01`),
    to: day(`${year + 1}-01-01`),
    hours: 800,
    sdHours: 0,
  })),
  SHOP,
);

/** 90 % point of the standard normal distribution: NIST/SEMATECH e-Handbook of Statistical Methods, table 1.3.6.7.1 (1.28). */
const Z90 = 1.2816;

describe('the use of a machine that another pulls', () => {
  it('is its share of the puller’s, in the puller’s season', () => {
    const exact = useOfPulled(PULLER, 0.3, 0);
    expect(exact.hoursPerYear.middle / PULLER.hoursPerYear.middle).toBeCloseTo(0.3, 2);
    expect(exact.rate.season).toEqual(PULLER.rate.season);
    expect(exact.rate.jobHours!).toBeCloseTo(0.3 * PULLER.rate.jobHours!, 9);
  });
  it('is the less sure the less sure the share: variances of the logarithms add', () => {
    const { rate, hoursPerYear } = useOfPulled(PULLER, 0.3, 0.4);
    expect(rate.sdLnRate).toBeCloseTo(Math.hypot(PULLER.rate.sdLnRate, 0.4), 2);
    expect(Math.log(hoursPerYear.high / hoursPerYear.middle)).toBeCloseTo(Z90 * rate.sdLnRate, 1);
  });
  it('adds up to certainty, whatever the share', () => {
    for (const share of [0.01, 0.5, 1]) {
      const { branches } = useOfPulled(PULLER, share, 0.25);
      const sum = branches.reduce(
        (all, { weight, rates }) => all + weight * rates.reduce((w, r) => w + r.weight, 0),
        0,
      );
      expect(sum).toBeCloseTo(1, 9);
    }
  });
});

describe('a use that somebody reckons', () => {
  it('is as reckoned, within the error given, and owes the shop nothing but its season', () => {
    const { hoursPerYear, rate, ownShare, stretches } = useReckoned(300, 0.25, SHOP);
    expect(hoursPerYear.middle).toBeCloseTo(300, 0);
    expect(hoursPerYear.low).toBeCloseTo(300 * Math.exp(-Z90 * 0.25), -1);
    expect(rate.sdLnRate).toBeCloseTo(0.25, 2);
    expect(ownShare).toBeCloseTo(0.75, 2); // 1 - 0.25^2 / 0.5^2
    expect(stretches).toBe(0);
  });
});
