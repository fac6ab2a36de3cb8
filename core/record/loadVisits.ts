import type { Day } from '../units/day.ts';
import { ofMachines, ofVisits } from './boundMachines.ts';
import { bound, bulk, type Horizon } from './bulk.ts';
import { chainOf, counting } from './counting.ts';
import type { ReadableRecord } from './recordFile.ts';

/** A strip-down as it counts: its day, and the dial then [h], which follows when the reading is put right. */
export type VisitOnRecord = { takenOn: Day; machineId: number | null; dialHours: number | null };

/** What the dial showed, by the first row of each reading's chain; a parked reading says nothing. */
export const loadDials = (db: ReadableRecord, horizon: Horizon): Map<number, number> =>
  new Map(
    bulk<[chain: number, dialHours: number]>(
      db,
      `SELECT ${chainOf('d')}, d.dial_hours FROM dial_readings d
       WHERE d.parked = 0 AND d.dial_hours IS NOT NULL AND ${counting('dial_readings', 'd')}
         ${ofMachines(horizon.within, 'd.machine_id')}`,
      bound(horizon),
    ),
  );

/**
 * Strip-downs up to the as-of day, by the first row of each chain.
 * @param noted those in which something of the points asked for is noted; of the whole shop all are read
 */
export function loadVisits(
  db: ReadableRecord,
  horizon: Horizon,
  dials: ReadonlyMap<number, number>,
  noted: readonly number[],
): Map<number, VisitOnRecord> {
  type Row = [
    chain: number,
    takenOn: Day,
    machineId: number | null,
    noted: number | null,
    dialReadingId: number | null,
  ];
  const rows = bulk<Row>(
    db,
    `SELECT ${chainOf('v')}, v.taken_on, v.machine_id, v.dial_hours, v.dial_reading_id FROM strip_downs v
     WHERE v.taken_on <= @asOf AND ${counting('strip_downs', 'v')} ${ofVisits(horizon.within, 'v')}`,
    { ...bound(horizon), ...(horizon.within && { visits: JSON.stringify(noted) }) },
  );
  return new Map(
    rows.map(([chain, takenOn, machineId, noted, dialReadingId]) => [
      chain,
      { takenOn, machineId, dialHours: dialReadingId === null ? noted : (dials.get(dialReadingId) ?? null) },
    ]),
  );
}
