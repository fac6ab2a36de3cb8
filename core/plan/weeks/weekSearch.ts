import { assertInvariant } from '../../outcome.ts';
import {
  heldWithin,
  type OpenPlacement,
  openPlacements,
  type WeekPrices,
  type WeeksShop,
  type WeekVisit,
} from './weeksShop.ts';
import type { WeekChoice } from './weighWeeks.ts';
import { inOrder } from './weighWeeks.ts';

/** A placement with what it costs by itself, overload and way apart. */
export type PricedPlacement = OpenPlacement & { harm: number; trouble: number };

export type SearchVisit = WeekVisit & { placements: readonly PricedPlacement[] };

/** The shop ready to be searched: visits in order of their ids, places in order of their names. */
export type SearchShop = {
  visits: readonly SearchVisit[];
  weeks: readonly { benchHours: number; mostOverload: number }[];
  places: readonly { place: string; setUpHours: number }[];
  /** place of each visit, by its number; -1: in the shop */
  placeOf: readonly number[];
  /** numbers of the visits that are not held */
  free: readonly number[];
  prices: WeekPrices;
};

export function searchShop(shop: WeeksShop, prices: WeekPrices): SearchShop {
  assertInvariant(
    new Set(shop.visits.map(({ visitId }) => visitId)).size === shop.visits.length,
    'visits have their own ids',
  );
  for (const { held } of shop.visits)
    assertInvariant(
      !held || (held.week >= 0 && held.week < shop.weeks.length),
      'what is held begins in a week that is planned',
    );
  const visits = inOrder(shop.visits).map((visit) => ({
    ...visit,
    placements: openPlacements(visit, shop.weeks.length).map((open) => ({
      ...open,
      harm: open.weeksLate * prices.weekLate,
      trouble: open.movedBy > 0 ? prices.moved + open.movedBy * prices.movedWeek : 0,
    })),
  }));
  const names = [...new Set(visits.flatMap(({ farmCall }) => (farmCall === null ? [] : [farmCall])))].sort();
  return {
    visits,
    weeks: weeksWithHeld(shop),
    places: names.map((place) => ({ place, setUpHours: shop.setUpHours.get(place) ?? 0 })),
    placeOf: visits.map(({ farmCall }) => (farmCall === null ? -1 : names.indexOf(farmCall))),
    free: [...visits.keys()].filter((number) => !visits[number]!.held),
    prices,
  };
}

/** What is held may overload a week further than the shop allows: then that far, and no further. */
function weeksWithHeld({ visits, weeks, setUpHours }: WeeksShop): SearchShop['weeks'] {
  return weeks.map(({ benchHours, mostOverload }, week) => {
    const held = visits.flatMap((visit) => {
      const at = visit.held && heldWithin(visit.held, weeks.length);
      return at && at.week <= week && week < at.week + at.pieces ? [{ ...visit, hours: visit.hours / at.pieces }] : [];
    });
    const places = new Set(held.flatMap(({ farmCall }) => (farmCall === null ? [] : [farmCall])));
    const hours =
      held.reduce((sum, visit) => sum + visit.hours, 0) +
      [...places].reduce((sum, place) => sum + (setUpHours.get(place) ?? 0), 0);
    return { benchHours, mostOverload: Math.max(benchHours > 0 ? mostOverload : 0, hours - benchHours) };
  });
}

/** Harm and trouble, harm first: what plans are compared by. */
export type Rank = { harm: number; trouble: number };

/** Hours and costs nearer to each other than this are even: more than what rules are let off by. */
const EVEN = 1e-5;

export const isBetter = (one: Rank, than: Rank): boolean =>
  one.harm < than.harm - EVEN || (one.harm < than.harm + EVEN && one.trouble < than.trouble - EVEN);

/** A choice of weeks that is changed one visit at a time. Visits are named by their numbers. */
export class SearchChoice {
  readonly shop: SearchShop;
  /** number of the placement of each visit; UNDONE: none */
  readonly at: Int16Array;
  private readonly load: Float64Array;
  /** visits of each place in each week */
  private readonly calls: Int16Array;
  private harm = 0;
  private trouble = 0;

  constructor(shop: SearchShop) {
    this.shop = shop;
    this.at = new Int16Array(shop.visits.length).fill(UNDONE);
    this.load = new Float64Array(shop.weeks.length);
    this.calls = new Int16Array(shop.places.length * shop.weeks.length);
    for (const visit of shop.visits) this.harm += visit.risk + shop.prices.undone;
  }

  get rank(): Rank {
    return { harm: this.harm, trouble: this.trouble };
  }

  /** visits that may be moved, by number */
  get freeVisits(): readonly number[] {
    return this.shop.free;
  }

  /** Whether a visit is undone, late, moved, on the road or in an overloaded week: only then is anything to gain by it. */
  costsAnything(visit: number): boolean {
    const { shop } = this;
    const at = shop.visits[visit]!.placements[this.at[visit]!];
    if (!at || at.harm > 0 || at.trouble > 0 || shop.placeOf[visit]! >= 0) return true;
    for (let week = at.week; week < at.week + at.pieces; week++)
      if (this.load[week]! > shop.weeks[week]!.benchHours + EVEN) return true;
    return false;
  }

  loadOf(week: number): number {
    return this.load[week]!;
  }

  goesTo(place: number, week: number): boolean {
    return this.calls[place * this.shop.weeks.length + week]! > 0;
  }

  copy(): SearchChoice {
    const copy = new SearchChoice(this.shop);
    this.at.forEach((placement, visit) => {
      copy.put(visit, placement);
    });
    return copy;
  }

  /** Puts a visit at another of its placements, or leaves it undone. */
  put(visit: number, to: number): void {
    if (this.at[visit] === to) return;
    this.change(visit, this.at[visit]!, -1);
    this.at[visit] = to;
    this.change(visit, to, 1);
  }

  private change(visit: number, placement: number, sign: 1 | -1): void {
    const { shop } = this;
    const its = shop.visits[visit]!;
    if (placement === UNDONE) {
      this.harm += sign * (its.risk + shop.prices.undone);
      return;
    }
    const { week: first, pieces, harm, trouble } = its.placements[placement]!;
    this.harm += sign * harm;
    this.trouble += sign * trouble;
    const place = shop.placeOf[visit]!;
    for (let week = first; week < first + pieces; week++) {
      let hours = its.hours / pieces;
      if (place >= 0) {
        const call = place * shop.weeks.length + week;
        const before = this.calls[call]!;
        this.calls[call] = before + sign;
        if (before === (sign > 0 ? 0 : 1)) {
          const { setUpHours } = shop.places[place]!;
          hours += setUpHours;
          this.trouble += sign * setUpHours;
        }
      }
      const { benchHours } = shop.weeks[week]!;
      const was = Math.max(0, this.load[week]! - benchHours);
      this.load[week] = this.load[week]! + sign * hours;
      this.harm += shop.prices.overloadHour * (Math.max(0, this.load[week]! - benchHours) - was);
    }
  }

  /** Whether a visit, now undone, may be put at a placement within the overload allowed. */
  hasRoom(visit: number, placement: number): boolean {
    const { shop } = this;
    const its = shop.visits[visit]!;
    if (its.held) return true;
    const { week: first, pieces } = its.placements[placement]!;
    const place = shop.placeOf[visit]!;
    for (let week = first; week < first + pieces; week++) {
      const goesAnyway = place < 0 || this.calls[place * shop.weeks.length + week]! > 0;
      const hours = its.hours / pieces + (goesAnyway ? 0 : shop.places[place]!.setUpHours);
      const { benchHours, mostOverload } = shop.weeks[week]!;
      if (this.load[week]! + hours > benchHours + mostOverload + EVEN) return false;
    }
    return true;
  }

  choice(): WeekChoice {
    return new Map(
      this.shop.visits.flatMap((visit, number) => {
        const at = visit.placements[this.at[number]!];
        return at ? [[visit.visitId, { week: at.week, pieces: at.pieces }] as const] : [];
      }),
    );
  }
}

export const UNDONE = -1;
