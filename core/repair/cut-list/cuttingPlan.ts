import { type Outcome, ok, refuse } from '../../outcome.ts';
import { type IntegerProgram, type LinearSum, solveProgram } from '../../plan/integerProgram.ts';
import { type CutDemand, type CutPattern, fullPatterns, type Saw, takenMm } from './cutPatterns.ts';
import { firstFit } from './firstFit.ts';

/** Bars of one length; `count` null: as many as are bought. */
export type StockBars = { lengthMm: number; count: number | null };

/** One bar and what is cut from it, longest piece first. */
export type CutBar = {
  barMm: number;
  piecesMm: number[];
  /** what stays of it [mm] */
  leftMm: number;
  /** long enough for the rack */
  keep: boolean;
};

export type CuttingPlan = {
  bars: CutBar[];
  /** length of all bars that are cut into, and what of it is neither a piece nor kept [mm] */
  barsMm: number;
  wasteMm: number;
  /** true: no other plan cuts into less bar */
  proven: boolean;
};

/** Patterns up to which all are laid before the solver; beyond, a first-fit plan stands, unproven unless nothing can be less. */
const MOST_PATTERNS = 4_000;

/**
 * How to cut bars so that the least length of bar is cut into. Every full way to cut a bar is a choice, taken a whole number of
 * times; together they must give all pieces, from no more bars than there are.
 *   least sum of bar length x times;  for each length: sum of pieces x times >= wanted
 *
 * @param keepFromMm an end this long goes back on the rack [mm]
 * @refuses piece-longer-than-bars (with both lengths), not-enough-bars
 * @source P. C. Gilmore and R. E. Gomory, A linear programming approach to the cutting-stock problem, Operations Research 9
 *   (1961), pp. 849-859: the pattern model; all patterns are listed here
 * @checked core/repair/cut-list/cuttingPlan.test.ts against every plan of small cases
 */
export async function cuttingPlan(
  wanted: readonly CutDemand[],
  stock: readonly StockBars[],
  saw: Saw,
  keepFromMm: number,
): Promise<Outcome<CuttingPlan>> {
  const demand = gathered(wanted);
  if (demand.length === 0) return ok({ bars: [], barsMm: 0, wasteMm: 0, proven: true });
  const longestMm = Math.max(...demand.map(({ lengthMm }) => lengthMm));
  const barMm = Math.max(0, ...stock.filter(({ count }) => count !== 0).map(({ lengthMm }) => lengthMm - saw.trimMm));
  if (longestMm > barMm) return refuse({ code: 'piece-longer-than-bars', facts: { pieceMm: longestMm, barMm } });

  const listed = patternsOf(demand, stock, saw);
  const cut = listed ? await leastOf(listed, demand, stock) : null;
  if (listed && !cut) return refuse({ code: 'not-enough-bars' });
  const used = cut?.used ?? firstFit(demand, stock, saw);
  if (!used) return refuse({ code: 'not-enough-bars' });
  const bars = used.map(({ lengthMm, pattern }) => asBar(lengthMm, pattern, demand, saw, keepFromMm));
  const barsMm = bars.reduce((sum, bar) => sum + bar.barMm, 0);
  const piecesMm = demand.reduce((sum, { lengthMm, count }) => sum + lengthMm * count, 0);
  const keptMm = bars.reduce((sum, bar) => sum + (bar.keep ? bar.leftMm : 0), 0);
  const proven = cut ? cut.proven : barsMm <= Math.min(...stock.map(({ lengthMm }) => lengthMm));
  return ok({ bars, barsMm, wasteMm: barsMm - piecesMm - keptMm, proven });
}

/** Like lengths together, the longest first. */
function gathered(wanted: readonly CutDemand[]): CutDemand[] {
  const counts = new Map<number, number>();
  for (const { lengthMm, count } of wanted) counts.set(lengthMm, (counts.get(lengthMm) ?? 0) + count);
  return [...counts]
    .filter(([, count]) => count > 0)
    .map(([lengthMm, count]) => ({ lengthMm, count }))
    .sort((one, other) => other.lengthMm - one.lengthMm);
}

type Listed = { bar: number; lengthMm: number; pattern: CutPattern }[];

function patternsOf(demand: readonly CutDemand[], stock: readonly StockBars[], saw: Saw): Listed | null {
  const listed: Listed = [];
  for (const [bar, { lengthMm }] of stock.entries()) {
    const found = fullPatterns(lengthMm, demand, saw, MOST_PATTERNS - listed.length);
    if (!found) return null;
    listed.push(...found.map((pattern) => ({ bar, lengthMm, pattern })));
  }
  return listed;
}

async function leastOf(listed: Listed, demand: readonly CutDemand[], stock: readonly StockBars[]) {
  const sumOf = (times: (of: Listed[number]) => number): LinearSum =>
    listed.map((of, variable) => [variable, times(of)] as const).filter(([, each]) => each !== 0);
  const program: IntegerProgram = {
    cost: listed.map(({ lengthMm }) => lengthMm),
    yesOrNo: new Set(),
    whole: new Set(listed.keys()),
    rules: [
      ...demand.map(({ count }, i) => ({
        sum: sumOf(({ pattern }) => pattern[i] ?? 0),
        is: '>=' as const,
        than: count,
      })),
      ...stock.flatMap(({ count }, bar) =>
        count === null ? [] : [{ sum: sumOf((of) => (of.bar === bar ? 1 : 0)), is: '<=' as const, than: count }],
      ),
    ].filter(({ sum }) => sum.length > 0),
  };
  const solved = await solveProgram(program);
  if (!solved) return null;
  const used = listed.flatMap((of, variable) =>
    Array.from({ length: Math.round(solved.values[variable] ?? 0) }, () => of),
  );
  return { used: withoutSurplus(used, demand), proven: solved.proven };
}

/** Full bars may hold more pieces than are wanted: what is too many is left on the bar. */
function withoutSurplus(used: Listed, demand: readonly CutDemand[]): { lengthMm: number; pattern: CutPattern }[] {
  const left = demand.map(({ count }) => count);
  return used.map(({ lengthMm, pattern }) => ({
    lengthMm,
    pattern: pattern.map((times, i) => {
      const taken = Math.min(times, left[i] ?? 0);
      left[i] = (left[i] ?? 0) - taken;
      return taken;
    }),
  }));
}

function asBar(barMm: number, pattern: CutPattern, demand: readonly CutDemand[], saw: Saw, keepFromMm: number): CutBar {
  // the cut that parts the last piece from the rest takes its kerf too
  const leftMm = Math.max(0, barMm - takenMm(pattern, demand, saw) - saw.kerfMm);
  const piecesMm = pattern.flatMap((times, i) => Array.from({ length: times }, () => demand[i]?.lengthMm ?? 0));
  return { barMm, piecesMm, leftMm, keep: leftMm >= keepFromMm };
}
