import { IN_PLACE, lifeLeftAt, type PlanPart, type PlanYears, worthOfLife } from './planPart.ts';

/** What a machine's plan comes to in one winter and the season after it. */
export type WinterCost = {
  /** worth of the life not used up by parts taken out [bench h] */
  lifeThrownAway: number;
  /** parts expected to be past their limit by the end of the season */
  breakdowns: number;
  /** what that costs [bench h] */
  breakdownCost: number;
};

/**
 * A choice of winters taken apart by winter: what {@link costOf} sums up.
 * @source own derivation
 */
export function costByWinter(
  parts: readonly PlanPart[],
  years: PlanYears,
  renewIn: ReadonlyMap<number, readonly number[]>,
): WinterCost[] {
  const costs = Array.from({ length: years.winters }, () => ({ lifeThrownAway: 0, breakdowns: 0, breakdownCost: 0 }));
  for (const part of parts) {
    const renewed = renewIn.get(part.partId) ?? [];
    let from = IN_PLACE;
    costs.forEach((cost, winter) => {
      if (renewed.includes(winter)) {
        cost.lifeThrownAway += worthOfLife(part) * lifeLeftAt(part, from, winter);
        from = winter;
      }
      const chances = from === IN_PLACE ? part.chancePast : (part.chancePastNew[from] ?? []);
      const chance = chances[from === IN_PLACE ? winter : winter - from] ?? 0;
      cost.breakdowns += chance;
      cost.breakdownCost += chance * (years.breakdownCost[winter] ?? 0);
    });
  }
  return costs;
}
