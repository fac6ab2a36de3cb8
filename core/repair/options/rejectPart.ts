import { blank, type Choice, unworkable } from './choices.ts';
import { runningFit, slackOf } from './runningFit.ts';

/** The part is taken out of service and another put in its place: always open. */
export const rejectPart: Choice = (joint) => {
  const fit = runningFit(joint.use, joint.standardMm);
  if (!fit.ok) return unworkable('reject', fit.refusal);
  return {
    ...blank('reject'),
    slackMm: slackOf(fit.value.hole, fit.value.pin),
    renews: { bore: true, pin: true },
    works: ['draw-pin'],
    hoursUnknown: true,
  };
};
