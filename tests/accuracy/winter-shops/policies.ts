import { defaultModelSettings } from '#core/fit/modelSettings.ts';
import { chanceByHours } from '#core/forecast/chanceByHours.ts';
import { hoursAtLimit } from '#core/forecast/hoursAtLimit.ts';
import { fairShares, type PlanPart } from '#core/plan/winters/planPart.ts';
import { planWinters } from '#core/plan/winters/planWinters.ts';
import type { MachineSeen, Policy } from './shopRun.ts';
import { POSITIONS } from './trueShop.ts';

const EVERYTHING = [...POSITIONS.keys()];
const PLANNED_WINTERS = 4;
const EVERY_HOURS = 5500;

/** (a) nothing is done before it breaks. */
export const whenBroken: Policy = { usesForecasts: false, renew: async () => [] };

/** (b) everything is renewed at the winter nearest to every 5,500 h. */
export const everyHours: Policy = {
  usesForecasts: false,
  renew: async ({ sinceAll, hours, ages, seasons }) => {
    // until it was done once, the oldest part in place says how long nothing was
    const since = sinceAll ?? Math.max(hours, ...ages);
    return since + meanOf(seasons) / 2 >= EVERY_HOURS ? EVERYTHING : [];
  },
};

/** (c) each part in the winter before its own middle forecast. */
export const atOwnMiddle: Policy = {
  usesForecasts: true,
  renew: async (seen) => {
    const laws = seen.laws();
    return EVERYTHING.filter((position) => {
      const { middle } = hoursAtLimit(laws[position]!, POSITIONS[position]!.of.limitMm, defaultModelSettings);
      return middle !== null && middle < seen.ages[position]! + meanOf(seen.seasons);
    });
  },
};

/** The plan of winters: what it renews in the first of them. */
export const byPlan: Policy = {
  usesForecasts: true,
  renew: async (seen, prices) => {
    const parts = partsInPlan(seen, prices);
    const years = {
      winters: PLANNED_WINTERS,
      takeOffHours: prices.takeOffHours,
      breakdownCost: Array.from({ length: PLANNED_WINTERS }, () => prices.breakdownCost),
      visitHours: prices.visitHours,
    };
    const { renewIn } = await planWinters(parts, years);
    return EVERYTHING.filter((position) => renewIn.get(position)?.includes(0));
  },
};

/** Hours of a season as the shop expects them: three figures as likely, about the mean of those so far. */
const SEASON_SPREAD = [0.82, 1, 1.18];

function partsInPlan(seen: MachineSeen, prices: Parameters<Policy['renew']>[1]): PlanPart[] {
  const laws = seen.laws();
  const newLaws = seen.newLaws();
  const shares = fairShares(POSITIONS, prices);
  const season = meanOf(seen.seasons);
  const upTo = (count: number) => Array.from({ length: count }, (_, k) => k);
  const mean = (chance: (hours: number) => number) => meanOf(SEASON_SPREAD.map((times) => chance(times * season)));
  return POSITIONS.map(({ of, takeOffs, ownHours, partsCost }, position) => {
    const age = seen.ages[position]!;
    const past = chanceByHours(laws[position]!, of.limitMm, defaultModelSettings);
    const pastNew = chanceByHours(newLaws[position]!, of.limitMm, defaultModelSettings);
    const most = defaultModelSettings.beyondHRefs * of.lifeHours;
    const middle = hoursAtLimit(laws[position]!, of.limitMm, defaultModelSettings).middle ?? most;
    const middleNew = hoursAtLimit(newLaws[position]!, of.limitMm, defaultModelSettings).middle ?? most;
    const left = (hours: number) => Math.min(1, Math.max(0, hours / middleNew));
    return {
      partId: position,
      ...{ takeOffs, ownHours, partsCost, stripDownShare: shares[position]! },
      chancePast: upTo(PLANNED_WINTERS).map((k) => mean((hours) => past(age + (k + 1) * hours))),
      chancePastNew: upTo(PLANNED_WINTERS).map((winter) =>
        upTo(PLANNED_WINTERS - winter).map((k) => mean((hours) => pastNew((k + 1) * hours))),
      ),
      lifeLeft: upTo(PLANNED_WINTERS + 1).map((winter) => left(middle - age - winter * season)),
      lifeLeftNew: upTo(PLANNED_WINTERS).map((winter) =>
        upTo(PLANNED_WINTERS - winter + 1).map((k) => left(middleNew - k * season)),
      ),
    };
  });
}

const meanOf = (numbers: readonly number[]): number => numbers.reduce((sum, each) => sum + each, 0) / numbers.length;
