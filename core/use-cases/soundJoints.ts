import type { z } from 'zod';
import type { KindJoint, zKindPoint } from '../contract/shop.ts';
import { RefusedError } from '../outcome.ts';

type PointOfKind = { item: number; point: string };
type Positions = readonly { item: number; points: readonly Pick<z.output<typeof zKindPoint>, 'name' | 'measures'>[] }[];

/** A point of an assembly by its item and its name, however it is written. */
export const keyOfPoint = ({ item, point }: PointOfKind): string => `${item} ${point.toLowerCase()}`;

/**
 * Refuses a joint that is none: its slack is measured as slack, its pin as a diameter, its bores as bores, and a point's
 * slack is that of one joint.
 * @throws RefusedError joint-point-unknown, joint-point-other (it measures something else), joint-twice
 */
export function refuseOddJoints(positions: Positions, joints: readonly KindJoint[], path: string): void {
  const measures = new Map(
    positions.flatMap(({ item, points }) =>
      points.map((point) => [keyOfPoint({ item, point: point.name }), point.measures] as const),
    ),
  );
  const slacks = new Set<string>();
  for (const [place, { slack, pin, bores }] of joints.entries()) {
    const at = `${path}.joints.${place}`;
    const ends = [
      [slack, 'slack', `${at}.slack`],
      [pin, 'diameter', `${at}.pin`],
      ...bores.map((bore, number) => [bore, 'bore', `${at}.bores.${number}`] as const),
    ] as const;
    for (const [point, expected, where] of ends) {
      const found = measures.get(keyOfPoint(point));
      const facts = { path: where, item: point.item, point: point.point };
      if (found === undefined) throw new RefusedError({ code: 'joint-point-unknown', facts });
      if (found !== expected)
        throw new RefusedError({ code: 'joint-point-other', facts: { ...facts, measures: found } });
    }
    if (slacks.has(keyOfPoint(slack))) throw new RefusedError({ code: 'joint-twice', facts: { path: `${at}.slack` } });
    slacks.add(keyOfPoint(slack));
  }
}
