import { normalQuantile, normalScore } from '../maths/normal.ts';
import type { Caution } from '../outcome.ts';
import type { HoursLine } from '../reading/hoursLine.ts';
import { type Season, seasonDaysSince1970 } from '../reading/season.ts';
import { USUAL_JOB_HOURS } from '../reading/useRate.ts';
import { type Day, dayFromNumber, dayNumber } from '../units/day.ts';
import { type GammaSmoothing, gammaSmoothing, lnHoursOf, smoothed, tabulate } from './gammaSmoothing.ts';
import type { SeasonBranch, UseOfYear } from './useOfYear.ts';

/** What a date rests on. Hours ahead are machine hours counted from the machine's last node: its day is `from`. */
export type DateQuestion = {
  /** chance that the limit has been reached by some machine hours ahead; rising, 0 to 1 */
  chancePastBy: (machineHoursAhead: number) => number;
  /** machine hours ahead at the part's own last size, before which it was not past [h]; 0 or less as a rule */
  leastHoursAhead: number;
  use: UseOfYear;
  /** day of the last node of the machine's hours */
  from: Day;
  /** day of machine hours that have already run, for a limit reached before `from` */
  dayOf: (machineHoursAhead: number) => Day;
};

export type DateAtLimit = {
  /** 10, 50 and 90 % points; null: beyond 40 years */
  low: Day | null;
  middle: Day | null;
  high: Day | null;
  /** part of the width between low and high that comes from not knowing the machine's use; null: a bound is beyond, or it was not asked for */
  useShare: number | null;
  cautions: Caution[];
};

/** Nobody plans further [years]. */
export const BEYOND_YEARS = 40;
const BEYOND_DAYS = Math.round(BEYOND_YEARS * 365.25);

/** Rates less likely than this do not move a date. */
const NEGLIGIBLE = 1e-6;

/** One table for each length of job, made when first asked for; the same every time. The last few are kept: what is learned moves it. */
const tables = new Map<number, GammaSmoothing>();
const KEPT_TABLES = 8;

function tableFor(jobHours: number): GammaSmoothing {
  const kept = tables.get(jobHours);
  if (kept) return kept;
  const table = gammaSmoothing(jobHours);
  tables.set(jobHours, table);
  const [oldest] = tables.keys();
  if (tables.size > KEPT_TABLES) tables.delete(oldest!);
  return table;
}

/**
 * The days on which a part reaches its limit: machine hours at limit carried over to the calendar by the machine's use.
 *   P(D <= d) = sum over seasons and rates of weight x integral F(x) gamma(x; shape rate S(from, d)/phi, scale phi) dx
 * 10, 50 and 90 % points to the whole day. Counted from the day the machine's hours were last known, not from
 * today: nobody has looked since, so the limit may lie before today. Use and wear are taken as independent.
 *
 * @param withUseShare true: also how much of the width is use, which takes the dates once more
 * @source own derivation: hours run are a gamma process in average days; see useOfYear.ts
 * @checked core/forecast/dateAtLimit.test.ts against brute-force integration and simulation
 */
export function dateAtLimit(question: DateQuestion, withUseShare = false): DateAtLimit {
  const table = tableFor(question.use.rate.jobHours ?? USUAL_JOB_HOURS);
  const atZero = question.chancePastBy(0);
  const chances = tabulate(table, question.chancePastBy);
  const by: HoursBy = { atZero, chanceAt: smoothed(table, chances, atZero), guess: guessOf(chances, question) };
  const days = datesBy(question, by, question.use.branches);
  const cautions: Caution[] = [];
  if (days.high === null) cautions.push({ code: 'date-beyond', facts: { years: BEYOND_YEARS } });
  const dayOf = (number: number | null) => (number === null ? null : dayFromNumber(number));
  return {
    low: dayOf(days.low),
    middle: dayOf(days.middle),
    high: dayOf(days.high),
    useShare: withUseShare ? shareOfUse(question, by, days) : null,
    cautions,
  };
}

/** Days of the three chances, counted since 1970; null: beyond what anybody plans. */
type DayNumbers = { low: number | null; middle: number | null; high: number | null };

/** Chances by hours ahead, and where a search for a day begins. */
type HoursBy = { atZero: number; chanceAt: (lnHours: number) => number; guess: Guess };

/** ln days in which the limit is reached as a normal: where its middle is looked for, and how wide it is [1 sd]. */
type Guess = { lnDays: number; sd: number };

/** From the hours at which the chance comes to 10 and 50 %, at the middle rate. */
function guessOf(chances: Float64Array, { use: { rate } }: DateQuestion): Guess {
  const middle = lnHoursOf(chances, 0.5);
  const ofHours = (middle - lnHoursOf(chances, 0.1)) / 1.28;
  const ofJobs = (rate.jobHours ?? USUAL_JOB_HOURS) / Math.exp(middle);
  const sd = Math.sqrt(ofHours * ofHours + rate.sdLnRate * rate.sdLnRate + ofJobs);
  return { lnDays: middle - Math.log(rate.hoursPerDay), sd: Math.min(2, Math.max(0.02, sd)) };
}

/** The rates that count, of one season, and the average days of it that had gone by the first day. */
type LikelyRates = { season: Season; since: number; lnHoursPerDay: Float64Array; weights: Float64Array };

/** Sorted out once of each machine's use: all its points ask from the same day. */
const likely = new WeakMap<readonly SeasonBranch[], { start: number; rates: readonly LikelyRates[] }>();

function likelyRates(branches: readonly SeasonBranch[], start: number): readonly LikelyRates[] {
  const known = likely.get(branches);
  if (known?.start === start) return known.rates;
  const rates = branches.flatMap(({ season, weight, rates: all }) => {
    const counted = all.filter((rate) => rate.weight * weight > NEGLIGIBLE);
    const lnHoursPerDay = Float64Array.from(counted, (rate) => rate.lnHoursPerDay);
    const weights = Float64Array.from(counted, (rate) => rate.weight * weight);
    return counted.length > 0 ? [{ season, since: seasonDaysSince1970(season, start), lnHoursPerDay, weights }] : [];
  });
  likely.set(branches, { start, rates });
  return rates;
}

function datesBy(question: DateQuestion, by: HoursBy, branches: readonly SeasonBranch[]): DayNumbers {
  const { atZero, chanceAt, guess } = by;
  const start = dayNumber(question.from);
  const seasons = likelyRates(branches, start);
  const chanceBy = (dayOf: number): number => {
    let sum = 0;
    for (const { season, since, lnHoursPerDay, weights } of seasons) {
      const lnAverageDays = Math.log(seasonDaysSince1970(season, dayOf) - since);
      for (let i = 0; i < weights.length; i++) sum += weights[i]! * chanceAt(lnHoursPerDay[i]! + lnAverageDays);
    }
    return sum;
  };
  const seen: SeenDay[] = [seenDay(start, atZero)];
  const point = (chance: number): number | null =>
    atZero >= chance
      ? dayNumber(dayBefore(question, chance))
      : firstDayPast(chance, chanceBy, guess, seen, start + BEYOND_DAYS);
  const middle = point(0.5);
  return { low: point(0.1), middle, high: point(0.9) };
}

/** A day whose chance is known, and that chance as a normal's quantile. */
type SeenDay = { dayOf: number; chance: number; score: number };

const seenDay = (dayOf: number, chance: number): SeenDay => ({
  dayOf,
  chance,
  score: normalScore(chance, SURE),
});

/** Chances nearer than this to 0 or 1 are told apart no more. */
const SURE = 1e-9;
/** A chance beyond this, as a normal's quantile, lies on no line with others. */
const SURE_SCORE = 5;
/** Between days so near the line itself is good to the day. */
const NEAR_DAYS = 8;
/** Chances nearer than this, as normal's quantiles, do not tell how steep their line is. */
const LEAST_RISE = 0.02;
/** From this step on every third halves, so that no shape of a chance can hold the search up. */
const HALVE_FROM = 6;

/**
 * The first whole day by which a rising chance has come to what is asked; null: not by the last. Over ln days a chance is nearly
 * straight in normal quantiles: it is looked for on the line through the nearest day seen, as steep as guessed, then as found;
 * what was seen is noted, for the next that asks.
 * @param seen in order of days; the chance of the first lies below
 */
function firstDayPast(
  chance: number,
  chanceBy: (dayOf: number) => number,
  guess: Guess,
  seen: SeenDay[],
  last: number,
): number | null {
  const first = seen[0]!.dayOf - 1;
  const goal = normalQuantile(chance);
  const lnDays = ({ dayOf }: SeenDay) => Math.log(dayOf - first);
  let { sd } = guess;
  for (let step = 1; ; step++) {
    const found = seen.findIndex((one) => one.chance >= chance);
    const at = found < 0 ? seen.length : found;
    const before = seen[at - 1]!;
    const by = seen[at];
    if (by && by.dayOf - before.dayOf <= NEAR_DAYS) {
      const share = (goal - before.score) / (by.score - before.score);
      return Math.ceil(before.dayOf + share * (by.dayOf - before.dayOf));
    }
    if (before.dayOf === last) return null;
    const nearest = by && by.score - goal < goal - before.score ? by : before;
    const isSure = Math.abs(nearest.score) > SURE_SCORE;
    let next = isSure ? guess.lnDays + goal * guess.sd : lnDays(nearest) + (goal - nearest.score) * sd;
    if (step >= HALVE_FROM && step % 3 === 0)
      next = 0.5 * (lnDays(before) + (by ? lnDays(by) : Math.log(last - first)));
    const dayOf = within(before.dayOf, by?.dayOf ?? last + 1, first + Math.round(Math.exp(next)));
    const now = seenDay(dayOf, chanceBy(dayOf));
    const rise = now.score - nearest.score;
    if (!isSure && Math.abs(rise) > LEAST_RISE) sd = (lnDays(now) - lnDays(nearest)) / rise;
    seen.splice(at, 0, now);
  }
}

/** A day between two; where it comes near to one of them, so far off that the two have it between them. */
function within(before: number, by: number, dayOf: number): number {
  const apart = Math.max(before + NEAR_DAYS, Math.min(by - NEAR_DAYS, dayOf));
  return Math.max(before + 1, Math.min(by - 1, apart));
}

/** A limit reached before the hours were last read: the day is known from the hours themselves. */
function dayBefore({ chancePastBy, leastHoursAhead, dayOf }: DateQuestion, chance: number): Day {
  let low = Math.min(0, leastHoursAhead);
  let high = 0;
  for (let step = 0; step < 40 && high - low > 0.5; step++) {
    const half = (low + high) / 2;
    if (chancePastBy(half) >= chance) high = half;
    else low = half;
  }
  return dayOf(high);
}

/** What the width loses once the rate is held at its middle and the season at the likely one. */
function shareOfUse(question: DateQuestion, by: HoursBy, days: DayNumbers): number | null {
  const { rate } = question.use;
  const rates = [{ lnHoursPerDay: Math.log(rate.hoursPerDay), weight: 1 }];
  const held = datesBy(question, by, [{ season: rate.season, weight: 1, rates }]);
  if (days.low === null || days.high === null || held.low === null || held.high === null) return null;
  const width = days.high - days.low;
  const widthHeld = held.high - held.low;
  return width > 0 ? Math.min(1, Math.max(0, 1 - widthHeld / width)) : 0;
}

/** Days without a meter reading after which dates are not relied on. */
const READ_WITHIN_DAYS = 365;

/**
 * A caution when a machine's hours have been read fewer than twice, or not for a year before the as-of day.
 * @returns null when dates may be relied on
 */
export function datesNotReliable(line: HoursLine): Caution | null {
  const read = line.nodes.filter(({ kind }) => kind === 'read');
  const days = new Set(read.map(({ takenOn }) => takenOn)).size;
  const last = read.at(-1)?.takenOn ?? null;
  if (days >= 2 && last !== null && dayNumber(line.asOf) - dayNumber(last) <= READ_WITHIN_DAYS) return null;
  return { code: 'dates-not-reliable', facts: { daysRead: days, lastReadOn: last } };
}
