import type { PointOnRecord } from '../shop/shopLife.ts';

/** The points of a shop, found by number, by the machine they sit on, and by every machine they ever sat on. */
export type PointsOfShop = {
  byId: ReadonlyMap<number, PointOnRecord>;
  /** in the order of the record */
  on(machineId: number): readonly PointOnRecord[];
  everOn(machineId: number): readonly PointOnRecord[];
  ofAssembly(assemblyId: number): readonly PointOnRecord[];
};

const NONE: readonly PointOnRecord[] = [];
const indexed = new WeakMap<readonly PointOnRecord[], PointsOfShop>();

/** Looked through once for each list of points, which is never changed. */
export function pointsOfShop(points: readonly PointOnRecord[]): PointsOfShop {
  const known = indexed.get(points);
  if (known) return known;
  const on = Map.groupBy(points, (point) => point.machineId);
  const ofAssembly = Map.groupBy(points, (point) => point.assemblyId);
  const everOn = new Map<number, PointOnRecord[]>();
  for (const point of points)
    for (const machineId of new Set([point.machineId, ...point.sittings.map((sitting) => sitting.machineId)])) {
      if (machineId === null) continue;
      const own = everOn.get(machineId);
      if (own) own.push(point);
      else everOn.set(machineId, [point]);
    }
  const index: PointsOfShop = {
    byId: new Map(points.map((point) => [point.pointId, point])),
    on: (machineId) => on.get(machineId) ?? NONE,
    everOn: (machineId) => everOn.get(machineId) ?? NONE,
    ofAssembly: (assemblyId) => ofAssembly.get(assemblyId) ?? NONE,
  };
  indexed.set(points, index);
  return index;
}
