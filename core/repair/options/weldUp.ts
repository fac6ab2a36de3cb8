import { backToStandard } from './backToStandard.ts';
import { besideDrawn } from './besideDrawn.ts';
import { blank, type Choice, unworkable } from './choices.ts';
import { closedBySteel, nylonNear } from './closedByPart.ts';
import { wallAndEdge } from './wallAndEdge.ts';

/** Built up with weld and bored to the standard size. Closed by crack, steel, cast iron, and nylon near the heat. */
export const weldUp: Choice = (joint) => {
  const standard = backToStandard(joint);
  if (!standard.ok) return unworkable('weld', standard.refusal);
  const at = { boreMm: joint.standardMm, shiftMm: 0 };
  const beside = besideDrawn(joint, { ...at, pinMm: joint.standardMm, otherHalfToo: false });
  const bosses = joint.cleanUp.bosses.length;
  const crack = joint.part.crack && joint.part.procedure === null ? [{ code: 'steel-work-crack' }] : [];
  const steel = closedBySteel(joint, ['weld', 'build-up']);
  return {
    ...{ ...blank('weld'), ...standard.value, ...wallAndEdge(joint, at), comparison: beside.comparison },
    closed: [...crack.filter(({ code }) => !steel.some((one) => one.code === code)), ...steel, ...nylonNear(joint)],
    cautions: [...standard.value.cautions, ...beside.cautions, { code: 'weld-leaves-a-zone' }],
    work: [
      { step: 'weld-and-re-bore', times: bosses },
      { step: 'crack-check', times: joint.part.towingOrLifting ? 1 : 0 },
      { step: 'make-pin', times: joint.pin.renewed ? 1 : 0 },
    ],
    works: ['draw-pin', 'weld', 'build-up', 'crack-test'],
  };
};
