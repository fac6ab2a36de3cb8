import type { DialEventKind } from '../shop/machineLife.ts';
import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { chainOf, isLastOfChain, NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { dialReadings } from './schema.ts';
import { supersede } from './supersede.ts';

export type NewDialReading = {
  machineId: number;
  takenOn: Day;
  kind: DialEventKind;
  dialHours: number | null;
  newDialHours: number | null;
  errorHours: number | null;
  /** machine hours in one hour of the dial from here on; null or absent: 1, or as before */
  hoursPerDialHour?: number | null;
  saidBy: string;
  parked: boolean;
  /** code of what was odd about it */
  question: string | null;
  inDay: number;
  reason?: string;
};

/** A row of a machine's hours as it was entered, whether it still counts or not. */
export type DialRow = {
  id: number;
  /** first row of its chain: what strip-downs and moves refer to */
  chainId: number;
  machineId: number;
  takenOn: Day;
  kind: DialEventKind;
  dialHours: number | null;
  newDialHours: number | null;
  errorHours: number | null;
  hoursPerDialHour: number | null;
  saidBy: string;
  parked: boolean;
  question: string | null;
  inDay: number;
  struck: boolean;
  reason: string;
  madeAt: string;
  madeBy: string;
  /** a later row has its place */
  superseded: boolean;
  undone: boolean;
};

type Row = [
  number,
  number,
  number,
  Day,
  DialEventKind,
  number | null,
  number | null,
  number | null,
  string,
  number,
  string | null,
  number,
  number,
  string,
  string,
  number,
  number,
  number | null,
  string,
];

const SELECT = `SELECT d.id, ${chainOf('d')}, d.machine_id, d.taken_on, d.kind, d.dial_hours, d.new_dial_hours, d.error_hours,
  d.said_by, d.parked, d.question, d.in_day, d.struck, d.reason, e.made_at,
  NOT (${isLastOfChain('dial_readings', 'd')}), NOT (${standing('d')}),
  d.hours_per_dial_hour, e.made_by
  FROM dial_readings d CROSS JOIN entries e ON e.id = d.entry_id`;

const dialRow = (row: Row): DialRow => ({
  id: row[0],
  chainId: row[1],
  machineId: row[2],
  takenOn: row[3],
  kind: row[4],
  dialHours: row[5],
  newDialHours: row[6],
  errorHours: row[7],
  saidBy: row[8],
  parked: row[9] === 1,
  question: row[10],
  inDay: row[11],
  struck: row[12] === 1,
  reason: row[13],
  madeAt: row[14],
  superseded: row[15] === 1,
  undone: row[16] === 1,
  hoursPerDialHour: row[17],
  madeBy: row[18],
});

/** All rows of a machine's hours, also those put right, struck, parked or undone; in order of day, then of entry. */
export const dialRowsOf = (db: ReadableRecord, machineId: number): DialRow[] =>
  bulk<Row>(db, `${SELECT} WHERE d.machine_id = @machineId ORDER BY d.taken_on, d.in_day, ${chainOf('d')}, d.id`, {
    machineId,
    knownAt: NOW_KNOWN,
  }).map(dialRow);

export const readDialRow = (db: ReadableRecord, id: number): DialRow | null =>
  bulk<Row>(db, `${SELECT} WHERE d.id = @id`, { id, knownAt: NOW_KNOWN }).map(dialRow)[0] ?? null;

export const insertDialReading = (w: WritableRecord, entryId: number, reading: NewDialReading): number =>
  insertInto(w, dialReadings, { ...reading, entryId });

export const putDialRight = (
  w: WritableRecord,
  entryId: number,
  rowId: number,
  right: {
    takenOn: Day;
    dialHours: number;
    saidBy: string;
    reason: string;
    parked: boolean;
    question: string | null;
  },
): number => supersede(w, dialReadings, rowId, entryId, right);

/** Says at which pace the clock of the meter that a row fitted runs. */
export const putClockRight = (
  w: WritableRecord,
  entryId: number,
  rowId: number,
  right: { hoursPerDialHour: number; reason: string },
): number => supersede(w, dialReadings, rowId, entryId, right);
