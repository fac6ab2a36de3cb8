import type { Choice } from './choices.ts';
import { blank } from './choices.ts';
import { closedByCrack } from './closedByPart.ts';
import { wallAndEdge } from './wallAndEdge.ts';

/** As it is: the slack of what was measured. Closed past its reject limit, by a crack, and by a finding that it must not be used. */
export const leave: Choice = (joint, cleanUp) => {
  const wornMm = Math.max(...cleanUp.outlines.map(({ wearMm }) => wearMm));
  const boreMm = Math.max(...joint.cleanUp.bosses.map(({ newBoreMm }) => newBoreMm)) + wornMm;
  const { measuredMm } = joint.pin;
  const slackMm = measuredMm === null ? null : { low: boreMm - measuredMm, high: boreMm - measuredMm };
  const closed = [...closedByCrack(joint)];
  if (joint.doNotUse) closed.push({ code: 'do-not-use' });
  const { rejectSlackMm } = joint;
  if (slackMm && rejectSlackMm !== null && slackMm.high > rejectSlackMm)
    closed.push({ code: 'past-reject', facts: { slackMm: slackMm.high, rejectSlackMm } });
  const cautions = measuredMm === null ? [{ code: 'pin-not-measured' }] : [];
  return { ...blank('leave'), ...wallAndEdge(joint, { boreMm, shiftMm: 0 }), slackMm, closed, cautions };
};
