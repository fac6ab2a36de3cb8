import { atOwnMiddle, byPlan, everyHours, whenBroken } from './policies.ts';
import { costOfRun, type RunTally, shopRun } from './shopRun.ts';
import { pricesOf, trueShop } from './trueShop.ts';

/** Breakdown cost [bench h] and share of the strip-down in a job that renews everything. */
export type Cell = { breakdownCost: number; stripDownShare: number };

export const CELLS: readonly Cell[] = [10, 30, 100].flatMap((breakdownCost) =>
  [0.25, 0.5, 0.75].map((stripDownShare) => ({ breakdownCost, stripDownShare })),
);

export type CellResult = Cell & {
  /** cost of each policy, all shops together [bench h] */
  whenBroken: number;
  everyHours: number;
  atOwnMiddle: number;
  plan: number;
  /** plan as a share of the best of the three others */
  ofBest: number;
  breakdowns: { whenBroken: number; everyHours: number; atOwnMiddle: number; plan: number };
  /** of the plan's own forecasts: share of sizes found inside their 80 % band, and how many */
  cover: number;
  found: number;
};

/** The plan of winters against three rules of thumb, on the same shops, cell by cell. */
export async function winterCells(cells: readonly Cell[], seeds: readonly number[], machines: number, winters = 20) {
  const shops = seeds.map((seed) => trueShop(seed, machines, winters));
  const free = pricesOf(0, 0);
  const others: RunTally[][] = [];
  // what these do does not depend on prices
  for (const policy of [whenBroken, everyHours, atOwnMiddle])
    others.push(await Promise.all(shops.map((shop) => shopRun(shop, policy, free))));
  const results: CellResult[] = [];
  for (const cell of cells) {
    const prices = pricesOf(cell.breakdownCost, cell.stripDownShare);
    const plans: RunTally[] = [];
    for (const shop of shops) plans.push(await shopRun(shop, byPlan, prices));
    const cost = (runs: readonly RunTally[]) => runs.reduce((sum, run) => sum + costOfRun(run, prices), 0);
    const all = (what: 'breakdowns' | 'found' | 'inside', runs: readonly RunTally[]) =>
      runs.reduce((sum, run) => sum + run[what], 0);
    const [a, b, c] = others.map(cost) as [number, number, number];
    const [brokenA, brokenB, brokenC] = others.map((runs) => all('breakdowns', runs)) as [number, number, number];
    const plan = cost(plans);
    results.push({
      ...cell,
      ...{ whenBroken: a, everyHours: b, atOwnMiddle: c, plan, ofBest: plan / Math.min(a, b, c) },
      breakdowns: { whenBroken: brokenA, everyHours: brokenB, atOwnMiddle: brokenC, plan: all('breakdowns', plans) },
      cover: all('inside', plans) / all('found', plans),
      found: all('found', plans),
    });
  }
  return results;
}
