import type { PlanPart, PlanYears } from './planPart.ts';
import { type PlanCost, planWinters, type WintersPlan } from './planWinters.ts';

/** Why a part is renewed when the plan says: what the best plan would cost with it done otherwise. */
export type WhyThisWinter = {
  partId: number;
  winter: number;
  /** it shares its take-offs with these parts of the same visit: they are out anyway */
  openedWith: readonly number[];
  /** share of its life it still has then */
  lifeLeft: number;
  /** best plan with this part left alone in that winter, less the plan [bench h]; 0 or more */
  leavingItCosts: number;
  /** what of that is strip-down hours paid a second time */
  moreStripDownHours: number;
  /** and what of it is risk of a breakdown in season */
  moreBreakdown: number;
};

/**
 * Asks of each renewal of the plan what it would cost not to do it then: the program is solved again with that part held
 * out of that winter, everything else free.
 */
export async function whyThisWinter(
  parts: readonly PlanPart[],
  years: PlanYears,
  plan: WintersPlan,
): Promise<WhyThisWinter[]> {
  const why: WhyThisWinter[] = [];
  for (const visit of plan.visits)
    for (const partId of visit.partIds) {
      const part = parts.find((one) => one.partId === partId)!;
      // a part the manager holds to that winter has no other plan to be weighed against
      if (part.held?.get(visit.winter) === true) continue;
      const without = parts.map((one) => (one === part ? heldOut(part, visit.winter) : one));
      const other = await planWinters(without, years);
      why.push({
        partId,
        winter: visit.winter,
        openedWith: visit.partIds.filter(
          (id) => id !== partId && sharesTakeOff(part, parts.find((one) => one.partId === id)!),
        ),
        lifeLeft: part.lifeLeft[visit.winter] ?? 0,
        ...dearer(plan.cost, other.cost),
      });
    }
  return why;
}

const heldOut = (part: PlanPart, winter: number): PlanPart => ({
  ...part,
  held: new Map([...(part.held ?? []), [winter, false]]),
});

const sharesTakeOff = (one: PlanPart, other: PlanPart): boolean =>
  one.takeOffs.some((takeOff) => other.takeOffs.includes(takeOff));

const dearer = (plan: PlanCost, other: PlanCost) => ({
  leavingItCosts: Math.max(0, other.total - plan.total),
  moreStripDownHours: other.stripDownHours - plan.stripDownHours,
  moreBreakdown: other.breakdown - plan.breakdown,
});
