import { lnGamma } from '../maths/gamma.ts';
import { normalScore, quickNormalCdf } from '../maths/normal.ts';
import { solveRising } from '../maths/solveRising.ts';
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

/** Nodes of a bell, half an sd apart: sums over it are then good to 1e-6. */
const RATE_NODES = 17;
const REACH_SD = 4;

/** Least hours a stretch is taken to have run: a dial is read to the hour [h]. */
const LEAST_HOURS = 0.5;

/** How likely a machine keeps the shop's season, no season, or feeds in winter, before its readings speak. Common practice, no source. */
const SEASON_CHANCES = { shop: 0.8, even: 0.12, winter: 0.08 };

const DAYS_A_YEAR = 365;

/**
 * How many hours a year a machine runs, and when in the year, from its own stretches of known hours and the shop's habit.
 *   hours H over S average days, given a rate rho (hours per average day): gamma of shape rho S/phi, scale phi, phi = 40 h unless learned
 *   ln rho ~ N(ln rho0, 0.5^2);   17 equal nodes over +-4 sd of the posterior
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

/**
 * With a_k = S_k / phi_k:
 *   ln weight(rho) = ln N(ln rho; ln rho0, sd^2) + sum_k ((rho a_k - 1) ln H_k - H_k / phi_k - rho a_k ln phi_k - ln Gamma(rho a_k))
 */
function fitSeason(season: Season, chance: number, stretches: readonly UseStretch[], shop: ShopUse) {
  const lnShop = Math.log(shop.hoursPerDay);
  const sdLnRate = sdLnRateOf(shop);
  const shapes: number[] = [];
  let still = 0;
  let byRate = 0;
  let days = 0;
  let run = 0;
  let jobs = 0;
  for (const { from, to, hours, sdHours } of stretches) {
    const averageDays = seasonDays(season, from, to);
    if (!(averageDays > 0)) continue;
    const ran = Math.max(LEAST_HOURS, hours);
    const jobHours = (shop.jobHours ?? USUAL_JOB_HOURS) + sdHours ** 2 / ran;
    const shape = averageDays / jobHours;
    shapes.push(shape);
    still -= Math.log(ran) + ran / jobHours;
    byRate += shape * Math.log(ran / jobHours);
    days += averageDays;
    run += ran;
    jobs += ran / jobHours;
  }
  const lnWeight = (lnRate: number): number => {
    const rate = Math.exp(lnRate);
    let sum = -0.5 * ((lnRate - lnShop) / sdLnRate) ** 2 + still + rate * byRate;
    for (const shape of shapes) sum -= lnGamma(rate * shape);
    return sum;
  };
  // so many jobs tell the ln rate to 1 / sqrt(jobs)
  const precision = jobs + sdLnRate ** -2;
  const own = jobs > 0 ? jobs * Math.log(run / days) : 0;
  const about = { mean: (own + lnShop * sdLnRate ** -2) / precision, sd: Math.sqrt(1 / precision) };
  const { nodes, lnSum } = weighedAbout(lnWeight, about);
  return { season, rates: nodes, lnEvidence: Math.log(chance) + lnSum };
}

/** Nodes stand well while their middle is off by no more than this, and their width within this of the bell's (sd). */
const OFF_CENTRE = 0.1;
const OFF_WIDTH = 0.1;
const MOST_LOOKS = 20;

type About = { mean: number; sd: number };

/** The bell on the parabola through three of its points. */
function nearerTo(lnWeight: (at: number) => number, { mean, sd }: About): About {
  const [low, middle, high] = [lnWeight(mean - sd), lnWeight(mean), lnWeight(mean + sd)];
  const bend = 2 * middle - low - high;
  if (!(bend > LEAST_BEND)) return { mean, sd };
  const off = (0.5 * (high - low)) / bend;
  return { mean: mean + Math.max(-FURTHEST, Math.min(FURTHEST, off)) * sd, sd: sd / Math.sqrt(bend) };
}
/** Of a bell as wide as was thought it is 1. */
const LEAST_BEND = 0.1;
const FURTHEST = 4;

/** Nodes over a bell of one top, looked for from about where it lies. */
function weighedAbout(lnWeight: (at: number) => number, about: About) {
  let { mean, sd } = nearerTo(lnWeight, nearerTo(lnWeight, about));
  for (let look = 1; ; look++) {
    const weighed = weigh(lnWeight, mean, REACH_SD * sd);
    const off = Math.abs(weighed.mean - mean) / sd;
    const wider = Math.abs(Math.log(weighed.sd / sd));
    if ((off < OFF_CENTRE && wider < OFF_WIDTH) || look === MOST_LOOKS) return weighed;
    mean = weighed.mean;
    // a bell beyond the nodes is looked for further off, one that hides between two of them nearer by
    sd = off > 2 ? 3 * sd : Math.max(weighed.sd, 0.3 * sd);
  }
}

/** Weighs equal nodes over centre +- reach; their sum times the spacing is the integral (trapezium). */
function weigh(lnWeight: (at: number) => number, centre: number, reach: number) {
  const step = (2 * reach) / (RATE_NODES - 1);
  const at = Array.from({ length: RATE_NODES }, (_, index) => centre - reach + index * step);
  const ln = at.map(lnWeight);
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
  return weigh((at) => -0.5 * ((at - lnHoursPerDay) / sd) ** 2, lnHoursPerDay, REACH_SD * sd).nodes;
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
  const [low, middle, high] = rateQuantiles(branches, [0.1, 0.5, 0.9]).map((perDay) => DAYS_A_YEAR * perDay);
  const hoursPerYear = { low: low!, middle: middle!, high: high! };
  const season = EVEN_USE.map((_, month) =>
    branches.reduce((sum, branch) => sum + branch.weight * branch.season[month]!, 0),
  );
  return {
    hoursPerYear,
    ownShare: Math.min(1, Math.max(0, 1 - variance / sdLnRateOfMachines ** 2)),
    rate: { hoursPerDay: hoursPerYear.middle / DAYS_A_YEAR, sdLnRate: Math.sqrt(variance), season, jobHours },
  };
}

/**
 * Chance that the logarithm of the rate lies below each node of a branch, as a normal's quantile: the trapezium sum up to the
 * node with its end corrected, w_0 + .. + w_i / 2 - (w_(i+1) - w_(i-1)) / 24.
 * @source Euler and Maclaurin's sum formula: M. Abramowitz, I. A. Stegun, Handbook of Mathematical Functions (1964), 25.4.7
 */
function scoresAtNodes(rates: readonly RateNode[]): number[] {
  let below = 0;
  return rates.map(({ weight }, index) => {
    const before = rates[index - 1]?.weight ?? 0;
    const after = rates[index + 1]?.weight ?? 0;
    const chance = below + 0.5 * weight - (after - before) / 24;
    below += weight;
    return normalScore(chance, SURE);
  });
}

/** Chances nearer than this to 0 or 1 are told apart no more. */
const SURE = 1e-9;

/** The rate below which a machine runs with each of some chances: straight in normal quantiles from node to node of each branch [h/d]. */
function rateQuantiles(branches: readonly SeasonBranch[], chances: readonly number[]): number[] {
  const told = branches
    .filter(({ weight }) => weight > SURE)
    .map(({ weight, rates }) => ({ weight, rates, scores: scoresAtNodes(rates) }));
  const below = (lnRate: number): number => {
    let sum = 0;
    for (const { weight, rates, scores } of told) {
      const first = rates[0]!.lnHoursPerDay;
      const place = (lnRate - first) / (rates[1]!.lnHoursPerDay - first);
      const node = Math.min(rates.length - 2, Math.max(0, Math.floor(place)));
      sum += weight * quickNormalCdf(scores[node]! + (place - node) * (scores[node + 1]! - scores[node]!));
    }
    return sum;
  };
  const from = Math.min(...told.map(({ rates }) => 2 * rates[0]!.lnHoursPerDay - rates[1]!.lnHoursPerDay));
  const to = Math.max(...told.map(({ rates }) => 2 * rates.at(-1)!.lnHoursPerDay - rates.at(-2)!.lnHoursPerDay));
  return chances.map((chance) => Math.exp(solveRising(below, chance, from, to, below(from), below(to), FINE)));
}

const FINE = 1e-7;

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
