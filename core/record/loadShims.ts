import type { Shim } from '../shop/measuringPoint.ts';
import { ofPoints } from './boundMachines.ts';
import { bound, bulk, type Horizon } from './bulk.ts';
import { chainOf, counting, standing } from './counting.ts';
import type { VisitOnRecord } from './loadVisits.ts';
import type { ReadableRecord } from './recordFile.ts';

/**
 * What packing changes the slack measured at each point. It is noted where it went in: at the slack itself, at another point
 * of the same position (behind the strip), or at the pin or a bore of the joint.
 */
export const shimRows = (db: ReadableRecord, horizon: Horizon) =>
  bulk<ShimRow>(
    db,
    `SELECT p.id, s.id, s.strip_down_id, s.shim_mm FROM shims s
     JOIN measuring_points at ON at.id = s.point_id
     JOIN measuring_points p ON p.measures = 'slack' AND (p.position_id = at.position_id OR EXISTS (
       SELECT 1 FROM joints j JOIN joint_members m ON m.joint_id = ${chainOf('j')}
       WHERE j.slack_point_id = p.id AND m.point_id = at.id AND ${counting('joints', 'j')} AND ${standing('m')}))
     WHERE ${counting('shims', 's')} ${ofPoints(horizon.within, 's.point_id')} ${ofPoints(horizon.within, 'p.id')}
     ORDER BY ${chainOf('s')}`,
    bound(horizon),
  );
type ShimRow = [slackPointId: number, id: number, stripDownId: number, shimMm: number];

export function shimsOf(rows: readonly ShimRow[], visits: ReadonlyMap<number, VisitOnRecord>): Map<number, Shim[]> {
  const shims = new Map<number, Shim[]>();
  for (const [pointId, id, stripDownId, shimMm] of rows) {
    const visit = visits.get(stripDownId);
    if (!visit) continue; // later than the as-of day, or the visit was struck
    const own = shims.get(pointId) ?? [];
    own.push({ id, takenOn: visit.takenOn, dialHours: visit.dialHours, shimMm });
    shims.set(pointId, own);
  }
  for (const own of shims.values()) own.sort((a, b) => (a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0));
  return shims;
}
