import type { SizeEvent } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { chainOf, isLastOfChain, NOW_KNOWN, ofChain, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { sizes } from './schema.ts';
import { strikeOut, supersede } from './supersede.ts';

export type NewSize = {
  stripDownId: number;
  pointId: number;
  station: string;
  event: SizeEvent;
  sizeMm: number;
  gaugeId: number | null;
  gaugeErrorMm: number | null;
  gaugeStepMm: number;
  parked: boolean;
  question: string | null;
};

/** A size as it was entered, whether it still counts or not. */
export type SizeRow = {
  id: number;
  /** first row of its chain */
  chainId: number;
  pointId: number;
  stripDownId: number;
  takenOn: Day;
  station: string;
  event: SizeEvent;
  sizeMm: number;
  gauge: string;
  gaugeErrorMm: number | null;
  gaugeStepMm: number;
  parked: boolean;
  question: string | null;
  struck: boolean;
  /** the row it took the place of */
  supersedesId: number | null;
  reason: string;
  /** fitter of the strip-down */
  by: string;
  /** who entered this row, and when */
  madeBy: string;
  madeAt: string;
  superseded: boolean;
  undone: boolean;
};

type Row = [
  number,
  number,
  number,
  number,
  Day,
  string,
  SizeEvent,
  number,
  string,
  number | null,
  number,
  number,
  string | null,
  number,
  number | null,
  string,
  string,
  string,
  string,
  number,
  number,
];
// CROSS: from the points' sizes outwards; of a shop with few entries SQLite would else begin with those, and read every size
const SELECT = `SELECT s.id, ${chainOf('s')}, s.point_id, s.strip_down_id, v.taken_on, s.station, s.event, s.size_mm, COALESCE(g.name, ''),
  s.gauge_error_mm, s.gauge_step_mm, s.parked, s.question, s.struck, s.supersedes_id, s.reason, v.fitter, e.made_by, e.made_at,
  NOT (${isLastOfChain('sizes', 's')}), NOT (${standing('s')})
  FROM sizes s CROSS JOIN entries e ON e.id = s.entry_id LEFT JOIN gauges g ON g.id = s.gauge_id
  JOIN strip_downs v ON ${ofChain('v', 's.strip_down_id')} AND ${isLastOfChain('strip_downs', 'v')}`;

const sizeRow = (row: Row): SizeRow => ({
  id: row[0],
  chainId: row[1],
  pointId: row[2],
  stripDownId: row[3],
  takenOn: row[4],
  station: row[5],
  event: row[6],
  sizeMm: row[7],
  gauge: row[8],
  gaugeErrorMm: row[9],
  gaugeStepMm: row[10],
  parked: row[11] === 1,
  question: row[12],
  struck: row[13] === 1,
  supersedesId: row[14],
  reason: row[15],
  by: row[16],
  madeBy: row[17],
  madeAt: row[18],
  superseded: row[19] === 1,
  undone: row[20] === 1,
});

/** All sizes of the points named, also those put right, struck, parked or undone; in order of day, then of entry. */
export const sizeRowsOfPoints = (db: ReadableRecord, pointIds: readonly number[]): SizeRow[] =>
  bulk<Row>(
    db,
    `${SELECT} WHERE s.point_id IN (SELECT value FROM json_each(@ids)) ORDER BY v.taken_on, ${chainOf('s')}, s.id`,
    { ids: JSON.stringify(pointIds), knownAt: NOW_KNOWN },
  ).map(sizeRow);

export const readSizeRow = (db: ReadableRecord, id: number): SizeRow | null =>
  bulk<Row>(db, `${SELECT} WHERE s.id = @id`, { id, knownAt: NOW_KNOWN }).map(sizeRow)[0] ?? null;

export const insertSize = (w: WritableRecord, entryId: number, size: NewSize): number =>
  insertInto(w, sizes, { ...size, entryId });

/** Puts a size right; the old one stays visible. */
export const putSizeRight = (
  w: WritableRecord,
  entryId: number,
  rowId: number,
  right: { sizeMm?: number; parked: boolean; question?: string | null; reason: string },
): number => supersede(w, sizes, rowId, entryId, right);

/** Strikes a size out: nothing takes its place. */
export const strikeSize = (w: WritableRecord, entryId: number, rowId: number, reason: string): number =>
  strikeOut(w, sizes, rowId, entryId, reason);

/** Machines that points with sizes kept aside ever sat on, measured or put in; rows put right since are among them. */
export const machinesQuestioned = (db: ReadableRecord): number[] =>
  bulk<[number]>(
    db,
    `SELECT DISTINCT y.machine_id FROM (
       SELECT point_id FROM sizes WHERE parked = 1 UNION SELECT point_id FROM renewals WHERE parked = 1) q
     JOIN measuring_points m ON m.id = q.point_id JOIN positions p ON p.id = m.position_id
     LEFT JOIN position_sittings h ON h.position_id = p.id
     JOIN sittings y ON y.assembly_id IN (p.assembly_id, h.assembly_id) WHERE y.machine_id IS NOT NULL`,
    {},
  ).map(([machineId]) => machineId);
