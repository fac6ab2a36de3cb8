import type { Refusal } from '../../outcome.ts';
import { type SteelWork, workOpen } from '../cautions/closedWork.ts';
import type { WornJoint } from './wornJoint.ts';

const tows = ({ part }: WornJoint): boolean => part.towingOrLifting || part.kind !== 'other';

/** A cracked part that tows or lifts is rejected, whatever its hole would allow; the maker's written procedure opens it. */
export function closedByCrack(joint: WornJoint): Refusal[] {
  const opened = joint.part.procedure !== null && workOpen('weld', joint.part).open;
  return joint.part.crack && tows(joint) && !opened ? [{ code: 'cracked-towing-part' }] : [];
}

/** Why steel work is closed on this part, each reason by itself. */
export function closedBySteel(joint: WornJoint, works: readonly SteelWork[]): Refusal[] {
  const codes = works.flatMap((work) => {
    const judged = workOpen(work, joint.part);
    return judged.open ? [] : judged.because.map((because) => `steel-work-${because}`);
  });
  const { material } = joint.boss;
  if (material === null && joint.part.procedure === null) codes.push('steel-work-steel-not-known');
  if (material === 'cast-iron') codes.push('steel-work-cast-iron');
  return [...new Set(codes)].map((code) => ({ code }));
}

export const nylonNear = ({ nylonNear }: WornJoint): Refusal[] => (nylonNear ? [{ code: 'nylon-near' }] : []);
