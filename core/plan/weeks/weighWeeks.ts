import {
  type OpenPlacement,
  openPlacements,
  type Placement,
  placementOf,
  type WeekPrices,
  type WeeksShop,
} from './weeksShop.ts';

/** Where each visit is put, by visit id; one that is not named is left undone. */
export type WeekChoice = ReadonlyMap<string, Placement>;

export type PlacedVisit = OpenPlacement & { visitId: string };

export type LoadedWeek = {
  week: number;
  benchHours: number;
  /** all of its work, way and setting up included [h] */
  hours: number;
  /** way and setting up [h] */
  setUpHours: number;
  /** hours beyond its bench hours; 0 or more */
  overload: number;
  visitIds: readonly string[];
  /** places gone to in it */
  farmCalls: readonly string[];
};

/** What a plan of weeks is judged by, in bench hours: first harm, and among plans that do no more of it, trouble. */
export type WeekCost = {
  /** overload, lateness and undone work at their prices */
  harm: number;
  /** what is told otherwise than before, at its price, and hours of way and setting up */
  trouble: number;
  overloadHours: number;
  weeksLate: number;
  /** visits in another week than before */
  moved: number;
  setUpHours: number;
  /** what the visits left undone risk [h] */
  undoneRisk: number;
};

export type WeighedWeeks = {
  placed: readonly PlacedVisit[];
  unplaced: readonly UnplacedVisit[];
  weeks: readonly LoadedWeek[];
  cost: WeekCost;
};

export type UnplacedVisit = {
  visitId: string;
  /** what leaving it undone costs [h] */
  risk: number;
  /** placements open to it, hours apart; 0: its farmer is away or its parts are not in all these weeks */
  weeksOpen: number;
};

/**
 * What a choice of weeks comes to: the load of each week, what is late, moved or undone, and what it all costs.
 *   harm = overload h x price + weeks late x price + for each visit undone (its risk + price)
 *   trouble = visits moved x price + weeks moved x price + h of way and setting up
 * @source own definition
 */
export function weighWeeks(shop: WeeksShop, choice: WeekChoice, prices: WeekPrices): WeighedWeeks {
  const placed: PlacedVisit[] = [];
  const unplaced: UnplacedVisit[] = [];
  const loads = shop.weeks.map(() => ({ hours: 0, visitIds: [] as string[], farmCalls: new Set<string>() }));
  for (const visit of inOrder(shop.visits)) {
    const at = choice.get(visit.visitId);
    if (!at) {
      const weeksOpen = openPlacements(visit, shop.weeks.length).length;
      unplaced.push({ visitId: visit.visitId, risk: visit.risk, weeksOpen });
      continue;
    }
    placed.push({ visitId: visit.visitId, ...placementOf(visit, at) });
    for (let week = at.week; week < Math.min(at.week + at.pieces, loads.length); week++) {
      const load = loads[week]!;
      load.hours += visit.hours / at.pieces;
      load.visitIds.push(visit.visitId);
      if (visit.farmCall !== null) load.farmCalls.add(visit.farmCall);
    }
  }
  const weeks = loads.map(({ hours, visitIds, farmCalls }, week) => {
    const { benchHours } = shop.weeks[week]!;
    const places = [...farmCalls].sort();
    const setUpHours = places.reduce((sum, place) => sum + (shop.setUpHours.get(place) ?? 0), 0);
    const all = hours + setUpHours;
    const overload = beyond(all - benchHours);
    return { week, benchHours, hours: all, setUpHours, overload, visitIds, farmCalls: places };
  });
  return { placed, unplaced, weeks, cost: costOf(placed, unplaced, weeks, prices) };
}

function costOf(
  placed: readonly PlacedVisit[],
  unplaced: readonly UnplacedVisit[],
  weeks: readonly LoadedWeek[],
  prices: WeekPrices,
): WeekCost {
  const overloadHours = sumOf(weeks.map(({ overload }) => overload));
  const weeksLate = sumOf(placed.map((visit) => visit.weeksLate));
  const moved = placed.filter(({ movedBy }) => movedBy > 0).length;
  const weeksMoved = sumOf(placed.map(({ movedBy }) => movedBy));
  const setUpHours = sumOf(weeks.map((week) => week.setUpHours));
  const undoneRisk = sumOf(unplaced.map(({ risk }) => risk));
  return {
    harm:
      overloadHours * prices.overloadHour + weeksLate * prices.weekLate + undoneRisk + unplaced.length * prices.undone,
    trouble: moved * prices.moved + weeksMoved * prices.movedWeek + setUpHours,
    overloadHours,
    weeksLate,
    moved,
    setUpHours,
    undoneRisk,
  };
}

/** Hours that meet a week's on paper do so here: what is over by less than a second is not over. */
const beyond = (hours: number): number => (hours > 2e-4 ? hours : 0);

const sumOf = (numbers: readonly number[]): number => numbers.reduce((sum, each) => sum + each, 0);

/** Visits by their ids, whatever the order they came in. */
export const inOrder = <Visit extends { visitId: string }>(visits: readonly Visit[]): Visit[] =>
  [...visits].sort((one, other) => (one.visitId < other.visitId ? -1 : 1));
