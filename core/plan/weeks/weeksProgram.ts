import type { IntegerProgram } from '../integerProgram.ts';
import { type Rank, SearchChoice, type SearchShop, UNDONE } from './weekSearch.ts';

/** Weeks of a shop as an integer program, and which variable says what. */
export type WeeksProgram = {
  rules: IntegerProgram['rules'];
  yesOrNo: ReadonlySet<number>;
  /** what each variable does of harm and of trouble */
  harm: readonly number[];
  trouble: readonly number[];
  /** variable of each placement of each visit that is free, by its number */
  placed: ReadonlyMap<number, readonly number[]>;
  /** what the visits that are not free do by themselves */
  standing: Rank;
};

/**
 * The weeks as an integer program, some visits free and the others standing where they are:
 *   each free visit has one of its placements or is undone
 *   work + way of a week <= bench hours + overload, overload <= what is allowed
 *   a visit of a place asks for the way there; all free work of a place in a week fits beside it
 *
 * @param standing the others; none of the free ones is placed in it
 * @source own formulation: assignment with fixed charges; the last rule, tighter than its parts, after Padberg, Van Roy and
 *   Wolsey, Valid linear inequalities for fixed charge problems, Operations Research 33 (1985)
 */
export function weeksProgram(shop: SearchShop, free: readonly number[], standing: SearchChoice): WeeksProgram {
  const harm: number[] = [];
  const trouble: number[] = [];
  const yesOrNo = new Set<number>();
  const rules: IntegerProgram['rules'][number][] = [];
  const variable = (ofHarm: number, ofTrouble: number, whole = true): number => {
    trouble.push(ofTrouble);
    const number = harm.push(ofHarm) - 1;
    if (whole) yesOrNo.add(number);
    return number;
  };
  type Takes = [variable: number, hours: number];
  const inWeek = shop.weeks.map(() => [] as Takes[]);
  const atPlace = shop.places.map(() => shop.weeks.map(() => [] as Takes[]));
  const ways = new Map<string, number>();
  /** variable of the way to a place in a week; null: it is gone to anyway */
  const wayTo = (place: number, week: number): number | null => {
    if (standing.goesTo(place, week)) return null;
    const key = `${place} ${week}`;
    const { setUpHours } = shop.places[place]!;
    const way = ways.get(key) ?? variable(0, setUpHours);
    if (!ways.has(key)) inWeek[week]!.push([way, setUpHours]);
    ways.set(key, way);
    return way;
  };

  const placed = new Map<number, readonly number[]>();
  for (const number of free) {
    const visit = shop.visits[number]!;
    const own = visit.placements.map((placement) => variable(placement.harm, placement.trouble));
    placed.set(number, own);
    const undone = visit.held ? [] : [variable(visit.risk + shop.prices.undone, 0)];
    rules.push({ sum: [...own, ...undone].map((one) => [one, 1]), is: '=', than: 1 });
    const place = shop.placeOf[number]!;
    shop.weeks.forEach((_, week) => {
      const here = own.flatMap((one, k): Takes[] => {
        const at = visit.placements[k]!;
        return at.week <= week && week < at.week + at.pieces ? [[one, visit.hours / at.pieces]] : [];
      });
      if (here.length === 0) return;
      inWeek[week]!.push(...here);
      if (place < 0) return;
      atPlace[place]![week]!.push(...here);
      const way = wayTo(place, week);
      if (way !== null) rules.push({ sum: [...here.map(([one]) => [one, 1] as const), [way, -1]], is: '<=', than: 0 });
    });
  }

  let standingOverload = 0;
  shop.weeks.forEach(({ benchHours, mostOverload }, week) => {
    const load = standing.loadOf(week);
    if (inWeek[week]!.length === 0) {
      standingOverload += Math.max(0, load - benchHours);
      return;
    }
    // what stands overloads it already: that much at least
    const over = mostOverload > 0 ? [variable(shop.prices.overloadHour, 0, false)] : [];
    const takes = [...inWeek[week]!, ...over.map((one) => [one, -1] as const)];
    rules.push({ sum: takes, is: '<=', than: benchHours - load });
    for (const one of over) rules.push({ sum: [[one, 1]], is: '<=', than: mostOverload });
    shop.places.forEach(({ setUpHours }, place) => {
      const work = atPlace[place]![week]!;
      const way = ways.get(`${place} ${week}`);
      if (work.length < 2 || way === undefined) return;
      const room = benchHours + mostOverload - load - setUpHours;
      rules.push({ sum: [...work, [way, -room]], is: '<=', than: 0 });
    });
  });
  return {
    rules,
    yesOrNo,
    harm,
    trouble,
    placed,
    standing: standingRank(shop, free, standing, standingOverload),
  };
}

/** Harm and trouble of what stands: all of it less what the program counts itself, the free visits undone and the overload. */
function standingRank(shop: SearchShop, free: readonly number[], standing: SearchChoice, overload: number): Rank {
  const { prices, visits, weeks } = shop;
  const { harm, trouble } = standing.rank;
  const undone = free.reduce((sum, number) => sum + visits[number]!.risk + prices.undone, 0);
  const all = weeks.reduce((sum, { benchHours }, week) => sum + Math.max(0, standing.loadOf(week) - benchHours), 0);
  return { harm: harm - undone - prices.overloadHour * (all - overload), trouble };
}

/** The whole shop as a program: every visit free. */
export const wholeProgram = (shop: SearchShop): WeeksProgram =>
  weeksProgram(shop, [...shop.visits.keys()], new SearchChoice(shop));

/** Where the program's values put the free visits, over those that stand. */
export function placedBy({ placed }: WeeksProgram, values: readonly number[], into: SearchChoice): void {
  for (const [number, own] of placed) {
    const at = own.findIndex((variable) => values[variable]! > 0.5);
    into.put(number, at < 0 ? UNDONE : at);
  }
}
