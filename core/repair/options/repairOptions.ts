import { type Outcome, ok } from '../../outcome.ts';
import { cautionsFor, plainFacts } from '../cautions/cautionsFor.ts';
import { type CleanUp, cleanUpBore } from '../clean-up/cleanUpBore.ts';
import { addedHours, jobHours, type PositionWork } from '../strip-down-tree/jobHours.ts';
import { stepsToReach } from '../strip-down-tree/stepsToReach.ts';
import { bushToStandard } from './bushToStandard.ts';
import type { Choice, Sketched } from './choices.ts';
import { leave } from './leave.ts';
import { newBoss } from './newBoss.ts';
import { oversizePin } from './oversizePin.ts';
import { rejectPart } from './rejectPart.ts';
import { REPAIR_CHOICES, type RepairChoice, type RepairOption, type SpanMm, type StateAfter } from './repairOption.ts';
import { weldUp } from './weldUp.ts';
import type { WornJoint } from './wornJoint.ts';

const CHOICES: Readonly<Record<RepairChoice, Choice>> = {
  leave,
  'oversize-pin': oversizePin,
  bush: bushToStandard,
  weld: weldUp,
  'new-boss': newBoss,
  reject: rejectPart,
};

/** What cleans the hole up, and every choice beside the others. */
export type RepairOptions<Life> = { cleanUp: CleanUp; options: RepairOption<Life>[] };

/**
 * Every choice for a worn hole and its pin, open or closed with why. The program puts them forward; a person chooses.
 *
 * @param lifeOf hours law of the joint from a new state on; what it gives is passed on as it is
 * @refuses what cleanUpBore and jobHours refuse
 * @checked core/repair/options/repairOptions.test.ts
 */
export function repairOptions<Life>(
  joint: WornJoint,
  lifeOf: (after: StateAfter) => Life,
): Outcome<RepairOptions<Life>> {
  const cleanUp = cleanUpBore(joint.cleanUp);
  if (!cleanUp.ok) return cleanUp;
  const options: RepairOption<Life>[] = [];
  for (const choice of REPAIR_CHOICES) {
    const sketched = CHOICES[choice](joint, cleanUp.value);
    const option = finished(joint, sketched, lifeOf);
    if (!option.ok) return option;
    options.push(option.value);
  }
  return ok({ cleanUp: cleanUp.value, options });
}

/** Hours, cautions to people, and the life: put to every choice in the same way. */
function finished<Life>(
  joint: WornJoint,
  { made, renews, works, hoursUnknown, ...sketched }: Sketched,
  lifeOf: (after: StateAfter) => Life,
): Outcome<RepairOption<Life>> {
  const { tree, item, already, works: opening } = joint.opened;
  const { workHours } = joint.shop;
  const own: PositionWork = { item, work: sketched.work };
  const [here, added] = [jobHours(tree, [own], workHours), addedHours(tree, already, [own], workHours)];
  if (!here.ok) return here;
  if (!added.ok) return added;
  const reached = stepsToReach(tree, [item]);
  if (!reached.ok) return reached;
  const all =
    works.length === 0 ? [] : [...works, ...opening, ...(joint.part.towingOrLifting ? ['hand-over' as const] : [])];
  const facts = { ...plainFacts(all, joint.part), nylonNear: joint.nylonNear };
  return ok({
    ...sketched,
    cautions: [...sketched.cautions, ...made.cautions],
    safety: cautionsFor(facts),
    hoursHere: hoursUnknown ? null : here.value.work,
    hoursAdded: hoursUnknown ? null : added.value,
    off: hoursUnknown ? reached.value.filter(({ when }) => when === 'off') : here.value.off,
    toMake: made.parts,
    life: lifeOf(stateAfter(sketched, renews)),
  });
}

const middle = ({ low, high }: SpanMm): number => (low + high) / 2;

const stateAfter = (
  { choice, slackMm, bore, bush, pin }: Pick<Sketched, 'choice' | 'slackMm' | 'bore' | 'bush' | 'pin'>,
  renews: Sketched['renews'],
): StateAfter => ({
  choice,
  bore: renews.bore ? 'renewed' : 'as-found',
  pin: renews.pin ? 'renewed' : 'as-found',
  slackMm: slackMm && middle(slackMm),
  boreMm: bush ? middle(bush.insideAfterMm) : bore && middle({ low: bore.smallestMm, high: bore.largestMm }),
  pinMm: pin && middle(pin),
});
