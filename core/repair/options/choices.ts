import type { Caution, Refusal } from '../../outcome.ts';
import type { CautionWork } from '../cautions/cautionsFor.ts';
import type { CleanUp } from '../clean-up/cleanUpBore.ts';
import type { Made } from './partsToMake.ts';
import type { RepairOption } from './repairOption.ts';
import type { WornJoint } from './wornJoint.ts';

/** What a choice says of itself; hours, cautions to people and life are put to it afterwards, the same for all. */
export type Sketched = Pick<
  RepairOption,
  'choice' | 'bore' | 'bush' | 'pin' | 'fitInBoss' | 'fitOnPin' | 'wall' | 'edge' | 'comparison' | 'slackMm' | 'work'
> & {
  closed: Refusal[];
  cautions: Caution[];
  made: Made;
  /** what of it wears from new */
  renews: { bore: boolean; pin: boolean };
  works: readonly CautionWork[];
  /** hours depend on a part that is not there yet */
  hoursUnknown: boolean;
};

/** A choice is worked out from the joint and what cleans it up. */
export type Choice = (joint: WornJoint, cleanUp: CleanUp) => Sketched;

/** Nothing known yet: what a choice starts from. */
export const blank = (choice: RepairOption['choice']): Sketched => ({
  ...{ choice, closed: [], cautions: [], bore: null, bush: null, pin: null, fitInBoss: null, fitOnPin: null },
  ...{ wall: null, edge: null, comparison: null, slackMm: null, work: [], works: [] },
  hoursUnknown: false,
  made: { parts: [], cautions: [] },
  renews: { bore: false, pin: false },
});

/** A choice whose sizes cannot be worked out: closed by what refused. */
export const unworkable = (choice: RepairOption['choice'], refusal: Refusal): Sketched => ({
  ...blank(choice),
  closed: [refusal],
});
