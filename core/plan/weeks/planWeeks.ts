import { boundWeeks } from './boundWeeks.ts';
import { greedyWeeks } from './greedyWeeks.ts';
import { searchShop } from './weekSearch.ts';
import { defaultWeekPrices, type WeekPrices, type WeeksShop } from './weeksShop.ts';
import { type WeighedWeeks, weighWeeks } from './weighWeeks.ts';

/** A cost with what is proven of it: no plan costs less than the bound. */
export type Bounded = {
  cost: number;
  bound: number;
  /** share of the cost that may still be saved: (cost - bound) / cost; 0: proven least */
  gap: number;
};

export type WeeksPlan = WeighedWeeks & {
  harm: Bounded;
  /** among plans that do no more harm than this one */
  trouble: Bounded;
  /** searched: all the work allowed is done, or nothing is left to gain; stopped-early: it was asked to stop */
  status: 'searched' | 'stopped-early';
  /** steps done */
  steps: number;
};

export type WeeksProgress = {
  /** steps done, of at most so many */
  step: number;
  steps: number;
  /** of the best plan so far */
  harm: number;
  trouble: number;
};

/**
 * Puts the visits of a shop into its weeks: least overload, lateness and undone work first (`harm`), then least change from
 * what was said before and fewest hours of way (`trouble`). What is held stays. What does not fit is listed with its risk.
 *
 * It ends by work done, never by the clock: the same shop gives the same plan, in whatever order its visits come.
 *
 * @param goOn called between steps with how far it is; false ends the search with the best plan so far
 */
export async function planWeeks(
  shop: WeeksShop,
  prices: WeekPrices = defaultWeekPrices,
  goOn: (progress: WeeksProgress) => boolean | Promise<boolean> = () => true,
): Promise<WeeksPlan> {
  const ready = searchShop(shop, prices);
  const choice = greedyWeeks(ready);
  const going = await goOn({ step: 1, steps: 2, ...choice.rank });
  const bound = await boundWeeks(ready, choice.rank.harm);
  const weighed = weighWeeks(shop, choice.choice(), prices);
  return {
    ...weighed,
    harm: bounded(weighed.cost.harm, bound.harm),
    trouble: bounded(weighed.cost.trouble, bound.trouble),
    status: going ? 'searched' : 'stopped-early',
    steps: 2,
  };
}

function bounded(cost: number, bound: number): Bounded {
  const least = Math.min(cost, Math.max(0, bound));
  return { cost, bound: least, gap: cost - least < 1e-6 ? 0 : (cost - least) / cost };
}
