import type { RenewalKind } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { chainOf, counting, isLastOfChain, NOW_KNOWN, ofChain, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { pointLimits, renewals, shims } from './schema.ts';
import { strikeOut, supersede } from './supersede.ts';

export type NewRenewal = {
  stripDownId: number;
  pointId: number;
  /** false: done elsewhere, some time between the size before and this day */
  hoursKnown: boolean;
  sizeMm: number | null;
  /** absent: a new part */
  kind?: RenewalKind;
  /** absent or empty: the whole part */
  station?: string;
  stamped?: boolean | null;
  parked?: boolean;
  question?: string | null;
};

export const insertRenewal = (w: WritableRecord, entryId: number, renewal: NewRenewal): number =>
  insertInto(w, renewals, { ...renewal, entryId });

/** A renewal as it counts, with the day it was done. */
export type RenewalRow = {
  id: number;
  /** first row of its chain */
  chainId: number;
  pointId: number;
  stripDownId: number;
  takenOn: Day;
  hoursKnown: boolean;
  kind: RenewalKind;
  station: string;
  stamped: boolean | null;
  sizeMm: number | null;
  parked: boolean;
  question: string | null;
  by: string;
};

type Row = [
  number,
  number,
  number,
  number,
  Day,
  number,
  RenewalKind,
  string,
  number | null,
  number | null,
  number,
  string | null,
  string,
];
const SELECT = `SELECT r.id, ${chainOf('r')}, r.point_id, r.strip_down_id, v.taken_on, r.hours_known, r.kind, r.station, r.stamped,
  r.size_mm, r.parked, r.question, v.fitter
  FROM renewals r JOIN strip_downs v ON ${ofChain('v', 'r.strip_down_id')} AND ${isLastOfChain('strip_downs', 'v')}
  WHERE ${counting('renewals', 'r')}`;
const renewalRow = (row: Row): RenewalRow => ({
  id: row[0],
  chainId: row[1],
  pointId: row[2],
  stripDownId: row[3],
  takenOn: row[4],
  hoursKnown: row[5] === 1,
  kind: row[6],
  station: row[7],
  stamped: row[8] === null ? null : row[8] === 1,
  sizeMm: row[9],
  parked: row[10] === 1,
  question: row[11],
  by: row[12],
});

/** Renewals of the points named that count, in order of day. */
export const renewalRowsOfPoints = (db: ReadableRecord, pointIds: readonly number[]): RenewalRow[] =>
  bulk<Row>(
    db,
    `${SELECT} AND r.point_id IN (SELECT value FROM json_each(@ids)) ORDER BY v.taken_on, ${chainOf('r')}`,
    { ids: JSON.stringify(pointIds), knownAt: NOW_KNOWN },
  ).map(renewalRow);

export const readRenewalRow = (db: ReadableRecord, id: number): RenewalRow | null =>
  bulk<Row>(db, `${SELECT} AND r.id = @id`, { id, knownAt: NOW_KNOWN }).map(renewalRow)[0] ?? null;

/** Puts a renewal right; the old row stays visible. */
export const putRenewalRight = (
  w: WritableRecord,
  entryId: number,
  rowId: number,
  right: { sizeMm?: number | null; stamped?: boolean | null; parked: boolean; reason: string },
): number => supersede(w, renewals, rowId, entryId, right);

/** Strikes a renewal out: the old part was never taken away. */
export const strikeRenewal = (w: WritableRecord, entryId: number, rowId: number, reason: string): number =>
  strikeOut(w, renewals, rowId, entryId, reason);

/** Limits that came with a renewal and count: rows of point_limits. @param chainId first row of the renewal */
export const limitsOfRenewal = (db: ReadableRecord, chainId: number): number[] =>
  bulk<[number]>(
    db,
    `SELECT l.id FROM point_limits l WHERE l.renewal_id = @chainId AND ${counting('point_limits', 'l')}`,
    { chainId, knownAt: NOW_KNOWN },
  ).map(([id]) => id);

export const strikeLimits = (w: WritableRecord, entryId: number, rowId: number, reason: string): number =>
  strikeOut(w, pointLimits, rowId, entryId, reason);

export const insertShim = (
  w: WritableRecord,
  entryId: number,
  shim: { stripDownId: number; pointId: number; shimMm: number },
): number => insertInto(w, shims, { ...shim, entryId });

/** Packing put in at the points named, in order of day. */
export const shimsOfPoints = (
  db: ReadableRecord,
  pointIds: readonly number[],
): { id: number; pointId: number; takenOn: Day; shimMm: number }[] =>
  bulk<[number, number, Day, number]>(
    db,
    `SELECT s.id, s.point_id, v.taken_on, s.shim_mm
     FROM shims s JOIN strip_downs v ON ${ofChain('v', 's.strip_down_id')} AND ${isLastOfChain('strip_downs', 'v')}
     WHERE s.point_id IN (SELECT value FROM json_each(@ids)) AND ${counting('shims', 's')} AND ${standing('v')}
     ORDER BY v.taken_on, ${chainOf('s')}`,
    { ids: JSON.stringify(pointIds), knownAt: NOW_KNOWN },
  ).map(([id, pointId, takenOn, shimMm]) => ({ id, pointId, takenOn, shimMm }));
