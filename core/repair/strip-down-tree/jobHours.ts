import { type Outcome, ok } from '../../outcome.ts';
import type { StepHours, StripDownStep, StripDownTree } from '../../shop/stripDownTree.ts';
import { USUAL_SHOP_FIGURES, workHoursOf } from '../shopFigures.ts';
import type { WorkStep } from './labourHours.ts';
import { stepsToReach } from './stepsToReach.ts';

/** Work on one part, so many times; `oncePer` names what it is shared by (a line of bores): counted once for each. */
export type Work = { step: WorkStep; times: number; oncePer?: string };

/** Work at one position. */
export type PositionWork = { item: number; work: readonly Work[] };

export type WorkHours = Readonly<Record<WorkStep, StepHours>>;

/** Hours of a set of work on one assembly in one visit. */
export type JobHours = {
  /** what comes off, in order, and what follows when the work is done; each once */
  off: readonly StripDownStep[];
  back: readonly StripDownStep[];
  /** opening and putting back [h] */
  stripDown: StepHours;
  /** the work itself [h] */
  work: StepHours;
  all: StepHours;
};

const USUAL_WORK_HOURS = workHoursOf(USUAL_SHOP_FIGURES);

const NONE: StepHours = { low: 0, typical: 0, high: 0 };

/** @source own derivation: low with low, high with high; what goes badly on one step may go badly on all */
export const addHours = (one: StepHours, other: StepHours, times = 1): StepHours => ({
  low: one.low + times * other.low,
  typical: one.typical + times * other.typical,
  high: one.high + times * other.high,
});

/**
 * Hours of work at several positions in one visit: everything that must come off counted once, and each part's own work.
 *   hours = sum over the steps any position needs + sum of the work
 * Nothing to be done opens nothing: 0 h.
 *
 * @refuses what {@link stepsToReach} refuses
 * @source own derivation; common practice: shared strip-down is counted once
 * @checked tests/reference/shop-practice/jobHours.test.ts
 */
export function jobHours(
  tree: StripDownTree,
  positions: readonly PositionWork[],
  workHours: WorkHours = USUAL_WORK_HOURS,
): Outcome<JobHours> {
  const worked = positions.filter(({ work }) => work.some(({ times }) => times > 0));
  const reached = worked.length === 0 ? ok<StripDownStep[]>([]) : stepsToReach(tree, itemsOf(worked));
  if (!reached.ok) return reached;
  const stripDown = reached.value.reduce((sum, { hours }) => addHours(sum, hours), NONE);
  const work = counted(worked).reduce((sum, { step, times }) => addHours(sum, workHours[step], times), NONE);
  return ok({
    off: reached.value.filter(({ when }) => when === 'off'),
    back: reached.value.filter(({ when }) => when === 'back'),
    ...{ stripDown, work, all: addHours(stripDown, work) },
  });
}

/**
 * Hours that a further piece of work adds to a visit: what is open already is not opened again.
 * @refuses what {@link jobHours} refuses
 */
export function addedHours(
  tree: StripDownTree,
  already: readonly PositionWork[],
  more: readonly PositionWork[],
  workHours: WorkHours = USUAL_WORK_HOURS,
): Outcome<StepHours> {
  const [before, after] = [jobHours(tree, already, workHours), jobHours(tree, [...already, ...more], workHours)];
  if (!before.ok) return before;
  return after.ok ? ok(addHours(after.value.all, before.value.all, -1)) : after;
}

const itemsOf = (positions: readonly PositionWork[]): number[] => positions.map(({ item }) => item);

/** Every piece of work; what is shared only where it is met first, as often as its most asks for. */
function counted(positions: readonly PositionWork[]): Work[] {
  const shared = new Map<string, Work>();
  const own: Work[] = [];
  for (const work of positions.flatMap((position) => position.work)) {
    if (work.times <= 0) continue;
    if (work.oncePer === undefined) {
      own.push(work);
      continue;
    }
    const key = `${work.step} ${work.oncePer}`;
    const times = Math.max(work.times, shared.get(key)?.times ?? 0);
    shared.set(key, { ...work, times });
  }
  return [...own, ...shared.values()];
}
