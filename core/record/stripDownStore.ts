import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { chainOf, counting, NOW_KNOWN, ofChain } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { stripDowns } from './schema.ts';

export type StripDownOnRecord = {
  id: number;
  machineId: number | null;
  takenOn: Day;
  dialReadingId: number | null;
  dialHours: number | null;
  fitter: string;
  note: string;
};

/** Strip-downs of a machine, in order of day; of all machines when none is named. */
export const stripDownsOf = (db: ReadableRecord, machineId: number | null = null): StripDownOnRecord[] =>
  bulk<[number, number | null, Day, number | null, number | null, string, string]>(
    db,
    `SELECT ${chainOf('v')}, v.machine_id, v.taken_on, v.dial_reading_id,
       COALESCE((SELECT d.dial_hours FROM dial_readings d
        WHERE ${ofChain('d', 'v.dial_reading_id')} AND ${counting('dial_readings', 'd')}), v.dial_hours), v.fitter, v.note
     FROM strip_downs v WHERE ${machineId === null ? '' : 'v.machine_id = @machineId AND'} ${counting('strip_downs', 'v')}
     ORDER BY v.taken_on, ${chainOf('v')}`,
    { machineId, knownAt: NOW_KNOWN },
  ).map(([id, ofMachine, takenOn, dialReadingId, dialHours, fitter, note]) => ({
    id,
    machineId: ofMachine,
    takenOn,
    dialReadingId,
    dialHours,
    fitter,
    note,
  }));

/** Strip-downs of a machine on one day that were entered after another one was, the first of them first. */
export const stripDownsSince = (
  db: ReadableRecord,
  of: { machineId: number; takenOn: Day; afterStripDownId: number },
): { id: number; fitter: string; madeAt: string }[] =>
  bulk<[number, string, string]>(
    db,
    `SELECT ${chainOf('v')}, v.fitter, e.made_at FROM strip_downs v CROSS JOIN entries e ON e.id = v.entry_id
     WHERE v.machine_id = @machineId AND v.taken_on = @takenOn AND ${chainOf('v')} > @afterStripDownId
       AND ${counting('strip_downs', 'v')}
     ORDER BY ${chainOf('v')}`,
    { ...of, knownAt: NOW_KNOWN },
  ).map(([id, fitter, madeAt]) => ({ id, fitter, madeAt }));

/** @param row machineId null: the assembly lay on the shelf; dialReadingId: first row of the reading's chain */
export const insertStripDown = (
  w: WritableRecord,
  entryId: number,
  row: {
    machineId: number | null;
    takenOn: Day;
    dialHours: number | null;
    dialReadingId: number | null;
    fitter: string;
    note: string;
  },
): number => insertInto(w, stripDowns, { ...row, entryId });
