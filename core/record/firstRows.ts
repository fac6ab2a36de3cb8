import { bulk } from './bulk.ts';
import { chainOf, counting, NOW_KNOWN, standing } from './counting.ts';
import type { ReadableRecord } from './recordFile.ts';

/**
 * Rows as they were first entered, before anything was put right: what an import compares with, so that bringing the same
 * file in again makes no doubles and revives nothing that was put right since. Each is `[id, ...values]`.
 */
export type FirstRows = {
  /** machine, day, kind, dial, new dial, error */
  dials: [number, number, string, string, number | null, number | null, number | null][];
  /** point, day, dial on the sheet, station, event, size, gauge error */
  sizes: [number, number, string, number | null, string, string, number, number | null][];
  /** point, day, dial on the sheet, size put in */
  renewals: [number, number, string, number | null, number | null][];
  /** point, day, dial on the sheet, packing */
  shims: [number, number, string, number | null, number][];
  /** assembly, day, machine it went to */
  moves: [number, number, string, number | null][];
  /** assembly, position, day, kind, severity, note, closed on */
  findings: [number, number, number | null, string, string, string, string, string | null][];
};

export function firstRows(db: ReadableRecord): FirstRows {
  const first = { knownAt: NOW_KNOWN };
  return {
    dials: bulk(
      db,
      `SELECT d.id, d.machine_id, d.taken_on, d.kind, d.dial_hours, d.new_dial_hours, d.error_hours FROM dial_readings d
       WHERE d.chain_id IS NULL AND ${standing('d')} ORDER BY d.id`,
      first,
    ),
    sizes: bulk(
      db,
      `SELECT s.id, s.point_id, v.taken_on, v.dial_hours, s.station, s.event, s.size_mm, s.gauge_error_mm
       FROM sizes s JOIN strip_downs v ON v.id = s.strip_down_id
       WHERE s.chain_id IS NULL AND ${standing('s')} ORDER BY s.id`,
      first,
    ),
    renewals: bulk(
      db,
      `SELECT r.id, r.point_id, v.taken_on, v.dial_hours, r.size_mm FROM renewals r JOIN strip_downs v ON v.id = r.strip_down_id
       WHERE r.chain_id IS NULL AND ${standing('r')} ORDER BY r.id`,
      first,
    ),
    shims: bulk(
      db,
      `SELECT s.id, s.point_id, v.taken_on, v.dial_hours, s.shim_mm FROM shims s JOIN strip_downs v ON v.id = s.strip_down_id
       WHERE s.chain_id IS NULL AND ${standing('s')} ORDER BY s.id`,
      first,
    ),
    moves: bulk(
      db,
      `SELECT s.id, s.assembly_id, s.from_on, s.machine_id FROM sittings s
       WHERE s.chain_id IS NULL AND s.from_on IS NOT NULL AND ${standing('s')} ORDER BY s.id`,
      first,
    ),
    findings: bulk(
      db,
      `SELECT f.id, f.assembly_id, f.position_id, f.taken_on, f.kind, f.severity, f.note,
         (SELECT min(k.closed_on) FROM finding_closings k WHERE k.finding_id = ${chainOf('f')} AND ${counting('finding_closings', 'k')})
       FROM findings f WHERE f.chain_id IS NULL AND ${standing('f')} ORDER BY f.id`,
      first,
    ),
  };
}
