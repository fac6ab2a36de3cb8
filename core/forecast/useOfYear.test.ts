import { describe, expect, it } from 'vitest';
import { seededDice } from '#tests/support/seededDice.ts';
import { lnGammaDensity } from '../maths/gamma.ts';
import type { UseStretch } from '../reading/machineHours.ts';
import { EVEN_USE, GRASS_AND_TILLAGE } from '../reading/season.ts';
import { day, dayFromNumber, dayNumber } from '../units/day.ts';
import { borrowedHoursPerDay, learnedJobHours, useOfYear } from './useOfYear.ts';

const SHOP = { hoursPerDay: 500 / 365, season: GRASS_AND_TILLAGE };
const years = (hours: readonly number[], from = 2018): UseStretch[] =>
  hours.map((run, index) => ({
    from: day(`${from + index}-10-10`),
    to: day(`${from + index + 1}-10-10`),
    hours: run,
    sdHours: 0,
  }));

/** Mean and sd of the ln rate in even use, summed in steps of a thousandth. */
function denseRate(stretches: readonly UseStretch[], jobHours: number): { mean: number; sd: number } {
  const ln = (lnRate: number): number => {
    let sum = -0.5 * ((lnRate - Math.log(SHOP.hoursPerDay)) / 0.5) ** 2;
    for (const { from, to, hours, sdHours } of stretches) {
      const run = Math.max(0.5, hours);
      const job = jobHours + sdHours ** 2 / run;
      sum += lnGammaDensity(run, (Math.exp(lnRate) * (dayNumber(to) - dayNumber(from))) / job, job);
    }
    return sum;
  };
  let top = Number.NEGATIVE_INFINITY;
  for (let at = -7; at < 8; at += 0.01) top = Math.max(top, ln(at));
  let [total, mean, square] = [0, 0, 0];
  for (let at = -7; at < 8; at += 0.001) {
    const weight = Math.exp(ln(at) - top);
    total += weight;
    mean += weight * at;
    square += weight * at * at;
  }
  mean /= total;
  return { mean, sd: Math.sqrt(square / total - mean * mean) };
}

describe("a machine's use", () => {
  it('is the shop’s before it has spoken: 500 h a year, eight in ten between 263 and 949', () => {
    const { hoursPerYear, ownShare } = useOfYear([], SHOP);
    expect(hoursPerYear.middle).toBeCloseTo(500, 0);
    expect(hoursPerYear.low / (500 * Math.exp(-0.5 * 1.281552))).toBeCloseTo(1, 2);
    expect(hoursPerYear.high / (500 * Math.exp(0.5 * 1.281552))).toBeCloseTo(1, 2);
    expect(ownShare).toBeLessThan(0.01);
  });

  it('agrees with brute-force integration over the rate', () => {
    const stretches = years([900, 1150, 1020]);
    let total = 0;
    let mean = 0;
    let square = 0;
    for (let z = -8; z <= 8; z += 0.001) {
      let ln = -0.5 * z * z;
      const rate = SHOP.hoursPerDay * Math.exp(0.5 * z);
      for (const { hours, from, to } of stretches) {
        const days = (Date.parse(to) - Date.parse(from)) / 86_400_000;
        ln += lnGammaDensity(hours, (rate * days) / 40, 40);
      }
      const weight = Math.exp(ln);
      total += weight;
      mean += weight * Math.log(rate);
      square += weight * Math.log(rate) ** 2;
    }
    mean /= total;
    const sd = Math.sqrt(square / total - mean ** 2);
    const { rate } = useOfYear(stretches, { ...SHOP, season: EVEN_USE });
    expect(Math.log(rate.hoursPerDay)).toBeCloseTo(mean, 2);
    expect(rate.sdLnRate / sd).toBeCloseTo(1, 1);
  });

  it('agrees with brute-force integration where stretches are wild: a thousand hours in a week, and years of next to none', () => {
    const { uniform: dice } = seededDice(11);
    for (let machine = 0; machine < 40; machine++) {
      let from = 15_000;
      const stretches = Array.from({ length: 1 + Math.floor(dice() * 12) }, (): UseStretch => {
        const days = 2 + Math.floor(dice() ** 2 * 700);
        const hours = dice() < 0.2 ? 4000 * dice() : 2.5 * days * dice();
        from += days;
        return { from: dayFromNumber(from - days), to: dayFromNumber(from), hours, sdHours: dice() < 0.3 ? 80 : 0 };
      });
      const jobHours = [10, 40, 160][machine % 3]!;
      const { branches } = useOfYear(stretches, { ...SHOP, jobHours });
      const { mean, sd } = denseRate(stretches, jobHours);
      const even = branches[1]!.rates;
      const found = even.reduce((sum, node) => sum + node.weight * node.lnHoursPerDay, 0);
      const square = even.reduce((sum, node) => sum + node.weight * (node.lnHoursPerDay - found) ** 2, 0);
      expect(Math.abs(found - mean) / sd).toBeLessThan(0.01);
      expect(Math.sqrt(square) / sd).toBeCloseTo(1, 2);
    }
  });

  it('tells a machine that feeds in winter from one that mows', () => {
    const halves = (winter: number, summer: number): UseStretch[] =>
      [2021, 2022, 2023].flatMap((year) => [
        { from: day(`${year}-10-01`), to: day(`${year + 1}-04-01`), hours: winter, sdHours: 0 },
        { from: day(`${year + 1}-04-01`), to: day(`${year + 1}-10-01`), hours: summer, sdHours: 0 },
      ]);
    const weights = (stretches: UseStretch[]) => useOfYear(stretches, SHOP).branches.map(({ weight }) => weight);
    expect(weights(halves(120, 380))[0]!).toBeGreaterThan(0.9);
    expect(weights(halves(380, 170))[2]!).toBeGreaterThan(0.9);
  });

  it('an estimate speaks more softly than a reading', () => {
    const [read] = years([1500]);
    const sure = useOfYear([read!], SHOP).hoursPerYear.middle;
    const guessed = useOfYear([{ ...read!, sdHours: 600 }], SHOP).hoursPerYear.middle;
    expect(sure).toBeGreaterThan(guessed);
    expect(guessed).toBeGreaterThan(500);
  });

  it('a dial that did not move is little use, not an error', () => {
    const { hoursPerYear } = useOfYear(years([0]), SHOP);
    expect(hoursPerYear.middle).toBeGreaterThan(10);
    expect(hoursPerYear.middle).toBeLessThan(300);
  });

  it('borrows the middle machine’s rate once five have been followed', () => {
    const machines = [300, 500, 700, 900, 1100].map((hours) => years([hours]));
    expect(365 * borrowedHoursPerDay(machines, 500)).toBeCloseTo(700, 6);
    expect(365 * borrowedHoursPerDay(machines.slice(1), 450)).toBeCloseTo(450, 9);
  });

  it('learns short jobs from steady machines and long ones from restless ones', () => {
    const steady = Array.from({ length: 12 }, () => years([500, 510, 490, 505]));
    const restless = Array.from({ length: 12 }, () => years([500, 900, 250, 600]));
    expect(learnedJobHours(steady, SHOP)).toBeLessThan(20);
    expect(learnedJobHours(restless, SHOP)).toBeGreaterThan(80);
    expect(learnedJobHours([], SHOP)).toBe(40);
  });
});
