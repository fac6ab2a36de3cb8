import type { WeekHours, WeeksShop, WeekVisit } from '#core/plan/weeks/weeksShop.ts';
import { seededDice } from './seededDice.ts';

/** What an invented shop of weeks is like. */
export type ShopOfWeeks = {
  seed: number;
  visits: number;
  weeks: number;
  /** all work as a share of all bench hours */
  filled: number;
  /** share of its bench hours a week may be overloaded by */
  overload: number;
  /** places gone to, and share of the visits done there */
  places: number;
  atPlaces: number;
};

/**
 * An invented shop: visits of 3 to 30 h, a quarter waiting for parts, half with a farmer away some weeks, four in ten
 * promised, one in ten agreed, half planned before, a few in the yard already, long ones may be split in two. Two weeks are
 * holidays, in some a fitter is off.
 */
export function aShopOfWeeks(of: ShopOfWeeks): WeeksShop {
  const { uniform } = seededDice(of.seed);
  const upTo = (most: number) => Math.floor(uniform() * most);
  const half = (hours: number) => Math.round(2 * hours) / 2;
  const open: number[] = Array.from({ length: of.weeks }, (_, week) =>
    week === Math.floor(of.weeks / 2) || week === Math.floor(of.weeks / 2) + 1 ? 0 : uniform() < 0.2 ? 2 : 3,
  );
  const places = Array.from({ length: of.places }, (_, place) => ({
    name: `Place ${place + 1}`,
    setUpHours: half(1.5 + 3 * uniform()),
    // a farm lets its machines go in the same weeks
    away: new Set(Array.from({ length: 4 }, () => upTo(of.weeks))),
  }));
  const visits = Array.from({ length: of.visits }, (_, number): WeekVisit => {
    const place = uniform() < of.atPlaces ? places[upTo(of.places)] : undefined;
    const hours = half(3 + 27 * uniform() ** 2);
    const earliestWeek = uniform() < 0.25 ? upTo(of.weeks / 2) : 0;
    const awayFrom = uniform() < 0.5 ? upTo(of.weeks) : null;
    const away = awayFrom === null ? [] : Array.from({ length: 1 + upTo(4) }, (_, k) => awayFrom + k);
    const alreadyIn = place === undefined && uniform() < 0.04;
    const promised = uniform() < 0.4 ? earliestWeek + 2 + upTo(of.weeks - earliestWeek - 2) : null;
    const openWeek = () => {
      for (;;) {
        const week = upTo(of.weeks);
        if (open[week]! > 0) return week;
      }
    };
    const held = uniform() < 0.1 ? { week: openWeek(), pieces: 1 } : null;
    return {
      visitId: `${String(number + 1).padStart(3, '0')}`,
      hours,
      earliestWeek: held ? 0 : earliestWeek,
      awayWeeks: held ? new Set() : place ? place.away : new Set(away),
      promisedWeek: promised,
      risk: half(2 + 40 * uniform() ** 3),
      alreadyIn,
      held,
      lastPlannedWeek: !held && uniform() < 0.5 ? openWeek() : null,
      mostPieces: hours > 18 ? 2 : 1,
      farmCall: place?.name ?? null,
    };
  });
  const work = visits.reduce((sum, { hours }) => sum + hours, 0);
  const fitters = open.reduce((sum, each) => sum + each, 0);
  const hoursOfFitter = half(work / of.filled / fitters);
  const weeks = open.map((working): WeekHours => {
    const benchHours = working * hoursOfFitter;
    return { benchHours, mostOverload: of.overload * benchHours };
  });
  return { visits, weeks, setUpHours: new Map(places.map(({ name, setUpHours }) => [name, setUpHours])) };
}

/** The three shops whose gap is stated: 200 visits in 20 weeks each. */
export const statedShops = [
  { title: 'tight', seed: 1, visits: 200, weeks: 20, filled: 0.95, overload: 0.1, places: 0, atPlaces: 0 },
  { title: 'over-full', seed: 2, visits: 200, weeks: 20, filled: 1.15, overload: 0.1, places: 0, atPlaces: 0 },
  { title: 'farm calls', seed: 3, visits: 200, weeks: 20, filled: 0.9, overload: 0.1, places: 15, atPlaces: 0.35 },
] as const satisfies readonly (ShopOfWeeks & { title: string })[];
