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
 *   yes or no for each part and each stay (put in at i, renewed at j): the stays of a part follow each other from now to
 *   the end; a stay that ends in a renewal at j asks for a visit at j and for every take-off that reaches the part
 *
 * @source own formulation: a shortest way through the winters for each part, joined by take-offs paid once (fixed charges)
 */
export async function planWinters(parts: readonly PlanPart[], years: PlanYears): Promise<WintersPlan> {
  const model = modelOf(parts, years);
  const solved = await solveProgram(model.program);
  if (!solved) throw new Error('Broken invariant: leaving every part is a plan unless a part is held to a renewal');
  const renewIn = new Map(
    parts.map((part, place) => [
      part.partId,
      model.stays
        .filter((stay) => stay.part === place && stay.to < years.winters && (solved.values[stay.variable] ?? 0) > 0.5)
        .map((stay) => stay.to)
        .sort((a, b) => a - b),
    ]),
  );
  return {
    renewIn,
    visits: visitsOf(parts, years, renewIn),
    cost: costOf(parts, years, renewIn),
    proven: solved.proven,
  };
}

type Stay = { part: number; from: number; to: number; variable: number };

function modelOf(parts: readonly PlanPart[], years: PlanYears): { program: IntegerProgram; stays: Stay[] } {
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

  const stays: Stay[] = [];
  parts.forEach((part, place) => {
    const own: Stay[] = [];
    for (const from of [IN_PLACE, ...winters])
      for (let to = from + 1; to <= years.winters; to++) {
        const { breakdown, work, lifeKept } = stayCost(part, years, from, to);
        own.push({ part: place, from, to, variable: variable(breakdown + work - lifeKept) });
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
    stays.push(...own);
  });
  return { program: { cost, yesOrNo: new Set(cost.keys()), rules }, stays };
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
