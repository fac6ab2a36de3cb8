import { describe, expect, it } from 'vitest';
import { caseCount } from '#tests/support/counts.ts';
import { seededDice } from '#tests/support/seededDice.ts';
import { simulatedFarm } from '#tests/support/simulatedFarms.ts';
import { lnGammaDensity } from '../maths/gamma.ts';
import { normalCdf } from '../maths/normal.ts';
import { hoursLine } from '../reading/hoursLine.ts';
import { type UseStretch, useStretches } from '../reading/machineHours.ts';
import { EVEN_USE, GRASS_AND_TILLAGE, type Season, WINTER_FEEDING } from '../reading/season.ts';
import { type Day, day, dayFromNumber, dayNumber } from '../units/day.ts';
import { type DateAtLimit, type DateQuestion, dateAtLimit } from './dateAtLimit.ts';
import { learnedJobHours, useOfYear } from './useOfYear.ts';

const SHOP = { hoursPerDay: 500 / 365, season: GRASS_AND_TILLAGE };
const FROM = day('2025-10-10');

const stretch = (from: string, to: string, hours: number): UseStretch => ({
  from: day(from),
  to: day(to),
  hours,
  sdHours: 0,
});

const ask = (stretches: UseStretch[], chancePastBy: DateQuestion['chancePastBy'], from: Day = FROM): DateAtLimit =>
  dateAtLimit({ chancePastBy, leastHoursAhead: 0, use: useOfYear(stretches, SHOP), from, dayOf: () => from }, true);

/** Lognormal hours at limit. */
const around = (median: number, spread: number) => (hours: number) =>
  hours <= 0 ? 0 : normalCdf(Math.log(hours / median) / spread);

/** The same chance by brute force: months counted day by day, plain sums over rate and hours, the rate's prior as it is. */
function chanceByBruteForce(stretches: UseStretch[], chancePastBy: (hours: number) => number, by: Day): number {
  const perDay = (season: Season, from: Day, to: Day): number => {
    let sum = 0;
    for (let at = dayNumber(from) + 1; at <= dayNumber(to); at++)
      sum += season[Number(dayFromNumber(at).slice(5, 7)) - 1]!;
    let year = 0;
    for (let at = dayNumber(day('2025-01-01')); at < dayNumber(day('2026-01-01')); at++) {
      year += season[Number(dayFromNumber(at).slice(5, 7)) - 1]! / 365;
    }
    return sum / year;
  };
  let total = 0;
  let chance = 0;
  for (const [season, prior] of [
    [GRASS_AND_TILLAGE, 0.8],
    [EVEN_USE, 0.12],
    [WINTER_FEEDING, 0.08],
  ] as const) {
    const seen = stretches.map(({ from, to, hours }) => ({ days: perDay(season, from, to), hours }));
    const ahead = perDay(season, FROM, by);
    for (let z = -7; z <= 7; z += 0.02) {
      const rate = SHOP.hoursPerDay * Math.exp(0.5 * z);
      let ln = -0.5 * z * z;
      for (const { days, hours } of seen) ln += lnGammaDensity(hours, (rate * days) / 40, 40);
      const weight = prior * Math.exp(ln);
      if (weight < 1e-30) continue;
      let inner = 0;
      let mass = 0;
      const most = rate * ahead + 12 * Math.sqrt(40 * rate * ahead) + 400;
      for (let x = most / 1200; x < most; x += most / 600) {
        const density = Math.exp(lnGammaDensity(x, (rate * ahead) / 40, 40));
        inner += density * chancePastBy(x);
        mass += density;
      }
      chance += (weight * inner) / mass;
      total += weight;
    }
  }
  return chance / total;
}

describe('the day a part reaches its limit', () => {
  it('agrees with brute-force integration', () => {
    const cases: [UseStretch[], (hours: number) => number][] = [
      [[], around(900, 0.3)],
      [[stretch('2024-10-01', '2025-10-10', 700)], around(1500, 0.25)],
      [[stretch('2024-10-01', '2025-04-10', 150), stretch('2025-04-10', '2025-10-10', 520)], around(400, 0.5)],
    ];
    for (const [stretches, chancePastBy] of cases) {
      const { low, middle, high } = ask(stretches, chancePastBy);
      expect(Math.abs(chanceByBruteForce(stretches, chancePastBy, low!) - 0.1)).toBeLessThan(0.006);
      expect(Math.abs(chanceByBruteForce(stretches, chancePastBy, middle!) - 0.5)).toBeLessThan(0.006);
      expect(Math.abs(chanceByBruteForce(stretches, chancePastBy, high!) - 0.9)).toBeLessThan(0.006);
    }
  });

  it('falls in the season, not in the winter: the same hours take longer from October than from April', () => {
    const known = [stretch('2020-10-10', '2025-10-10', 2500)];
    const fromAutumn = ask(known, around(250, 0.05));
    const fromSpring = ask(known, around(250, 0.05), day('2026-04-10'));
    const daysAutumn = dayNumber(fromAutumn.middle!) - dayNumber(FROM);
    const daysSpring = dayNumber(fromSpring.middle!) - dayNumber(day('2026-04-10'));
    expect(daysAutumn).toBeGreaterThan(1.4 * daysSpring);
  });

  it('a limit probably reached before the hours were last read has its day from the hours', () => {
    const question: DateQuestion = {
      chancePastBy: (hours) => normalCdf((hours + 300) / 100),
      leastHoursAhead: -900,
      use: useOfYear([], SHOP),
      from: FROM,
      dayOf: (hours) => dayFromNumber(dayNumber(FROM) + hours / 2),
    };
    const { low, middle, high } = dateAtLimit(question);
    expect(dayNumber(FROM) - dayNumber(middle!)).toBeCloseTo(150, -0.5);
    expect(low! < middle! && middle! < high! && high! < FROM).toBe(true);
  });

  it('beyond 40 years there is no date', () => {
    const { low, high, useShare, cautions } = ask([stretch('2024-10-01', '2025-10-10', 20)], around(60_000, 0.1));
    expect([low, high, useShare]).toEqual([null, null, null]);
    expect(cautions.map(({ code }) => code)).toEqual(['date-beyond']);
  });

  it('says how much of the width is use: nearly all when the hours are sure, little when they are not', () => {
    expect(ask([], around(2000, 0.02)).useShare!).toBeGreaterThan(0.6);
    expect(ask([stretch('2015-10-10', '2025-10-10', 5000)], around(2000, 0.5)).useShare!).toBeLessThan(0.1);
  });
});

/** Farms of one shop, from which it learns its jobs. */
const FARMS_A_SHOP = 40;

type Tally = { inside: number; early: number; late: number };

/** Share of farms whose true day lies in the band, and below and above it. */
function bandOverFarms(farms: number, hoursSpread: number, unrest: number): Tally {
  const tally: Tally = { inside: 0, early: 0, late: 0 };
  for (let first = 1; first <= farms; first += FARMS_A_SHOP) {
    const shop = Array.from({ length: FARMS_A_SHOP }, (_, index) => simulatedFarm(first + index, unrest));
    const stretches = shop.map(({ life, asOf }) => useStretches(hoursLine(life, asOf)));
    const jobHours = learnedJobHours(stretches, SHOP);
    shop.forEach((farm, index) => {
      const dice = seededDice(1_000_000 + first + index);
      const median = 200 * Math.exp(dice.uniform() * Math.log(12));
      const trueDay = farm.dayAfter(median * Math.exp(hoursSpread * dice.normal()));
      const { low, high } = dateAtLimit({
        chancePastBy: around(median, hoursSpread),
        leastHoursAhead: 0,
        use: useOfYear(stretches[index]!, { ...SHOP, jobHours }),
        from: farm.asOf,
        dayOf: () => farm.asOf,
      });
      if (low !== null && trueDay < low) tally.early++;
      else if (high !== null && trueDay > high) tally.late++;
      else tally.inside++;
    });
  }
  const all = tally.inside + tally.early + tally.late;
  return { inside: tally.inside / all, early: tally.early / all, late: tally.late / all };
}

describe('the 80 % band of days over simulated farms', () => {
  for (const [spread, unrest, farms] of [
    [0.03, 0, 'steady'],
    [0.03, 1, 'restless'],
    [0.3, 1, 'restless'],
  ] as const) {
    it(`holds 72 to 88 % of ${farms} farms, hours at limit within ${spread * 100} %`, () => {
      const { inside } = bandOverFarms(caseCount(8000), spread, unrest);
      expect(inside).toBeGreaterThan(0.72);
      expect(inside).toBeLessThan(0.88);
    });
  }
});
