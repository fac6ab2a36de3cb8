import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { chainOf, isLastOfChain, NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { workShares } from './schema.ts';

export type NewWorkShare = { machineId: number; fromOn: Day | null; share: number; workType: string | null };

/** A share as it was entered, whether it still counts or not. */
export type WorkShareRow = NewWorkShare & RowsHistory & { id: number };

/** Who entered a row and when, and what became of it. */
export type RowsHistory = {
  struck: boolean;
  reason: string;
  madeAt: string;
  madeBy: string;
  /** a later row has its place */
  superseded: boolean;
};

type Row = [number, number, Day | null, number, string | null, number, string, string, string, number];

/** All shares of a machine that were not undone, by day, those put right before what took their place. */
export const workShareRowsOf = (db: ReadableRecord, machineId: number): WorkShareRow[] =>
  bulk<Row>(
    db,
    `SELECT w.id, w.machine_id, w.from_on, w.share, w.work_type, w.struck, w.reason, e.made_at, e.made_by,
       NOT (${isLastOfChain('work_shares', 'w')})
     FROM work_shares w JOIN entries e ON e.id = w.entry_id
     WHERE w.machine_id = @machineId AND ${standing('w')} ORDER BY w.from_on, ${chainOf('w')}, w.id`,
    { machineId, knownAt: NOW_KNOWN },
  ).map(([id, ofMachine, fromOn, share, workType, struck, reason, madeAt, madeBy, superseded]) => ({
    id,
    machineId: ofMachine,
    fromOn,
    share,
    workType,
    struck: struck === 1,
    reason,
    madeAt,
    madeBy,
    superseded: superseded === 1,
  }));

export const insertWorkShare = (
  w: WritableRecord,
  entryId: number,
  share: NewWorkShare & { reason?: string },
): number => insertInto(w, workShares, { ...share, entryId });
