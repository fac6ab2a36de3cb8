import { type CautionId, SAFETY_CAUTIONS, type SafetyCaution } from './cautions.ts';
import type { PartKind } from './closedWork.ts';

/** Work on a joint or slide, as far as cautions go. */
export const CAUTION_WORKS = [
  'weld',
  'cut',
  'build-up',
  'new-boss',
  'straighten',
  'press',
  'heat-or-freeze',
  'oversize-pin',
  'open-rams-or-pipes',
  'draw-pin',
  'release-springs',
  'crack-test',
  'hand-over',
] as const;
export type CautionWork = (typeof CAUTION_WORKS)[number];

/** What is done, on what, and where. */
export type CautionFacts = {
  works: readonly CautionWork[];
  kind: PartKind;
  towingOrLifting: boolean;
  crack: boolean;
  /** galvanised, painted or oily where it is welded or cut; null: not said, taken to be */
  coated: boolean | null;
  /** slide strips or other nylon stay near heat */
  nylonNear: boolean;
  /** part of a coupling that goes on the road */
  roadCoupling: boolean;
  /** the work changes what the machine can do, or how it is approved */
  substantialModification: boolean;
};

/** Facts when nothing is said but the work and whether it tows or lifts: what is not known is taken to be there. */
export const plainFacts = (
  works: readonly CautionWork[],
  part: { kind: PartKind; towingOrLifting: boolean; crack: boolean },
): CautionFacts => ({
  ...{ works, ...part, coated: null, nylonNear: true },
  roadCoupling: part.towingOrLifting && part.kind !== 'other',
  substantialModification: false,
});

/**
 * Cautions that the work and the part bring, in the order in which a job meets them.
 * @source tests/reference/cautions/cautions.csv, each with its references and how they are known
 * @checked tests/reference/cautions/cautions.test.ts
 */
export function cautionsFor(facts: CautionFacts): SafetyCaution[] {
  return SAFETY_CAUTIONS.filter(({ id }) => APPLIES[id](facts));
}

const does = (facts: CautionFacts, ...works: readonly CautionWork[]): boolean =>
  works.some((work) => facts.works.includes(work));
const welds = (facts: CautionFacts) => does(facts, 'weld', 'build-up', 'new-boss');
const heats = (facts: CautionFacts) => welds(facts) || does(facts, 'cut', 'heat-or-freeze');
const tows = ({ kind, towingOrLifting }: CautionFacts) => towingOrLifting || kind !== 'other';

/** When each caution is said. */
const APPLIES: Readonly<Record<CautionId, (facts: CautionFacts) => boolean>> = {
  'cracked-part': (facts) => facts.crack && tows(facts),
  'forged-parts': (facts) => tows(facts) && (heats(facts) || does(facts, 'straighten')),
  'stored-pressure': (facts) => does(facts, 'open-rams-or-pipes'),
  props: (facts) => does(facts, 'draw-pin'),
  springs: (facts) => does(facts, 'release-springs'),
  fume: (facts) => (welds(facts) || does(facts, 'cut')) && facts.coated !== false,
  nylon: (facts) => heats(facts) && facts.nylonNear,
  'crack-test': (facts) => does(facts, 'crack-test') || ((welds(facts) || does(facts, 'straighten')) && tows(facts)),
  'weld-test-levels': (facts) => welds(facts) && (does(facts, 'crack-test') || tows(facts)),
  'build-up': (facts) => does(facts, 'build-up'),
  'new-boss': (facts) => does(facts, 'new-boss'),
  press: (facts) => does(facts, 'straighten', 'press'),
  heat: (facts) => does(facts, 'heat-or-freeze'),
  oversize: (facts) => does(facts, 'oversize-pin'),
  drawbar: (facts) => facts.kind === 'drawbar',
  road: (facts) => facts.roadCoupling,
  'placed-on-market': (facts) => facts.substantialModification,
  'hand-over': (facts) => does(facts, 'hand-over'),
};
