import type { HoursSource } from '../shop/machineLife.ts';
import { addDays, type Day, dayNumber } from '../units/day.ts';
import type { HoursLine } from './hoursLine.ts';
import { machineHoursOn } from './machineHours.ts';
import { type Season, seasonDays } from './season.ts';
import { USUAL_JOB_HOURS } from './useRate.ts';

/** Hours that a machine without a meter has gathered since the step or dial row before; between them straight. Plain data. */
export type GatheredHours = {
  takenOn: Day;
  /** the first step of a source: after the rows of its day; any other goes before them */
  begins: boolean;
  gatheredHours: number;
  /** variance that ends with the next step: the puller's hours of this day are estimated [h^2] */
  ownVariance: number;
  /** variance that stays with all later hours [h^2] */
  driftVariance: number;
};

/** The machine that pulls: its hours, and how many it runs a year. */
export type PullerHours = { line: HoursLine; hoursPerYear: number };

/** What gathered hours are worked out from, besides the machine's own sources. */
export type GatherFrom = {
  /** days of the machine's own dial rows: each begins anew */
  ownDays: readonly Day[];
  /** the machine that pulls it; undefined: it is not known, and adds nothing */
  pullerOf(pullerId: number): PullerHours | undefined;
  season: Season;
  jobHours?: number;
};

/** One year's hours by a share or an estimate are out by this part of them (1 sd) when nobody says. Common practice, no source. */
export const USUAL_SOURCE_ERROR = 0.25;

const DAYS_A_YEAR = 365;

/**
 * Hours of a machine without a meter, step by step up to a day: a share of its puller's, or so many a year.
 *   pulled: h = s (P(b) - P(a)),  var = s^2 (the puller's) + (e^2) h Y,   Y = s x the puller's hours a year
 *   yearly: h = R S(a, b) / 365,  var = phi h + (e^2) h R
 * e is the error of one year's hours: each year's share is taken to differ by itself from the one said. What is wrong with
 * a share throughout makes past and coming hours longer alike, and so moves no date.
 * Each source begins at nought on its day; steps lie on the puller's own readings, so that no share is taken of a bend.
 *
 * @param sources sorted by day
 * @param asOf last day looked at
 * @returns steps in order of day; gathered hours are never negative
 * @source own derivation: sums of independent years
 * @checked core/reading/gatheredHours.test.ts
 */
export function gatheredHours(sources: readonly HoursSource[], asOf: Day, from: GatherFrom): GatheredHours[] {
  return sources.flatMap((source, place) => {
    const next = sources[place + 1]?.from;
    const until = next !== undefined && next < asOf ? next : asOf;
    if (source.kind === 'own' || source.from > until) return [];
    return source.kind === 'pulled' ? pulled(source, until, from) : yearly(source, until, from);
  });
}

const begins = (on: Day, driftVariance = 0): GatheredHours => ({
  takenOn: on,
  begins: true,
  gatheredHours: 0,
  ownVariance: 0,
  driftVariance,
});

function pulled(
  source: Extract<HoursSource, { kind: 'pulled' }>,
  until: Day,
  { ownDays, pullerOf }: GatherFrom,
): GatheredHours[] {
  const puller = pullerOf(source.pullerId);
  const start = puller && machineHoursOn(puller.line, source.from);
  if (!puller || !start) return [begins(source.from)];
  const { share } = source;
  const readOn = puller.line.nodes.map(({ takenOn }) => takenOn);
  const spread = (source.errorShare ?? USUAL_SOURCE_ERROR) ** 2 * share * puller.hoursPerYear;
  // what is not known of the puller's hours on the first day stays with all that follow
  const steps = [begins(source.from, share ** 2 * start.ownVariance)];
  let before = start;
  for (const takenOn of daysBetween(source.from, until, [...readOn, ...ownDays])) {
    const now = machineHoursOn(puller.line, takenOn)!;
    const hours = share * Math.max(0, now.hours - before.hours);
    const drift = Math.max(0, now.driftVariance - before.driftVariance);
    steps.push({
      takenOn,
      begins: false,
      gatheredHours: hours,
      ownVariance: share ** 2 * now.ownVariance,
      driftVariance: share ** 2 * drift + spread * hours,
    });
    before = now;
  }
  return steps;
}

function yearly(
  source: Extract<HoursSource, { kind: 'yearly' }>,
  until: Day,
  { ownDays, season, jobHours }: GatherFrom,
): GatheredHours[] {
  const { hoursPerYear } = source;
  const spread = (jobHours ?? USUAL_JOB_HOURS) + (source.errorShare ?? USUAL_SOURCE_ERROR) ** 2 * hoursPerYear;
  const steps = [begins(source.from)];
  let before = source.from;
  for (const takenOn of daysBetween(source.from, until, [...monthStarts(source.from, until), ...ownDays])) {
    const hours = Math.max(0, (hoursPerYear / DAYS_A_YEAR) * seasonDays(season, before, takenOn));
    steps.push({
      takenOn,
      begins: false,
      gatheredHours: hours,
      ownVariance: 0,
      driftVariance: spread * hours,
    });
    before = takenOn;
  }
  return steps;
}

/** First days of the months between two days: within a month a season does not change. */
function monthStarts(from: Day, until: Day): Day[] {
  const starts: Day[] = [];
  const firstOfMonth = (on: Day) => addDays(on, 1 - Number(on.slice(8)));
  for (let at = firstOfMonth(addDays(from, 31)); at < until; at = firstOfMonth(addDays(at, 31))) starts.push(at);
  return starts;
}

/** The days given that lie after the first and before the last, and the last; each once, in order. */
const daysBetween = (from: Day, until: Day, days: readonly Day[]): Day[] =>
  [...new Set([...days, until])].filter((on) => on > from && on <= until).sort((a, b) => dayNumber(a) - dayNumber(b));
