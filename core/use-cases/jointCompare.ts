import type { Handler } from '../contract/operation.ts';
import type { jointCompare, RulesShown } from '../contract/pinJoint.ts';
import { orRefuse } from '../outcome.ts';
import { knownOf } from '../repair/howKnown.ts';
import { notWorse } from '../repair/pin-joint/notWorse.ts';
import type { Lug, PinJoint } from '../repair/pin-joint/pinJoint.ts';
import { pinBendingMpa, pinMomentStiffLugsNmm } from '../repair/pin-joint/pinStress.ts';
import {
  contactStressMpa,
  type JointSteel,
  lugLigaments,
  lugProportions,
  PARTIAL_FACTORS,
  pinResistance,
} from '../repair/pin-joint/publishedRules.ts';
import type { Context } from './context.ts';

export const jointCompareHandler: Handler<typeof jointCompare, Context> = (_context, asked) => {
  const { asDrawn, repaired, forceN, steel, comesOut } = asked;
  const compared = orRefuse(notWorse(asDrawn, repaired, forceN));
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
            factors: knownOf(PARTIAL_FACTORS),
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
    bendingStiffLugsMpa: pinBendingMpa(pinMomentStiffLugsNmm(forceN, joint), joint.pinMm),
    eye: lugRules(joint.eye, forceN, steel.lugYieldMpa),
    fork: lugRules(joint.fork, forceN / 2, steel.lugYieldMpa),
  };
}

/** A lug of given thickness by its ligaments, or one shaped about its hole by its proportions. */
function lugRules(lug: Lug, forceN: number, yieldMpa: number): RulesShown['eye'] {
  const shaped = lugProportions(lug, forceN, yieldMpa);
  return {
    ...lugLigaments(lug, forceN, yieldMpa),
    shaped: {
      ...{ thicknessMm: lug.thicknessMm, widthMm: lug.widthMm, endMm: lug.endMm },
      ...{ thicknessWantedMm: shaped.thicknessMm, widthWantedMm: shaped.widthMm, endWantedMm: shaped.endMm },
    },
  };
}
