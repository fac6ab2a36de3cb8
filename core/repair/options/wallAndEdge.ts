import type { Refusal } from '../../outcome.ts';
import { edgeLeftMm, wallLeftMm } from '../clean-up/wallLeft.ts';
import { leastBossWallMm, leastEndLigamentMm } from '../shopFigures.ts';
import type { LeftStanding } from './repairOption.ts';
import type { WornJoint } from './wornJoint.ts';

/**
 * What a bore leaves of the boss and of the plate's end, beside what a shop leaves standing. A shift is taken to go where
 * metal is scarcest.
 */
export function wallAndEdge(
  { boss, shop: { figures } }: Pick<WornJoint, 'boss' | 'shop'>,
  bored: { boreMm: number; shiftMm: number },
): { wall: LeftStanding; edge: LeftStanding | null } {
  const at = { boredMm: bored.boreMm, shiftMm: bored.shiftMm };
  const wall = {
    leftMm: wallLeftMm({ ...at, bossOutsideMm: boss.outsideMm, offMiddleMm: boss.offMiddleMm }),
    wantedMm: leastBossWallMm(bored.boreMm, figures),
  };
  const { centreToEdgeMm } = boss;
  if (centreToEdgeMm === null) return { wall, edge: null };
  return {
    wall,
    edge: { leftMm: edgeLeftMm({ ...at, centreToEdgeMm }), wantedMm: leastEndLigamentMm(bored.boreMm, figures) },
  };
}

/** Why too little metal is left, if so. */
export function tooThin({ wall, edge }: ReturnType<typeof wallAndEdge>): Refusal[] {
  const closed: Refusal[] = [];
  if (wall.leftMm < wall.wantedMm) closed.push({ code: 'boss-wall-too-thin', facts: { ...wall } });
  if (edge && edge.leftMm < edge.wantedMm) closed.push({ code: 'edge-too-near', facts: { ...edge } });
  return closed;
}
