import { limitsOfSize } from '../../iso286/limitsOfSize.ts';
import type { Refusal } from '../../outcome.ts';
import { WELDED_BOSS_OVER_MM } from '../fit-for-repair/fitForRepair.ts';
import { backToStandard } from './backToStandard.ts';
import { besideDrawn } from './besideDrawn.ts';
import { blank, type Choice, unworkable } from './choices.ts';
import { closedBySteel, nylonNear } from './closedByPart.ts';
import { roundPart, sizeOf, together } from './partsToMake.ts';
import { wallAndEdge } from './wallAndEdge.ts';
import type { WornJoint } from './wornJoint.ts';

/** The boss cut off and a new one welded in: its wear starts at nothing. Closed by the plate, by its steel, and without a bar to line up. */
export const newBoss: Choice = (joint) => {
  const standard = backToStandard(joint);
  if (!standard.ok) return unworkable('new-boss', standard.refusal);
  const at = { boreMm: joint.standardMm, shiftMm: 0 };
  const beside = besideDrawn(joint, { ...at, pinMm: joint.standardMm, otherHalfToo: false });
  const bosses = joint.cleanUp.bosses.length;
  const { low, high } = WELDED_BOSS_OVER_MM.value;
  return {
    ...{ ...blank('new-boss'), ...standard.value, comparison: beside.comparison },
    ...wallAndEdge({ ...joint, boss: { ...joint.boss, offMiddleMm: 0 } }, at),
    closed: [...closedBySteel(joint, ['weld']), ...nylonNear(joint), ...closedByPlate(joint)],
    cautions: [
      ...standard.value.cautions,
      ...beside.cautions,
      { code: 'welded-boss-shrinks', facts: { lowMm: low, highMm: high } },
    ],
    made: together(bossPart(joint, bosses), standard.value.made),
    work: [
      { step: 'make-boss', times: bosses },
      { step: 'fit-boss', times: bosses },
      { step: 'crack-check', times: joint.part.towingOrLifting ? 1 : 0 },
      { step: 'make-pin', times: joint.pin.renewed ? 1 : 0 },
    ],
    works: ['draw-pin', 'cut', 'weld', 'new-boss', 'crack-test'],
  };
};

function closedByPlate({ boss, shop, cleanUp }: WornJoint): Refusal[] {
  const closed: Refusal[] = [];
  if (boss.plateThinOrUnknown !== false)
    closed.push({ code: boss.plateThinOrUnknown === null ? 'plate-not-looked-at' : 'plate-thin-or-unknown' });
  if (cleanUp.bosses.length > 1 && !shop.alignmentBar) closed.push({ code: 'no-alignment-bar' });
  return closed;
}

function bossPart({ name, boss, standardMm, use, shop }: WornJoint, count: number) {
  const hole = limitsOfSize(standardMm, use === 'fixed-pin' ? 'H7' : 'H9');
  const sizes = hole.ok ? [sizeOf('inside', hole.value, 'after-pressing')] : [];
  return roundPart({ kind: 'boss', name, count, material: 'steel' }, boss.outsideMm, boss.lengthMm, sizes, shop);
}
