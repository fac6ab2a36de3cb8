import { type Outcome, ok, refuse } from '../../outcome.ts';
import { type RackBars, type ShopFigures, USUAL_SHOP_FIGURES } from '../shopFigures.ts';
import type { Saw } from './cutPatterns.ts';
import { type CuttingPlan, cuttingPlan, type StockBars } from './cuttingPlan.ts';
import { barOf, type PartToMake } from './partToMake.ts';

/** Parts that come off like bars, and how those are cut. */
export type CutGroup = {
  /** as {@link barOf} names it */
  bar: string;
  parts: PartToMake[];
  plan: CuttingPlan;
};

export type Rack = {
  /** bars there are of each sort; a sort not named is bought in whole bars */
  bars: ReadonlyMap<string, readonly StockBars[]>;
  boughtMm: number;
  keepFromMm: number;
  saw: Saw;
};

/** The shop's rack, its saw, and the bars it buys. @param lying bars there are; their sorts as {@link barOf} names them */
export const rackOf = (figures: ShopFigures = USUAL_SHOP_FIGURES, lying: readonly RackBars[] = []): Rack => ({
  bars: Map.groupBy(lying, ({ bar }) => bar),
  boughtMm: figures.barLengthMm,
  keepFromMm: figures.keepFromMm,
  saw: { kerfMm: figures.sawKerfMm, trimMm: figures.sawTrimMm },
});

/**
 * The parts of a rebuild, or of a whole winter, by the bar they come from, each with its cutting plan: ends on the rack first
 * counted with bought bars.
 *
 * @refuses what {@link cuttingPlan} refuses, with the bar's name
 */
export async function cutList(parts: readonly PartToMake[], rack: Rack): Promise<Outcome<CutGroup[]>> {
  const groups: CutGroup[] = [];
  for (const bar of [...new Set(parts.map(barOf))].sort(byName)) {
    const own = parts.filter((part) => barOf(part) === bar);
    const demand = own.map(({ stock, count }) => ({ lengthMm: stock.lengthMm, count }));
    const stock = [...(rack.bars.get(bar) ?? []), { lengthMm: rack.boughtMm, count: null }];
    const plan = await cuttingPlan(demand, stock, rack.saw, rack.keepFromMm);
    if (!plan.ok) return refuse({ ...plan.refusal, facts: { ...plan.refusal.facts, bar } });
    groups.push({ bar, parts: own, plan: plan.value });
  }
  return ok(groups);
}

/** "round 60" before "round 100", the same on every computer. */
function byName(one: string, other: string): number {
  const [a, b] = [one, other].map((name) => name.replace(/\d+/g, (digits) => digits.padStart(6, '0')));
  return (a ?? '') < (b ?? '') ? -1 : 1;
}
