import { type IntegerProgram, solveProgram } from '../integerProgram.ts';
import { IN_PLACE, lifeLeftAt, type PlanPart, type PlanYears, stayCost, worthOfLife } from './planPart.ts';

/** What the plan says of one machine. Costs are in bench hours. */
export type WintersPlan = {
  /** winters in which each part is renewed, by part id */
  renewIn: ReadonlyMap<number, readonly number[]>;
  visits: readonly PlannedVisit[];
  cost: PlanCost;
  /** true: no other choice of winters costs less */
  proven: boolean;
};

export type PlannedVisit = {
  winter: number;
  partIds: readonly number[];
  /** every take-off of the visit, once [h] */
  takeOffs: readonly { takeOff: string; hours: number }[];
  /** take-offs, own work of each part, and what a visit costs whatever is done [h] */
  hours: number;
};

export type PlanCost = {
  /** shared take-offs and what each visit costs [h] */
  stripDownHours: number;
  ownHours: number;
  partsCost: number;
  /** worth of the life not used up by parts taken out */
  lifeThrownAway: number;
  breakdown: number;
  /** what the plan is chosen by: strip-down, own work, parts and breakdowns, less what the life left at the end is worth */
  total: number;
};

/**
 * Chooses for each part of a machine the winters it is renewed in, so that work, parts, shared strip-down and expected
 * breakdowns cost least over the winters planned.
 *
 *   yes or no for each visit and each take-off of each winter; the stays of a part (put in at i, renewed at j) follow each
 *   other from now to the end, and a stay that ends in a renewal at j asks for a visit at j and for every take-off that
 *   reaches the part. Once visits and take-offs are settled each part goes its own cheapest way
 *
 * @source own formulation: a shortest way through the winters for each part, joined by take-offs paid once (fixed charges)
 */
export async function planWinters(parts: readonly PlanPart[], years: PlanYears): Promise<WintersPlan> {
  const model = modelOf(parts, years);
  const solved = await solveProgram(model.program);
  if (!solved) throw new Error('Broken invariant: leaving every part is a plan unless a part is held to a renewal');
  const isYes = (variable: number | undefined) => variable !== undefined && (solved.values[variable] ?? 0) > 0.5;
  const renewIn = new Map(
    parts.map((part) => {
      const isOpen = (winter: number) =>
        isYes(model.visit[winter]) && part.takeOffs.every((takeOff) => isYes(model.off.get(takeOff)?.[winter]));
      return [part.partId, cheapestWay(part, years, isOpen)];
    }),
  );
  return {
    renewIn,
    visits: visitsOf(parts, years, renewIn),
    cost: costOf(parts, years, renewIn),
    proven: solved.proven,
  };
}

/** Winters in which a part is renewed on its cheapest way from now to the end, where only some of them are open to it. */
function cheapestWay(part: PlanPart, years: PlanYears, isOpen: (winter: number) => boolean): number[] {
  type Way = { cost: number; renewals: readonly number[] };
  const to = new Map<number, Way>([[IN_PLACE, { cost: 0, renewals: [] }]]);
  const mayStop = (winter: number) => winter === years.winters || (isOpen(winter) && part.held?.get(winter) !== false);
  for (let winter = 0; winter <= years.winters; winter++) {
    if (!mayStop(winter)) continue;
    let best: Way | null = null;
    for (const [from, way] of to) {
      const isMissed = [...(part.held ?? [])].some(([at, held]) => held && at > from && at < winter);
      if (isMissed) continue;
      const { breakdown, work, lifeKept } = stayCost(part, years, from, winter);
      const cost = way.cost + breakdown + work - lifeKept;
      if (!best || cost < best.cost) best = { cost, renewals: [...way.renewals, winter] };
    }
    if (best) to.set(winter, best);
  }
  const way = to.get(years.winters);
  if (!way) throw new Error('Broken invariant: a part held to a winter finds it open');
  return way.renewals.slice(0, -1);
}

type Stay = { from: number; to: number; variable: number };

type Model = {
  program: IntegerProgram;
  /** of each winter: whether there is a visit, and whether each take-off is done */
  visit: readonly number[];
  off: ReadonlyMap<string, readonly number[]>;
};

function modelOf(parts: readonly PlanPart[], years: PlanYears): Model {
  const cost: number[] = [];
  const rules: IntegerProgram['rules'][number][] = [];
  const variable = (itsCost: number): number => cost.push(itsCost) - 1;
  const winters = Array.from({ length: years.winters }, (_, winter) => winter);

  const visit = winters.map(() => variable(years.visitHours));
  const takeOffs = [...new Set(parts.flatMap((part) => part.takeOffs))];
  const off = new Map(
    takeOffs.map((takeOff) => [takeOff, winters.map(() => variable(years.takeOffHours.get(takeOff) ?? 0))]),
  );
  for (const each of off.values())
    for (const winter of winters)
      rules.push({
        sum: [
          [each[winter]!, 1],
          [visit[winter]!, -1],
        ],
        is: '<=',
        than: 0,
      });

  for (const part of parts) {
    const own: Stay[] = [];
    for (const from of [IN_PLACE, ...winters])
      for (let to = from + 1; to <= years.winters; to++) {
        const { breakdown, work, lifeKept } = stayCost(part, years, from, to);
        own.push({ from, to, variable: variable(breakdown + work - lifeKept) });
      }
    const into = (winter: number) =>
      own.filter((stay) => stay.to === winter).map((stay) => [stay.variable, 1] as const);
    const outOf = (winter: number) =>
      own.filter((stay) => stay.from === winter).map((stay) => [stay.variable, -1] as const);
    rules.push({
      sum: own.filter(({ from }) => from === IN_PLACE).map((stay) => [stay.variable, 1]),
      is: '=',
      than: 1,
    });
    for (const winter of winters) {
      rules.push({ sum: [...into(winter), ...outOf(winter)], is: '=', than: 0 });
      rules.push({ sum: [...into(winter), [visit[winter]!, -1]], is: '<=', than: 0 });
      for (const takeOff of part.takeOffs)
        rules.push({ sum: [...into(winter), [off.get(takeOff)![winter]!, -1]], is: '<=', than: 0 });
      const held = part.held?.get(winter);
      if (held !== undefined) rules.push({ sum: into(winter), is: '=', than: held ? 1 : 0 });
    }
  }
  return { program: { cost, yesOrNo: new Set([...visit, ...off.values()].flat()), rules }, visit, off };
}

/** What a choice of winters costs, taken apart. */
export function costOf(
  parts: readonly PlanPart[],
  years: PlanYears,
  renewIn: ReadonlyMap<number, readonly number[]>,
): PlanCost {
  const sum = { ownHours: 0, partsCost: 0, lifeThrownAway: 0, breakdown: 0 };
  let lifeKept = 0;
  for (const part of parts) {
    let from = IN_PLACE;
    for (const to of [...(renewIn.get(part.partId) ?? []), years.winters]) {
      const stay = stayCost(part, years, from, to);
      sum.breakdown += stay.breakdown;
      lifeKept += stay.lifeKept;
      if (to < years.winters) {
        sum.ownHours += part.ownHours;
        sum.partsCost += part.partsCost;
        sum.lifeThrownAway += worthOfLife(part) * lifeLeftAt(part, from, to);
      }
      from = to;
    }
  }
  const visits = visitsOf(parts, years, renewIn);
  const stripDownHours = visits.reduce(
    (hours, visit) => hours + years.visitHours + visit.takeOffs.reduce((own, each) => own + each.hours, 0),
    0,
  );
  return {
    ...sum,
    stripDownHours,
    total: stripDownHours + sum.ownHours + sum.partsCost + sum.breakdown - lifeKept,
  };
}

function visitsOf(
  parts: readonly PlanPart[],
  years: PlanYears,
  renewIn: ReadonlyMap<number, readonly number[]>,
): PlannedVisit[] {
  return Array.from({ length: years.winters }, (_, winter) => winter).flatMap((winter) => {
    const renewed = parts.filter((part) => renewIn.get(part.partId)?.includes(winter));
    if (renewed.length === 0) return [];
    const takeOffs = [...new Set(renewed.flatMap((part) => part.takeOffs))].map((takeOff) => ({
      takeOff,
      hours: years.takeOffHours.get(takeOff) ?? 0,
    }));
    const hours =
      years.visitHours +
      takeOffs.reduce((sum, each) => sum + each.hours, 0) +
      renewed.reduce((sum, part) => sum + part.ownHours, 0);
    return [{ winter, partIds: renewed.map((part) => part.partId), takeOffs, hours }];
  });
}
