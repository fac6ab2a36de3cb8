import { type BoundedProgram, boundProgram, type IntegerProgram } from '../integerProgram.ts';
import type { WeeksProgram } from './weeksProgram.ts';

/** What is made least: harm, or trouble among choices that do no more harm than so much. */
export type Aim = { of: 'harm' } | { of: 'trouble'; harmUpTo: number };

/** A sum of hours and prices that is meant to be met exactly. */
const SPARE = 1e-6;

/**
 * Solves the program of a shop's weeks for one aim.
 *
 * @param mostNodes work allowed; null: visits taken as divisible, which proves a bound and places nothing
 * @returns cost and bound with what stands counted in
 */
export async function solveWeeks(program: WeeksProgram, aim: Aim, mostNodes: number | null): Promise<BoundedProgram> {
  const { rules, yesOrNo, harm, trouble, standing } = program;
  const divisible = mostNodes === null;
  const cost = aim.of === 'harm' ? harm : trouble;
  const noMore: IntegerProgram['rules'] =
    aim.of === 'harm'
      ? []
      : [{ sum: taken(harm), is: '<=', than: Math.max(0, aim.harmUpTo - standing.harm) + SPARE }]
          .filter(({ sum }) => sum.length > 0)
          .map((rule) => ({ ...rule, is: '<=' as const }));
  const asked = { cost, yesOrNo: divisible ? NONE : yesOrNo, rules: [...rules, ...noMore] };
  const { found, bound } = await boundProgram(asked, mostNodes ?? 0);
  const apart = standing[aim.of];
  return { found: found && !divisible ? { ...found, cost: found.cost + apart } : null, bound: bound + apart };
}

const NONE: ReadonlySet<number> = new Set();

const taken = (cost: readonly number[]): (readonly [number, number])[] =>
  cost.flatMap((each, variable) => (each === 0 ? [] : [[variable, each] as const]));
