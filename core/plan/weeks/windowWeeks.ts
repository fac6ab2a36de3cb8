import { type Aim, solveWeeks } from './boundWeeks.ts';
import { type SearchChoice, UNDONE } from './weekSearch.ts';
import { placedBy, weeksProgram } from './weeksProgram.ts';

/** Branches looked into for one window. */
const WINDOW_NODES = 40;
/** Weeks of a window: with 200 visits in 20 weeks some 40 visits are free at a time. */
const WINDOW_WEEKS = 4;

/** Sets of weeks that are planned anew one after another: neighbours, then weeks far apart. */
export function windowsOf(weeks: number): number[][] {
  const size = Math.min(WINDOW_WEEKS, weeks);
  const step = Math.max(1, Math.floor(size / 2));
  const near: number[][] = [];
  for (let from = 0; from === 0 || from + size - step < weeks; from += step)
    near.push(Array.from({ length: size }, (_, k) => Math.min(from, weeks - size) + k));
  const apart = Math.ceil(weeks / size);
  const far = Array.from({ length: apart }, (_, from) =>
    Array.from({ length: size }, (_, k) => from + k * apart).filter((week) => week < weeks),
  );
  return apart > 1 ? [...near, ...far] : near;
}

/** Plans anew all visits of some weeks and those undone, the others standing; the better of before and after. */
export async function windowWeeks(
  choice: SearchChoice,
  weeks: readonly number[],
  aim: Aim['of'],
): Promise<SearchChoice> {
  const { shop } = choice;
  const free = shop.free.filter((number) => {
    const at = shop.visits[number]!.placements[choice.at[number]!];
    return !at || weeks.some((week) => at.week <= week && week < at.week + at.pieces);
  });
  const standing = choice.copy();
  for (const number of free) standing.put(number, UNDONE);
  const program = weeksProgram(shop, free, standing);
  const harmUpTo = choice.rank.harm;
  const { found } = await solveWeeks(program, aim === 'harm' ? { of: aim } : { of: aim, harmUpTo }, WINDOW_NODES);
  if (found) placedBy(program, found.values, standing);
  return found ? standing : choice;
}
