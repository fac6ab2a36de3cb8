import type { Caution } from '../outcome.ts';
import type { HoursLine } from '../reading/hoursLine.ts';
import { seasonDaysSince1970 } from '../reading/season.ts';
import { USUAL_JOB_HOURS } from '../reading/useRate.ts';
import { type Day, dayFromNumber, dayNumber } from '../units/day.ts';
import { type GammaSmoothing, gammaSmoothing, smoothed, tabulate } from './gammaSmoothing.ts';
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
  /** part of the width between low and high that comes from not knowing the machine's use; null: a bound is beyond */
  useShare: number | null;
  cautions: Caution[];
};

/** Nobody plans further [years]. */
export const BEYOND_YEARS = 40;
const BEYOND_DAYS = Math.round(BEYOND_YEARS * 365.25);

/** Rates less likely than this do not move a date. */
const NEGLIGIBLE = 1e-6;

/** One table for each length of job, made when first asked for; the same every time. */
const tables = new Map<number, GammaSmoothing>();

function tableFor(jobHours: number): GammaSmoothing {
  const table = tables.get(jobHours) ?? gammaSmoothing(jobHours);
  tables.set(jobHours, table);
  return table;
}

/**
 * The days on which a part reaches its limit: machine hours at limit carried over to the calendar by the machine's use.
 *   P(D <= d) = sum over seasons and rates of weight x integral F(x) gamma(x; shape rate S(from, d)/phi, scale phi) dx
 * 10, 50 and 90 % points by bisection on whole days. Counted from the day the machine's hours were last known, not from
 * today: nobody has looked since, so the limit may lie before today. Use and wear are taken as independent.
 *
 * @source own derivation: hours run are a gamma process in average days; see useOfYear.ts
 * @checked core/forecast/dateAtLimit.test.ts against brute-force integration and simulation
 */
export function dateAtLimit(question: DateQuestion): DateAtLimit {
  const table = tableFor(question.use.rate.jobHours ?? USUAL_JOB_HOURS);
  const atZero = question.chancePastBy(0);
  const chanceAt = smoothed(table, tabulate(table, question.chancePastBy), atZero);
  const days = datesBy(question, chanceAt, atZero, question.use.branches);
  const cautions: Caution[] = [];
  if (days.high === null) cautions.push({ code: 'date-beyond', facts: { years: BEYOND_YEARS } });
  return { ...days, useShare: shareOfUse(question, chanceAt, atZero, days), cautions };
}

type Dates = { low: Day | null; middle: Day | null; high: Day | null };

function datesBy(
  question: DateQuestion,
  chanceAt: (lnHours: number) => number,
  atZero: number,
  branches: readonly SeasonBranch[],
): Dates {
  const start = dayNumber(question.from);
  const kept = branches.map(({ season, weight, rates }) => ({
    season,
    since: seasonDaysSince1970(season, start),
    rates: rates.map((rate) => ({ ...rate, weight: rate.weight * weight })).filter((rate) => rate.weight > NEGLIGIBLE),
  }));
  const chanceBy = (dayOf: number): number => {
    let sum = 0;
    for (const { season, since, rates } of kept) {
      const lnAverageDays = Math.log(seasonDaysSince1970(season, dayOf) - since);
      for (const { lnHoursPerDay, weight } of rates) sum += weight * chanceAt(lnHoursPerDay + lnAverageDays);
    }
    return sum;
  };
  const point = (chance: number): Day | null => {
    if (atZero >= chance) return dayBefore(question, chance);
    let before = start;
    let by = start + BEYOND_DAYS;
    if (chanceBy(by) < chance) return null;
    while (by - before > 1) {
      const half = Math.floor((before + by) / 2);
      if (chanceBy(half) >= chance) by = half;
      else before = half;
    }
    return dayFromNumber(by);
  };
  return { low: point(0.1), middle: point(0.5), high: point(0.9) };
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
function shareOfUse(
  question: DateQuestion,
  chanceAt: (lnHours: number) => number,
  atZero: number,
  days: Dates,
): number | null {
  const { rate } = question.use;
  const rates = [{ lnHoursPerDay: Math.log(rate.hoursPerDay), weight: 1 }];
  const held = datesBy(question, chanceAt, atZero, [{ season: rate.season, weight: 1, rates }]);
  if (!days.low || !days.high || !held.low || !held.high) return null;
  const width = dayNumber(days.high) - dayNumber(days.low);
  const widthHeld = dayNumber(held.high) - dayNumber(held.low);
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
