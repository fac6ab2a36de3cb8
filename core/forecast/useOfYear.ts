import { lnGammaDensity } from '../maths/gamma.ts';
import type { UseStretch } from '../reading/machineHours.ts';
import { EVEN_USE, meanOne, type Season, seasonDays, WINTER_FEEDING } from '../reading/season.ts';
import { USUAL_JOB_HOURS, type UseRate } from '../reading/useRate.ts';

/** One rate a machine may run at, and the chance of it. */
export type RateNode = { lnHoursPerDay: number; weight: number };

/** One season a machine may keep, the chance of it, and its rates given that season. */
export type SeasonBranch = { season: Season; weight: number; rates: readonly RateNode[] };

/** What is known of a machine's use: plain data, made by {@link useOfYear}. */
export type UseOfYear = {
  branches: readonly SeasonBranch[];
  /** 10, 50 and 90 % points of the rate [h a year] */
  hoursPerYear: { low: number; middle: number; high: number };
  /** 1 - var(ln rate | own readings) / var(ln rate | shop): 0 all borrowed, 1 all its own */
  ownShare: number;
  /** the middle rate, its doubt and the likely season: what machine hours are carried forward by (reading/hoursLine.ts) */
  rate: UseRate;
  /** stretches of known hours it rests on */
  stretches: number;
};

/** What the shop says before the machine has spoken. */
export type ShopUse = {
  hoursPerDay: number;
  season: Season;
  /** length of the jobs hours come in, phi [h]; absent: the usual. See {@link learnedJobHours} */
  jobHours?: number;
  /** 1 sd of the natural logarithm of machines' rates about the shop's; absent: the usual */
  sdLnRate?: number;
};

/** 1 sd of the natural logarithm of machines' rates about the shop's: two thirds of them within a factor of 1.65. Common practice, no source. */
export const SD_LN_RATE_OF_MACHINES = 0.5;

export const sdLnRateOf = (shop: ShopUse): number => shop.sdLnRate ?? SD_LN_RATE_OF_MACHINES;

const RATE_NODES = 41;
const REACH_SD = 4;

/** Least hours a stretch is taken to have run: a dial is read to the hour [h]. */
const LEAST_HOURS = 0.5;

/** How likely a machine keeps the shop's season, no season, or feeds in winter, before its readings speak. Common practice, no source. */
const SEASON_CHANCES = { shop: 0.8, even: 0.12, winter: 0.08 };

const DAYS_A_YEAR = 365;

/**
 * How many hours a year a machine runs, and when in the year, from its own stretches of known hours and the shop's habit.
 *   hours H over S average days, given a rate rho (hours per average day): gamma of shape rho S/phi, scale phi, phi = 40 h unless learned
 *   ln rho ~ N(ln rho0, 0.5^2);   41 equal nodes over +-4 sd of the posterior
 * A season is one of three with chances of their own; S is counted by it, so readings within a year tell them apart.
 * An estimated stretch speaks with its error added: phi + sd^2 / H.
 *
 * @param stretches known hours of the machine ({@link useStretches})
 * @param shop rate and season borrowed from the shop
 * @source own derivation: gamma process with a lognormal rate, summed on a grid
 * @checked core/forecast/useOfYear.test.ts against brute-force integration
 */
export function useOfYear(stretches: readonly UseStretch[], shop: ShopUse): UseOfYear {
  const fitted = seasonsOfShop(shop).map(({ season, chance }) => fitSeason(season, chance, stretches, shop));
  const best = Math.max(...fitted.map(({ lnEvidence }) => lnEvidence));
  const total = fitted.reduce((sum, { lnEvidence }) => sum + Math.exp(lnEvidence - best), 0);
  const jobHours = shop.jobHours ?? USUAL_JOB_HOURS;
  const branches = fitted.map(({ season, rates, lnEvidence }) => ({
    season,
    rates,
    weight: Math.exp(lnEvidence - best) / total,
  }));
  return useOfBranches(branches, jobHours, sdLnRateOf(shop), stretches.length);
}

/** How likely each season is before a machine's readings speak, the shop's own first. */
export const seasonsOfShop = (shop: ShopUse): { season: Season; chance: number }[] => [
  { season: meanOne(shop.season), chance: SEASON_CHANCES.shop },
  { season: EVEN_USE, chance: SEASON_CHANCES.even },
  { season: meanOne(WINTER_FEEDING), chance: SEASON_CHANCES.winter },
];

function fitSeason(season: Season, chance: number, stretches: readonly UseStretch[], shop: ShopUse) {
  const lnShop = Math.log(shop.hoursPerDay);
  const known = stretches.map(({ from, to, hours, sdHours }) => {
    const run = Math.max(LEAST_HOURS, hours);
    return {
      averageDays: seasonDays(season, from, to),
      hours: run,
      jobHours: (shop.jobHours ?? USUAL_JOB_HOURS) + sdHours ** 2 / run,
    };
  });
  const lnWeight = (lnRate: number): number => {
    let sum = -0.5 * ((lnRate - lnShop) / sdLnRateOf(shop)) ** 2;
    for (const { averageDays, hours, jobHours } of known) {
      if (averageDays > 0) sum += lnGammaDensity(hours, (Math.exp(lnRate) * averageDays) / jobHours, jobHours);
    }
    return sum;
  };
  const wide = weigh(lnWeight, lnShop, 3 * REACH_SD * sdLnRateOf(shop), 4 * RATE_NODES);
  const close = weigh(lnWeight, wide.mean, REACH_SD * Math.max(wide.sd, 1e-3), RATE_NODES);
  return { season, rates: close.nodes, lnEvidence: Math.log(chance) + close.lnSum };
}

/** A node this far below the top [ln] adds nothing to a sum of doubles. */
const LOST_BELOW = 45;
const STRIDE = 6;

/**
 * ln weights at equal nodes of a curve with one top: the nodes beside the top that count, the rest -Infinity. Every sixth
 * node is looked at to find it.
 */
function lnAtNodes(lnWeight: (at: number) => number, at: readonly number[]): number[] {
  const ln = at.map((value, index) => (index % STRIDE === 0 ? lnWeight(value) : Number.NaN));
  let top = 0;
  for (let index = 0; index < at.length; index += STRIDE) if (ln[index]! > ln[top]!) top = index;
  const near = (index: number) => {
    if (Number.isNaN(ln[index])) ln[index] = lnWeight(at[index]!);
    return ln[index]!;
  };
  let best = ln[top]!;
  for (const way of [1, -1])
    for (let index = top; index >= 0 && index < at.length && near(index) > best - LOST_BELOW; index += way)
      best = Math.max(best, ln[index]!);
  return ln.map((value) => (Number.isNaN(value) ? Number.NEGATIVE_INFINITY : value));
}

/** Weighs equal nodes over centre +- reach; their sum times the spacing is the integral (trapezium). */
function weigh(lnWeight: (at: number) => number, centre: number, reach: number, count: number) {
  const step = (2 * reach) / (count - 1);
  const at = Array.from({ length: count }, (_, index) => centre - reach + index * step);
  const ln = lnAtNodes(lnWeight, at);
  const top = Math.max(...ln);
  const raw = ln.map((value) => Math.exp(value - top));
  const sum = raw.reduce((a, b) => a + b, 0);
  const nodes: RateNode[] = at.map((lnHoursPerDay, index) => ({ lnHoursPerDay, weight: raw[index]! / sum }));
  const mean = nodes.reduce((a, { lnHoursPerDay, weight }) => a + weight * lnHoursPerDay, 0);
  const variance = nodes.reduce((a, { lnHoursPerDay, weight }) => a + weight * (lnHoursPerDay - mean) ** 2, 0);
  return { nodes, mean, sd: Math.sqrt(variance), lnSum: top + Math.log(sum * step) };
}

/** Rates about a middle one, normal in their logarithm: equal nodes over +-4 sd. */
export function ratesAbout(lnHoursPerDay: number, sdLnRate: number): RateNode[] {
  const sd = Math.max(sdLnRate, 1e-3);
  return weigh((at) => -0.5 * ((at - lnHoursPerDay) / sd) ** 2, lnHoursPerDay, REACH_SD * sd, RATE_NODES).nodes;
}

/** A use from its branches, whose weights add up to 1; how much of it is its own is told by what the shop's machines differ by. */
export const useOfBranches = (
  branches: readonly SeasonBranch[],
  jobHours: number,
  sdLnRateOfShop: number,
  stretches: number,
): UseOfYear => ({ branches, ...summaryOf(branches, jobHours, sdLnRateOfShop), stretches });

function summaryOf(
  branches: readonly SeasonBranch[],
  jobHours: number,
  sdLnRateOfMachines: number,
): Pick<UseOfYear, 'hoursPerYear' | 'ownShare' | 'rate'> {
  const all = branches.flatMap(({ weight, rates }) =>
    rates.map((node) => ({ lnHoursPerDay: node.lnHoursPerDay, weight: node.weight * weight })),
  );
  const mean = all.reduce((sum, { lnHoursPerDay, weight }) => sum + weight * lnHoursPerDay, 0);
  const variance = all.reduce((sum, { lnHoursPerDay, weight }) => sum + weight * (lnHoursPerDay - mean) ** 2, 0);
  const point = (chance: number): number => DAYS_A_YEAR * rateQuantile(branches, chance);
  const hoursPerYear = { low: point(0.1), middle: point(0.5), high: point(0.9) };
  const season = EVEN_USE.map((_, month) =>
    branches.reduce((sum, branch) => sum + branch.weight * branch.season[month]!, 0),
  );
  return {
    hoursPerYear,
    ownShare: Math.min(1, Math.max(0, 1 - variance / sdLnRateOfMachines ** 2)),
    rate: { hoursPerDay: hoursPerYear.middle / DAYS_A_YEAR, sdLnRate: Math.sqrt(variance), season, jobHours },
  };
}

/** Chance that the logarithm of the rate lies below a value: each node spread evenly over its spacing. */
function chanceOfRateBelow(branches: readonly SeasonBranch[], lnHoursPerDay: number): number {
  let sum = 0;
  for (const { weight, rates } of branches) {
    const spacing = rates[1]!.lnHoursPerDay - rates[0]!.lnHoursPerDay;
    for (const node of rates) {
      const share = (lnHoursPerDay - node.lnHoursPerDay) / spacing + 0.5;
      sum += weight * node.weight * Math.min(1, Math.max(0, share));
    }
  }
  return sum;
}

function rateQuantile(branches: readonly SeasonBranch[], chance: number): number {
  let low = Math.min(...branches.map(({ rates }) => rates[0]!.lnHoursPerDay)) - 1;
  let high = Math.max(...branches.map(({ rates }) => rates.at(-1)!.lnHoursPerDay)) + 1;
  for (let step = 0; step < 40; step++) {
    const half = (low + high) / 2;
    if (chanceOfRateBelow(branches, half) < chance) low = half;
    else high = half;
  }
  return Math.exp((low + high) / 2);
}

/** Machines whose own rate is known well enough to speak for the shop have been followed this long [average days]. */
const FOLLOWED_DAYS = 300;
/** With fewer such machines the shop's setting stands. */
const LEAST_MACHINES = 5;

/**
 * The rate a machine borrows from the shop: the middle (median) one of the machines followed for most of a year, once
 * there are five; before that the shop's own setting.
 *
 * @param machines known stretches of every machine
 * @param hoursPerYearDefault the shop's setting [h a year]
 * @returns hours per average day [h/d]
 * @source common practice, no source
 */
export function borrowedHoursPerDay(machines: readonly (readonly UseStretch[])[], hoursPerYearDefault: number): number {
  const rates: number[] = [];
  for (const stretches of machines) {
    const days = stretches.reduce((sum, { from, to }) => sum + seasonDays(EVEN_USE, from, to), 0);
    const hours = stretches.reduce((sum, stretch) => sum + stretch.hours, 0);
    if (days >= FOLLOWED_DAYS && hours > 0) rates.push(hours / days);
  }
  if (rates.length < LEAST_MACHINES) return hoursPerYearDefault / DAYS_A_YEAR;
  rates.sort((a, b) => a - b);
  const half = rates.length / 2;
  return Number.isInteger(half) ? Math.sqrt(rates[half - 1]! * rates[half]!) : rates[Math.floor(half)]!;
}

/** Lengths of job that are weighed against each other, in usual ones, and how far from that they are thought likely (1 sd of ln). Common practice, no source. */
const JOB_HOURS_TRIED = [0.25, 0.35, 0.5, 0.7, 1, 1.425, 2, 2.825, 4];
const SD_LN_JOB_HOURS = 0.5;

/** Machines that speak for the shop's jobs: enough to settle them, few enough to be quick. */
const MOST_MACHINES = 60;

/**
 * How long the jobs are that hours come in, learned from how unevenly the shop's machines run from reading to reading:
 * the length with the greatest posterior of those tried, ln phi ~ N(ln usual, 0.5^2), each machine's rate summed out.
 * Short jobs and steady farms give narrow dates, long ones wide.
 *
 * @param machines known stretches of every machine
 * @param shop the shop's rate and season; its length of job is the usual one
 * @returns one of the lengths tried [h]; the usual one (40 h unless the shop says otherwise) while no machine has two stretches
 * @source own derivation: evidence of the gamma process of {@link useOfYear}
 */
export function learnedJobHours(machines: readonly (readonly UseStretch[])[], shop: ShopUse): number {
  const speaking = machines.filter((stretches) => stretches.length >= 2);
  const every = Math.max(1, Math.ceil(speaking.length / MOST_MACHINES));
  const heard = speaking.filter((_, index) => index % every === 0);
  const usual = shop.jobHours ?? USUAL_JOB_HOURS;
  let best = { jobHours: usual, ln: Number.NEGATIVE_INFINITY };
  for (const times of JOB_HOURS_TRIED) {
    const jobHours = times * usual;
    let ln = -0.5 * (Math.log(times) / SD_LN_JOB_HOURS) ** 2;
    for (const stretches of heard)
      ln += fitSeason(meanOne(shop.season), 1, stretches, { ...shop, jobHours }).lnEvidence;
    if (ln > best.ln) best = { jobHours, ln };
  }
  return best.jobHours;
}
