import { bulk } from './bulk.ts';
import { counting, NOW_KNOWN } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { meters } from './schema.ts';

/** What is known of a machine's hour meter besides what it shows. */
export type NewMeter = {
  machineId: number;
  /** full scale is 10^digits; null: not known */
  digits: number | null;
  /** machine hours the first reading's dial does not show; null: its dial is the machine hours */
  hoursBefore: number | null;
};

/** The row that counts; null: nobody has said anything of it. */
export const readMeter = (db: ReadableRecord, machineId: number): (NewMeter & { id: number }) | null =>
  bulk<[number, number | null, number | null]>(
    db,
    `SELECT m.id, m.digits, m.hours_before FROM meters m
     WHERE m.machine_id = @machineId AND ${counting('meters', 'm')} ORDER BY m.id DESC LIMIT 1`,
    { machineId, knownAt: NOW_KNOWN },
  ).map(([id, digits, hoursBefore]) => ({ id, machineId, digits, hoursBefore }))[0] ?? null;

export const insertMeter = (w: WritableRecord, entryId: number, meter: NewMeter & { reason?: string }): number =>
  insertInto(w, meters, { ...meter, entryId });
