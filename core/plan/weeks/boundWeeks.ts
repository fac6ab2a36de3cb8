import { solveProgram } from '../integerProgram.ts';
import type { Rank, SearchShop } from './weekSearch.ts';
import { weeksProgram } from './weeksProgram.ts';

/**
 * What no plan can do better than: least harm, and least trouble of plans that do no more than `harm`, were visits divisible.
 * @source the linear relaxation of weeksProgram
 */
export async function boundWeeks(shop: SearchShop, harm: number): Promise<Rank> {
  const { rules, harm: ofHarm, trouble } = weeksProgram(shop);
  const none = new Set<number>();
  const least = await solveProgram({ cost: ofHarm, yesOrNo: none, rules });
  const noMore = {
    sum: ofHarm.map((each, variable) => [variable, each] as const),
    is: '<=',
    than: harm + 1e-6,
  } as const;
  const quiet = await solveProgram({ cost: trouble, yesOrNo: none, rules: [...rules, noMore] });
  return { harm: least?.cost ?? 0, trouble: quiet?.cost ?? 0 };
}
