import type { Refusal } from '../../outcome.ts';
import { leastBushWallMm } from '../shopFigures.ts';
import { besideDrawn } from './besideDrawn.ts';
import { boredTo, centresOf, steppedUpMm } from './boredHole.ts';
import { blank, type Choice, unworkable } from './choices.ts';
import { closedByCrack } from './closedByPart.ts';
import { pinToMake } from './partsToMake.ts';
import { inPlace, runningFit, slackOf, span } from './runningFit.ts';
import { tooThin, wallAndEdge } from './wallAndEdge.ts';
import type { WornJoint } from './wornJoint.ts';

/**
 * Bored to the next size up, with a pin of that size. Closed where something interchanges, after two oversizes, where too little metal
 * stays, and where the next time not even a bush would go in.
 *
 * @source common practice, no source: two oversizes at most, a size in steps
 */
export const oversizePin: Choice = (joint, cleanUp) => {
  const [centre] = centresOf(cleanUp);
  const nominalMm = sizeFor(joint, centre.boreMm);
  const fit = runningFit(joint.use, nominalMm ?? steppedUpMm(centre.boreMm, joint.shop.figures.oversizeStepMm));
  if (!fit.ok) return unworkable('oversize-pin', fit.refusal);
  const { hole, pin } = fit.value;
  const left = wallAndEdge(joint, { boreMm: hole.nominalMm, shiftMm: centre.shiftMm });
  const beside = besideDrawn(joint, {
    ...{ boreMm: hole.nominalMm, shiftMm: centre.shiftMm, pinMm: pin.nominalMm, otherHalfToo: true },
  });
  const made = pinToMake(joint, pin);
  return {
    ...blank('oversize-pin'),
    ...left,
    bore: boredTo(hole, centre),
    pin: span(pin),
    fitOnPin: inPlace(fit.value.fit),
    comparison: beside.comparison,
    slackMm: slackOf(hole, pin),
    closed: [
      ...closedByCrack(joint),
      ...closedBySize(joint, nominalMm, centre.boreMm),
      ...tooThin(left),
      ...noNext(joint, hole.nominalMm),
    ],
    cautions: [...beside.cautions, { code: 'stamp-the-size', facts: { nominalMm: hole.nominalMm } }],
    made,
    work: [
      { step: 'set-up-line-bore', times: 1, oncePer: joint.name },
      { step: 'bore-boss', times: joint.cleanUp.bosses.length },
      { step: 'make-pin', times: 1 },
    ],
    renews: { bore: true, pin: true },
    works: ['draw-pin', 'oversize-pin'],
  };
};

/** The pin's size: the next step up, or the next the shop can get; null: it can get none that large. */
function sizeFor({ pin, shop }: WornJoint, cleanUpMm: number): number | null {
  if (pin.sizesToHadMm === null) return steppedUpMm(cleanUpMm, shop.figures.oversizeStepMm);
  const fitting = pin.sizesToHadMm.filter((mm) => mm >= cleanUpMm - 1e-6);
  return fitting.length > 0 ? Math.min(...fitting) : null;
}

function closedBySize(joint: WornJoint, nominalMm: number | null, cleanUpMm: number): Refusal[] {
  const closed: Refusal[] = [];
  if (joint.mustStayStandard) closed.push({ code: 'must-stay-standard', facts: { standardMm: joint.standardMm } });
  const atMost = joint.shop.figures.oversizesAtMost;
  if (joint.oversizes >= atMost) closed.push({ code: 'oversized-before', facts: { times: joint.oversizes, atMost } });
  if (nominalMm === null) closed.push({ code: 'pin-not-to-be-had', facts: { cleanUpMm } });
  return closed;
}

/** The bore after this one is a bush's: room for its wall and the boss's about it. */
function noNext({ boss, shop }: WornJoint, nominalMm: number): Refusal[] {
  const nextMm = steppedUpMm(nominalMm + 2 * leastBushWallMm(nominalMm, shop.figures), shop.figures.bushStepMm);
  const { wall } = wallAndEdge({ boss, shop }, { boreMm: nextMm, shiftMm: 0 });
  return wall.leftMm < wall.wantedMm ? [{ code: 'no-room-for-a-bush-after', facts: { nextMm, ...wall } }] : [];
}
