import { isoFit } from '../../iso286/isoFit.ts';
import { limitsOfSize } from '../../iso286/limitsOfSize.ts';
import { type Outcome, ok, type Refusal } from '../../outcome.ts';
import { bushWallMm } from '../clean-up/wallLeft.ts';
import { adhesiveFit } from '../press-fit/adhesiveFit.ts';
import { material } from '../press-fit/material.ts';
import { type PressedBush, pressBush } from '../press-fit/pressBush.ts';
import { leastBushWallMm } from '../shopFigures.ts';
import { besideDrawn } from './besideDrawn.ts';
import { boredTo, type Centre, centresOf, steppedUpMm } from './boredHole.ts';
import { blank, type Choice, type Sketched, unworkable } from './choices.ts';
import { closedByCrack } from './closedByPart.ts';
import { pinToMake, roundPart, sizeOf, together } from './partsToMake.ts';
import type { BushToMake } from './repairOption.ts';
import { bushFit, inPlace, pinThere, slackOf, span, standardPin } from './runningFit.ts';
import { tooThin, wallAndEdge } from './wallAndEdge.ts';
import type { WornJoint } from './wornJoint.ts';

/**
 * Bored out, bushed back to the standard size. The old centre is kept where the boss has the wall for it; otherwise the better one,
 * where the joint allows it.
 */
export const bushToStandard: Choice = (joint, cleanUp) => {
  const tried = centresOf(cleanUp)
    .map((centre) => ({ centre, outsideMm: outsideFor(joint, centre) }))
    .map((at) => ({ ...at, left: wallAndEdge(joint, { boreMm: at.outsideMm, shiftMm: at.centre.shiftMm }) }));
  const open = tried.filter(({ left }) => tooThin(left).length === 0);
  const mostWall = tried.reduce((one, other) => (other.left.wall.leftMm > one.left.wall.leftMm ? other : one));
  const chosen = open.find(({ centre }) => centre.centre === 'old') ?? open[0] ?? mostWall;
  const { centre, outsideMm, left } = chosen;
  const bush = bushOf(joint, outsideMm);
  if (!bush.ok) return { ...unworkable('bush', bush.refusal), ...left };
  return sketch(joint, centre, left, bush.value);
};

/** Outside of the bush: what cleans up, or room for the least wall; in steps. */
const outsideFor = ({ standardMm, shop }: WornJoint, { boreMm }: Centre): number =>
  steppedUpMm(Math.max(boreMm, standardMm + 2 * leastBushWallMm(standardMm, shop.figures)), shop.figures.bushStepMm);

type Bushed = { bush: BushToMake; seat: Parameters<typeof boredTo>[0]; fitInBoss: Sketched['fitInBoss'] };

function bushOf(joint: WornJoint, outsideMm: number): Outcome<Bushed> {
  const classes = bushFit(outsideMm);
  const fit = isoFit(outsideMm, classes.hole, classes.shaft);
  if (!fit.ok) return fit;
  const { boreBefore, boreAfter } = classes;
  const [before, after] = [
    limitsOfSize(joint.standardMm, boreBefore ?? 'E6'),
    limitsOfSize(joint.standardMm, boreAfter ?? 'H8'),
  ];
  if (!before.ok) return before;
  if (!after.ok) return after;
  const { boss, shop } = joint;
  const pressed = pressBush({
    ...{ interfaceMm: outsideMm, bossClass: classes.hole, bushClass: classes.shaft, bossOutsideMm: boss.outsideMm },
    ...{ bushBoreMm: joint.standardMm, bushBoreClass: boreBefore, wantedBoreClass: boreAfter, lengthMm: boss.lengthMm },
    boss: material(boss.material ?? 'structural-steel', boss.yieldMpa),
    bush: material('structural-steel'),
    ...{ lubrication: shop.lubrication, roomC: shop.figures.roomC },
  });
  if (!pressed.ok) return pressed;
  const glued = adhesiveFit({ ...fit.value.hole, lengthMm: boss.lengthMm });
  const bush: BushToMake = {
    outsideMm: span(fit.value.shaft),
    insideBeforeMm: span(before.value),
    insideAfterMm: span(after.value),
    ...{ lengthMm: boss.lengthMm, wallMm: bushWallMm(outsideMm, joint.standardMm), pressed: pressed.value },
    glued: glued.ok ? glued.value : null,
    sizedAfter: pressed.value.boreAfter?.withinWanted !== true,
  };
  return ok({ bush, seat: fit.value.hole, fitInBoss: inPlace(fit.value) });
}

function sketch(joint: WornJoint, centre: Centre, left: ReturnType<typeof wallAndEdge>, bushed: Bushed): Sketched {
  const { bush, seat, fitInBoss } = bushed;
  const made = standardPin(joint);
  if (!made.ok) return unworkable('bush', made.refusal);
  const inside = { smallestMm: bush.insideAfterMm.low, largestMm: bush.insideAfterMm.high };
  const pin = pinThere(joint, made.value);
  const beside = besideDrawn(joint, {
    ...{ boreMm: seat.nominalMm, shiftMm: centre.shiftMm, pinMm: joint.standardMm, otherHalfToo: false },
  });
  const bosses = joint.cleanUp.bosses.length;
  return {
    ...blank('bush'),
    ...left,
    ...{ bore: boredTo(seat, centre), bush, fitInBoss, comparison: beside.comparison },
    pin: made.value && span(made.value),
    slackMm: pin && slackOf(inside, pin),
    closed: [...closedByCrack(joint), ...closedByBoss(joint), ...tooThin(left)],
    cautions: [
      ...beside.cautions,
      ...pressCautions(joint, bush.pressed),
      ...(pin ? [] : [{ code: 'pin-not-measured' }]),
    ],
    made: together(bushPart(joint, bush, bosses), pinToMake(joint, made.value)),
    work: [
      { step: 'set-up-line-bore', times: 1, oncePer: joint.name },
      { step: 'bore-boss', times: bosses },
      { step: 'make-bush', times: bosses },
      { step: 'press-bush', times: bosses },
      { step: 'make-pin', times: made.value ? 1 : 0 },
    ],
    renews: { bore: true, pin: made.value !== null },
    works: ['draw-pin', 'press', 'heat-or-freeze'],
  };
}

function closedByBoss({ boss }: WornJoint): Refusal[] {
  const closed: Refusal[] = [];
  if (boss.split) closed.push({ code: 'boss-split' });
  if (boss.weldsNear) closed.push({ code: 'welds-near' });
  return closed;
}

/** What pressing does that somebody must know of: never cut down to what the steel stands, never kept silent. */
function pressCautions({ boss, shop }: WornJoint, pressed: PressedBush) {
  const { tightest, pressForceN, mayBeLoose, shrink } = pressed;
  return [
    ...(boss.material === null ? [{ code: 'boss-steel-taken-as-structural' }] : []),
    ...(boss.yieldMpa === null ? [] : [{ code: 'boss-yield-own', facts: { yieldMpa: boss.yieldMpa } }]),
    ...(tightest.bossYields ? [{ code: 'boss-yields', facts: { stressMpa: tightest.bossVonMisesMpa } }] : []),
    ...(tightest.bushYields ? [{ code: 'bush-yields', facts: { stressMpa: tightest.bushVonMisesMpa } }] : []),
    ...(mayBeLoose ? [{ code: 'bush-may-be-loose' }] : []),
    ...(shop.pressN !== null && pressForceN.high > shop.pressN
      ? [{ code: 'press-too-small', facts: { forceN: pressForceN.high, pressN: shop.pressN } }]
      : []),
    ...(shrink.heatTooHot ? [{ code: 'heat-alone-too-hot', facts: { heatToC: shrink.heatToC } }] : []),
  ];
}

function bushPart(joint: WornJoint, bush: BushToMake, count: number) {
  const finished = bush.sizedAfter ? 'after-pressing' : 'before';
  const [outside, before, after] = [bush.outsideMm, bush.insideBeforeMm, bush.insideAfterMm].map((size) => ({
    ...{ nominalMm: size.nominalMm, toleranceClass: size.toleranceClass, of: 'hole' as const },
    ...{ largestMm: size.high, smallestMm: size.low, upperDeviationUm: 0, lowerDeviationUm: 0 },
  }));
  if (!outside || !before || !after) return { parts: [], cautions: [] };
  const sizes = [sizeOf('outside', outside), sizeOf('inside', before), sizeOf('inside', after, finished)];
  const of = { kind: 'bush' as const, name: joint.name, count, material: 'steel' };
  return roundPart(of, outside.largestMm, bush.lengthMm, sizes, joint.shop);
}
