import { type Outcome, ok } from '../../outcome.ts';
import { boredTo, type Centre } from './boredHole.ts';
import type { Sketched } from './choices.ts';
import { pinToMake } from './partsToMake.ts';
import { inPlace, pinThere, runningFit, slackOf, span } from './runningFit.ts';
import type { WornJoint } from './wornJoint.ts';

const OLD_CENTRE: Centre = { centre: 'old', boreMm: 0, shiftMm: 0, toward: [] };

/**
 * A hole of the standard size again, about its old centre, with a new pin or the old one: what welding up and a new boss come to.
 * @refuses what runningFit refuses
 */
export function backToStandard(
  joint: WornJoint,
): Outcome<Pick<Sketched, 'bore' | 'pin' | 'fitOnPin' | 'slackMm' | 'made' | 'renews' | 'cautions'>> {
  const fit = runningFit(joint.use, joint.standardMm);
  if (!fit.ok) return fit;
  const { hole, pin: newPin } = fit.value;
  const made = joint.pin.renewed ? newPin : null;
  const pin = pinThere(joint, made);
  return ok({
    bore: boredTo(hole, OLD_CENTRE),
    pin: made && span(made),
    fitOnPin: made && inPlace(fit.value.fit),
    slackMm: pin && slackOf(hole, pin),
    made: pinToMake(joint, made),
    renews: { bore: true, pin: made !== null },
    cautions: pin ? [] : [{ code: 'pin-not-measured' }],
  });
}
