/** One machine that at some time pulled another. */
export type Pull = { machineId: number; pullerId: number };

/**
 * The machines of a ring in which each is pulled by the next and the last by the first: hours that would rest on themselves.
 *
 * @param machineId the machine the ring is looked for from
 * @returns the machines of the ring, that one first; null: there is none through it
 * @example ringOfPulls([{ machineId: 1, pullerId: 2 }, { machineId: 2, pullerId: 1 }], 1) // [1, 2]
 */
export function ringOfPulls(pulls: readonly Pull[], machineId: number): number[] | null {
  const seen = new Set<number>();
  const follow = (at: number, way: number[]): number[] | null => {
    for (const { pullerId } of pulls.filter((pull) => pull.machineId === at)) {
      if (pullerId === machineId) return way;
      if (seen.has(pullerId)) continue;
      seen.add(pullerId);
      const ring = follow(pullerId, [...way, pullerId]);
      if (ring) return ring;
    }
    return null;
  };
  return follow(machineId, [machineId]);
}
