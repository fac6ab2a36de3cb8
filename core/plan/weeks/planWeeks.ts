import { type Aim, solveWeeks } from './boundWeeks.ts';
import { exchangeWeeks } from './exchangeWeeks.ts';
import { greedyWeeks } from './greedyWeeks.ts';
import { isBetter, type SearchChoice, searchShop } from './weekSearch.ts';
import { placedBy, type WeeksProgram, wholeProgram } from './weeksProgram.ts';
import { defaultWeekPrices, type WeekPrices, type WeeksShop } from './weeksShop.ts';
import { type WeighedWeeks, weighWeeks } from './weighWeeks.ts';
import { windowsOf, windowWeeks } from './windowWeeks.ts';

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
  /** searched: proven least, or all the work allowed is done; stopped-early: it was asked to stop */
  status: 'searched' | 'stopped-early';
  /** work done */
  steps: number;
};

export type WeeksProgress = {
  /** steps done, of at most so many */
  step: number;
  mostSteps: number;
  /** what stands so far, marked as stopped early: a plan to keep if the search is ended here */
  plan: WeeksPlan;
};

/** Rounds through all windows for one aim, once the whole shop was looked at in one program; before it there is one. */
const MOST_ROUNDS = 3;
/** Branches looked into of the whole shop's program. */
const WHOLE_NODES = 1;
/** Share of a cost that is not worth searching for. */
const CLOSE = 1e-4;
/** Share of a cost by which a bound may fall short of it in the last digits of a long sum. */
const PROVEN = 2e-6;

/**
 * Puts the visits of a shop into its weeks: least overload, lateness and undone work first (`harm`), then least change from
 * what was said before and fewest hours of way (`trouble`). What is held stays. What does not fit is listed with its risk.
 *
 *   greedy -> exchanges of two -> for harm, then for trouble: bound, windows of weeks, the whole shop, windows again
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
  const search = new Search(shop, prices, greedyWeeks(ready), goOn);
  try {
    await search.stepDone();
    exchangeWeeks(search.best);
    await search.stepDone();
    const whole = wholeProgram(ready);
    await search.least(whole, 'harm');
    await search.least(whole, 'trouble');
  } catch (thrown) {
    if (thrown !== STOP) throw thrown;
    return search.plan('stopped-early');
  }
  return search.plan('searched');
}

const STOP = Symbol('asked to stop');

class Search {
  best: SearchChoice;
  private readonly bound = { harm: 0, trouble: 0 };
  private steps = 0;
  private readonly windows: readonly (readonly number[])[];
  private readonly shop: WeeksShop;
  private readonly prices: WeekPrices;
  private readonly goOn: (progress: WeeksProgress) => boolean | Promise<boolean>;

  constructor(shop: WeeksShop, prices: WeekPrices, first: SearchChoice, goOn: Search['goOn']) {
    this.shop = shop;
    this.prices = prices;
    this.best = first;
    this.goOn = goOn;
    this.windows = windowsOf(shop.weeks.length);
  }

  plan(status: WeeksPlan['status']): WeeksPlan {
    const weighed = weighWeeks(this.shop, this.best.choice(), this.prices);
    return {
      ...weighed,
      harm: bounded(weighed.cost.harm, this.bound.harm),
      trouble: bounded(weighed.cost.trouble, this.bound.trouble),
      status,
      steps: this.steps,
    };
  }

  /** @throws STOP when it was asked to stop */
  async stepDone(): Promise<void> {
    this.steps++;
    const mostSteps = 2 + 2 * (2 + (1 + MOST_ROUNDS) * this.windows.length);
    if (!(await this.goOn({ step: this.steps, mostSteps, plan: this.plan('stopped-early') }))) throw STOP;
  }

  /** Brings one of harm and trouble as low as the work allows, and bounds it. */
  async least(whole: WeeksProgram, of: Aim['of']): Promise<void> {
    const aim = (): Aim => (of === 'harm' ? { of } : { of, harmUpTo: this.best.rank.harm });
    this.raise(of, (await solveWeeks(whole, aim(), null)).bound);
    await this.stepDone();
    await this.inWindows(of, 1);
    if (this.isClose(of)) return;
    const { found, bound } = await solveWeeks(whole, aim(), WHOLE_NODES);
    this.raise(of, bound);
    if (found) {
      const placed = this.best.copy();
      placedBy(whole, found.values, placed);
      this.take(placed);
    }
    await this.stepDone();
    await this.inWindows(of, MOST_ROUNDS);
  }

  private async inWindows(of: Aim['of'], rounds: number): Promise<void> {
    for (let round = 0; round < rounds; round++) {
      const before = this.best.rank;
      for (const weeks of this.windows) {
        if (this.isClose(of)) return;
        this.take(await windowWeeks(this.best, weeks, of));
        await this.stepDone();
      }
      if (!isBetter(this.best.rank, before)) return;
    }
  }

  private take(choice: SearchChoice): void {
    if (isBetter(choice.rank, this.best.rank)) this.best = choice;
  }

  private raise(of: Aim['of'], bound: number): void {
    this.bound[of] = Math.max(this.bound[of], bound);
  }

  private isClose(of: Aim['of']): boolean {
    const cost = this.best.rank[of];
    return cost - this.bound[of] <= CLOSE * cost + CLOSE * CLOSE;
  }
}

/** Within what the search calls close to proven, a cost is its own bound. */
function bounded(cost: number, bound: number): Bounded {
  const least = cost - bound <= PROVEN * (1 + cost) ? cost : Math.max(0, bound);
  return { cost, bound: least, gap: cost > least ? (cost - least) / cost : 0 };
}
