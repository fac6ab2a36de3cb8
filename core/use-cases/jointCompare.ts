import type { Handler } from '../contract/operation.ts';
import type { jointCompare, RulesShown } from '../contract/pinJoint.ts';
import { orRefuse } from '../outcome.ts';
import { notWorse } from '../repair/pin-joint/notWorse.ts';
import type { PinJoint } from '../repair/pin-joint/pinJoint.ts';
import {
  contactStressMpa,
  type JointSteel,
  lugLigaments,
  PARTIAL_FACTORS,
  pinResistance,
} from '../repair/pin-joint/publishedRules.ts';
import type { Context } from './context.ts';

export const jointCompareHandler: Handler<typeof jointCompare, Context> = (_context, asked) => {
  const { asDrawn, repaired, forceN, steel, comesOut } = asked;
  const compared = orRefuse(notWorse(asDrawn, repaired, forceN));
  const { howKnown, source } = PARTIAL_FACTORS;
  return {
    figures: compared.figures,
    notWorse: compared.notWorse,
    worst: compared.worst.figure,
    published:
      forceN === null
        ? null
        : {
            asDrawn: rulesOf(asDrawn, forceN, steel, comesOut),
            repaired: rulesOf(repaired, forceN, steel, comesOut),
            factors: { howKnown, source },
          },
  };
};

/** The eye carries all of the pull, each fork plate half. */
function rulesOf(joint: PinJoint, forceN: number, steel: JointSteel, comesOut: boolean): RulesShown {
  const { shearUse, bearingUse, momentUse, combinedUse } = pinResistance(joint, forceN, steel, comesOut);
  const contact = [
    contactStressMpa(forceN, joint.pinMm, joint.eye),
    contactStressMpa(forceN / 2, joint.pinMm, joint.fork),
  ];
  return {
    ...{ shearUse, bearingUse, momentUse, combinedUse },
    contactMpa: Math.max(...contact),
    contactUpToMpa: (2.5 * steel.lugYieldMpa) / PARTIAL_FACTORS.value.m6Ser,
    eye: lugLigaments(joint.eye, forceN, steel.lugYieldMpa),
    fork: lugLigaments(joint.fork, forceN / 2, steel.lugYieldMpa),
  };
}
