import { RefusedError } from '../../outcome.ts';
import { pointsOfAssemblies } from '../../record/pointStore.ts';
import type { ReadableRecord } from '../../record/recordFile.ts';
import type { Measures } from '../../shop/assemblyKinds.ts';
import { limitsOn } from '../../shop/limitsOn.ts';
import type { PointOnRecord } from '../../shop/shopLife.ts';
import type { ShopNow } from '../shopNow.ts';

/** Measuring points of one joint: its hole, its pin, their slack; null where it has none. */
export type JointPoints = {
  all: readonly PointOnRecord[];
  bore: PointOnRecord | null;
  pin: PointOnRecord | null;
  slack: PointOnRecord | null;
};

/** @throws RefusedError unknown-position; not-a-joint (nothing there is measured as a hole, a pin or their slack) */
export function jointPoints(
  record: ReadableRecord,
  { shop }: { shop: Pick<ShopNow['shop'], 'life'> },
  positionId: number,
): JointPoints {
  const all = shop.life.points.filter((point) => point.positionId === positionId);
  const [first] = all;
  if (!first) throw new RefusedError({ code: 'unknown-position', facts: { path: 'positionId', positionId } });
  const measures = measuresOf(record, [first.assemblyId]);
  const that = (what: Measures) => all.find((point) => measuredAs(point, measures) === what) ?? null;
  const found = { all, bore: that('bore'), pin: that('diameter'), slack: that('slack') };
  if (!found.bore && !found.pin && !found.slack)
    throw new RefusedError({ code: 'not-a-joint', facts: { path: 'positionId', positionId } });
  return found;
}

const measuresOf = (record: ReadableRecord, assemblyIds: readonly number[]): Map<number, Measures> =>
  new Map(pointsOfAssemblies(record, assemblyIds).map(({ id, measures }) => [id, measures as Measures]));

/** A gap between parts that do not run in one another, a keeper and its ring, is no slack of a pin: there is nothing to bore. */
const isGap = ({ point }: PointOnRecord): boolean => /\bgap\b/i.test(point);

const measuredAs = (point: PointOnRecord, measures: ReadonlyMap<number, Measures>): Measures | null =>
  isGap(point) ? null : (measures.get(point.pointId) ?? null);

/** Positions of a machine that have a hole or the slack of one: what this screen can be opened for. */
export function jointPositions(record: ReadableRecord, { shop }: ShopNow, machineId: number) {
  const points = shop.life.points.filter((point) => point.machineId === machineId);
  const measures = measuresOf(record, [...new Set(points.map(({ assemblyId }) => assemblyId))]);
  const worn = points.filter((point) => ['bore', 'slack'].includes(measuredAs(point, measures) ?? ''));
  const byPosition = new Map(
    worn.map(({ positionId, item, position }) => [positionId, { positionId, item, position }]),
  );
  return [...byPosition.values()].sort((one, other) => one.item - other.item || one.positionId - other.positionId);
}

/** The last size of a point and its station; null: never measured. */
export const lastSizes = (point: PointOnRecord | null): readonly { station: string; sizeMm: number }[] => {
  const sizes = point?.sizes.filter(({ parked }) => !parked) ?? [];
  const last = sizes.at(-1)?.takenOn;
  return sizes.filter(({ takenOn }) => takenOn === last);
};

export const limitsNow = (point: PointOnRecord, { asOf }: Pick<ShopNow, 'asOf'>) => limitsOn(point, asOf);
