import type { HoursSource } from '../shop/machineLife.ts';
import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { chainOf, counting, isLastOfChain, NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { hoursSources } from './schema.ts';
import type { RowsHistory } from './workShareStore.ts';

/** Columns of a source: what does not belong to its kind is null. */
export type NewHoursSource = {
  machineId: number;
  fromOn: Day;
  kind: HoursSource['kind'];
  pullerId: number | null;
  share: number | null;
  hoursPerYear: number | null;
  errorShare: number | null;
  saidBy: string;
};

/** A source as it was entered, whether it still counts or not. */
export type HoursSourceRow = NewHoursSource & RowsHistory & { id: number };

type Row = [
  number,
  number,
  Day,
  HoursSource['kind'],
  number | null,
  number | null,
  number | null,
  number | null,
  string,
  number,
  string,
  string,
  string,
  number,
];

/** All sources of a machine that were not undone, by day, those put right before what took their place. */
export const hoursSourceRowsOf = (db: ReadableRecord, machineId: number): HoursSourceRow[] =>
  bulk<Row>(
    db,
    `SELECT h.id, h.machine_id, h.from_on, h.kind, h.puller_id, h.share, h.hours_per_year, h.error_share, h.said_by,
       h.struck, h.reason, e.made_at, e.made_by, NOT (${isLastOfChain('hours_sources', 'h')})
     FROM hours_sources h JOIN entries e ON e.id = h.entry_id
     WHERE h.machine_id = @machineId AND ${standing('h')} ORDER BY h.from_on, ${chainOf('h')}, h.id`,
    { machineId, knownAt: NOW_KNOWN },
  ).map((row) => ({
    id: row[0],
    machineId: row[1],
    fromOn: row[2],
    kind: row[3],
    pullerId: row[4],
    share: row[5],
    hoursPerYear: row[6],
    errorShare: row[7],
    saidBy: row[8],
    struck: row[9] === 1,
    reason: row[10],
    madeAt: row[11],
    madeBy: row[12],
    superseded: row[13] === 1,
  }));

/** Which machine ever pulls which, by all rows that count but one. */
export const pullsOnRecord = (
  db: ReadableRecord,
  exceptRowId: number | null,
): { machineId: number; pullerId: number }[] =>
  bulk<[number, number]>(
    db,
    `SELECT h.machine_id, h.puller_id FROM hours_sources h
     WHERE h.puller_id IS NOT NULL AND h.id IS NOT @exceptRowId AND ${counting('hours_sources', 'h')}`,
    { exceptRowId, knownAt: NOW_KNOWN },
  ).map(([machineId, pullerId]) => ({ machineId, pullerId }));

export const insertHoursSource = (
  w: WritableRecord,
  entryId: number,
  source: NewHoursSource & { reason?: string },
): number => insertInto(w, hoursSources, { ...source, entryId });
