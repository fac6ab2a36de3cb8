import { type PointDetails, pointsOfAssemblies } from '../record/pointStore.ts';
import { sittingOn } from '../series/dialsSeen.ts';
import type { PointOnRecord } from '../shop/shopLife.ts';
import type { Day } from '../units/day.ts';
import { type Context, recordOf } from './context.ts';
import { seriesAround } from './seriesNow.ts';

/** A measuring point with what the forecast knows of it and what a bench needs beside. */
export type BenchPoint = { life: PointOnRecord; details: PointDetails };

/** Points of the assemblies that sit, or sat on that day, on a machine; in the order of their items. */
export function pointsOnMachine(context: Context, machineId: number, on: Day): Map<number, BenchPoint> {
  const lives = seriesAround(context, machineId).life.points.filter(
    (point) => point.machineId === machineId || sittingOn(point.sittings, on)?.machineId === machineId,
  );
  const assemblyIds = [...new Set(lives.map(({ assemblyId }) => assemblyId))];
  const details = new Map(pointsOfAssemblies(recordOf(context), assemblyIds).map((point) => [point.id, point]));
  return new Map(
    lives.flatMap((life) => {
      const found = details.get(life.pointId);
      return found ? [[life.pointId, { life, details: found }] as const] : [];
    }),
  );
}
