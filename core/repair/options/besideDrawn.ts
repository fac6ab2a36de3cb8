import type { Caution } from '../../outcome.ts';
import { type NotWorse, notWorse } from '../pin-joint/notWorse.ts';
import type { PinJoint } from '../pin-joint/pinJoint.ts';
import type { WornJoint } from './wornJoint.ts';

/** The repaired joint beside the drawn one, and a caution where it is worse; null: the other half is not known. */
export type BesideDrawn = { comparison: NotWorse | null; cautions: Caution[] };

/**
 * A joint with a hole bored out in the half that wore, and another pin, beside the same joint as drawn. The shift is taken off
 * the end the pin pulls against.
 */
export function besideDrawn(
  { asDrawn }: WornJoint,
  repaired: { boreMm: number; shiftMm: number; pinMm: number; otherHalfToo: boolean },
): BesideDrawn {
  if (!asDrawn) return { comparison: null, cautions: [{ code: 'other-half-not-known' }] };
  const { joint, worn } = asDrawn;
  const other = worn === 'eye' ? 'fork' : 'eye';
  const bored = { ...joint[worn], boreMm: repaired.boreMm, endMm: joint[worn].endMm - repaired.shiftMm };
  const mate = repaired.otherHalfToo ? { ...joint[other], boreMm: repaired.boreMm } : joint[other];
  const after: PinJoint = { ...joint, pinMm: repaired.pinMm, [worn]: bored, [other]: mate };
  const compared = notWorse(joint, after, null);
  if (!compared.ok)
    return { comparison: null, cautions: [{ code: compared.refusal.code, facts: compared.refusal.facts ?? {} }] };
  const { worst } = compared.value;
  const cautions = compared.value.notWorse
    ? []
    : [{ code: 'weaker-than-drawn', facts: { figure: worst.figure, ratio: worst.ratio } }];
  return { comparison: compared.value, cautions };
}
