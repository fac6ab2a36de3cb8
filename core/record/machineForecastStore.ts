import type { ListGroup } from '../shop/role.ts';
import { idsGivenOut } from './allRows.ts';
import { boundMachines } from './boundMachines.ts';
import { bulk } from './bulk.ts';
import { NOW_KNOWN, standing } from './counting.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';

/** Where a machine stands in the list, and what its scale and its search go by: read without its line. */
export type ListPlace = {
  group: ListGroup;
  /** deciding hours left of what reaches its limit first, and its low and middle hours left [h]; null: none, or beyond */
  soonestHours: number | null;
  lowHours: number | null;
  middleHours: number | null;
  /** hours from now to the winter after the one being planned [h] */
  planLineHours: number | null;
};

/** A machine where it stands in the list. */
export type Placed = ListPlace & { machineId: number };

/** The last forecast of a machine: its place in the list, the names it is found by, its line and what it is due for as JSON. */
export type KeptMachineForecast = {
  machineId: number;
  place: ListPlace;
  assemblies: string;
  line: string;
  due: string;
};

/** Under which day and learning forecasts are kept. */
export type KeptUnder = { asOf: string; learned: string };

/** The mark says that whoever wrote to the record since kept the marks of stale forecasts up to date. */
const writingOf = (db: ReadableRecord): string | null =>
  bulk<[string]>(db, 'SELECT revision FROM forecasts_marked WHERE id = 1', {})[0]?.[0] ?? null;

const among = (machineIds: readonly number[] | null, id: string): string =>
  machineIds ? `${id} IN (SELECT value FROM json_each(@machines))` : 'TRUE';
const boundTo = (machineIds: readonly number[] | null) => (machineIds ? { machines: JSON.stringify(machineIds) } : {});

/** Where a machine stands by its last forecast. It holds unless something it rests on was entered since, or day or learning are others. */
export type KeptPlace = Placed & { holds: boolean };

/** Where machines on record stand, of all where none are named: those that hold as they stand in the list; and those never forecast. */
export function keptPlaces(
  db: ReadableRecord,
  revision: string,
  { asOf, learned }: KeptUnder,
  machineIds: readonly number[] | null = null,
): { kept: KeptPlace[]; never: number[] } {
  const isMarked = writingOf(db) === revision;
  type Hours = number | null;
  type Row = [
    machineId: number,
    holds: number,
    group: ListGroup,
    soonest: Hours,
    low: Hours,
    middle: Hours,
    plan: Hours,
  ];
  const rows = bulk<Row>(
    db,
    `SELECT k.machine_id, k.stale = 0 AND k.as_of = @asOf AND k.learned = @learned, k.list_group, k.soonest_hours, k.low_hours,
       k.middle_hours, k.plan_line_hours
     FROM machine_forecasts k WHERE ${among(machineIds, 'k.machine_id')}
     ORDER BY k.as_of, k.learned, k.stale, k.list_group, k.soonest_hours`,
    { asOf, learned, ...boundTo(machineIds) },
  );
  // each table walked once: to look every machine up from its forecast takes several times as long
  const never = new Set(machinesStanding(db, machineIds));
  const onRecord = rows.filter((row) => never.delete(row[0]));
  // by their numbers: to take each row apart by name is a walk of its own
  const kept = onRecord.map((row) => ({
    machineId: row[0],
    holds: isMarked && row[1] === 1,
    group: row[2],
    soonestHours: row[3],
    lowHours: row[4],
    middleHours: row[5],
    planLineHours: row[6],
  }));
  return { kept, never: [...never] };
}

const machinesStanding = (db: ReadableRecord, machineIds: readonly number[] | null): number[] =>
  bulk<[machineId: number]>(
    db,
    `SELECT m.id FROM machines m WHERE ${standing('m')} AND ${among(machineIds, 'm.id')} ORDER BY m.id`,
    { knownAt: NOW_KNOWN, ...boundTo(machineIds) },
  ).map(([machineId]) => machineId);

/** What is kept of one sort, as JSON, by machine. @param machineIds null: of all */
export const keptTexts = (
  db: ReadableRecord,
  what: 'line' | 'due' | 'assemblies',
  machineIds: readonly number[] | null = null,
): Map<number, string> =>
  new Map(
    bulk<[machineId: number, text: string]>(
      db,
      `SELECT machine_id, ${what} FROM machine_forecasts WHERE ${among(machineIds, 'machine_id')}`,
      boundTo(machineIds),
    ),
  );

/** Keeps forecasts worked out of the record as it stood at a revision. @param revision that of the record now */
export function keepMachineForecasts(
  w: WritableRecord,
  revision: string,
  { asOf, learned }: KeptUnder,
  forecasts: readonly KeptMachineForecast[],
): void {
  if (writingOf(w) !== revision) {
    w.sqlite.prepare('UPDATE machine_forecasts SET stale = 1 WHERE stale = 0').run();
    setMark(w, revision);
  }
  const keep = w.sqlite.prepare(
    `INSERT OR REPLACE INTO machine_forecasts (machine_id, as_of, learned, stale, list_group, soonest_hours, low_hours, middle_hours,
       plan_line_hours, assemblies, line, due)
     VALUES (@machineId, @asOf, @learned, 0, @group, @soonestHours, @lowHours, @middleHours, @planLineHours, @assemblies, @line, @due)`,
  );
  for (const { place, ...forecast } of forecasts) keep.run({ ...forecast, ...place, asOf, learned });
}

const setMark = (w: WritableRecord, revision: string): void => {
  w.sqlite
    .prepare(
      'INSERT INTO forecasts_marked (id, revision) VALUES (1, @revision) ON CONFLICT (id) DO UPDATE SET revision = @revision',
    )
    .run({ revision });
};

/** Rows of x sit at an assembly: every machine it ever sat on. */
const seats = (assemblyId: string) => `CROSS JOIN sittings y ON y.assembly_id = ${assemblyId}`;
const byPoint = (pointId: string) =>
  `CROSS JOIN measuring_points m ON m.id = ${pointId} CROSS JOIN positions p ON p.id = m.position_id ${seats('p.assembly_id')}`;

/**
 * From rows x of each table to the machines whose forecasts rest on them. Null: those of the whole shop do. Joined from the
 * few new rows outwards: SQLite keeps the order of a CROSS JOIN, and would otherwise begin with every point of the shop.
 */
const TOUCHED: Readonly<Record<string, string | null>> = {
  machines: 'SELECT x.id FROM machines x',
  ...Object.fromEntries(
    ['dial_readings', 'meters', 'work_shares', 'hours_sources', 'ownerships', 'strip_downs'].map((table) => [
      table,
      `SELECT x.machine_id FROM ${table} x`,
    ]),
  ),
  sittings: `SELECT y.machine_id FROM sittings x ${seats('x.assembly_id')}`,
  positions: `SELECT y.machine_id FROM positions x ${seats('x.assembly_id')}`,
  position_sittings: `SELECT y.machine_id FROM position_sittings x CROSS JOIN positions p ON p.id = x.position_id
    CROSS JOIN sittings y ON y.assembly_id IN (p.assembly_id, x.assembly_id)`,
  measuring_points: `SELECT y.machine_id FROM measuring_points x CROSS JOIN positions p ON p.id = x.position_id ${seats('p.assembly_id')}`,
  ...Object.fromEntries(
    ['sizes', 'renewals', 'shims', 'point_limits', 'joint_members'].map((table) => [
      table,
      `SELECT y.machine_id FROM ${table} x ${byPoint('x.point_id')}`,
    ]),
  ),
  joints: `SELECT y.machine_id FROM joints x ${byPoint('x.slack_point_id')}`,
  findings: `SELECT y.machine_id FROM findings x ${seats('x.assembly_id')}`,
  finding_closings: `SELECT y.machine_id FROM finding_closings x CROSS JOIN findings f ON f.id = x.finding_id ${seats('f.assembly_id')}`,
  finding_declines: `SELECT y.machine_id FROM finding_declines x CROSS JOIN findings f ON f.id = x.finding_id ${seats('f.assembly_id')}`,
  shop_settings: null,
  forecast_settings: null,
  class_knowledge: null,
};

/** Tables whose rows move no forecast; every other table with entries is in {@link TOUCHED} (tests/record/keptList.test.ts). */
export const touchesForecasts = (table: string): boolean => table in TOUCHED;

/** Where the record stands before something is written to it. */
export type Before = { revision: string; lastIds: ReadonlyMap<string, number> };

export const beforeWriting = (db: ReadableRecord, revision: string): Before => ({
  revision,
  lastIds: new Map(idsGivenOut(db)),
});

/** Marks stale what rests on the rows written since, and moves the mark on. Without a mark there is nothing to keep up. */
export function markWritten(w: WritableRecord, before: Before, revision: string): void {
  if (writingOf(w) !== before.revision) return;
  const written = idsGivenOut(w).filter(([table, lastId]) => lastId > (before.lastIds.get(table) ?? 0));
  const tables = written.map(([table]) => [table, before.lastIds.get(table) ?? 0] as const);
  markRows(
    w,
    tables.filter(([table]) => touchesForecasts(table)),
    'x.id > @from',
  );
  setMark(w, revision);
}

/** Marks stale what rests on an entry that is undone or put in again; the entry that says so moves the mark on. */
export const markUndone = (w: WritableRecord, entryId: number): void => {
  if (writingOf(w) === null) return;
  const tables = Object.keys(TOUCHED).map((table) => [table, entryId] as const);
  markRows(w, tables, 'x.entry_id = @from');
};

/** @param which rows x, by the number `@from` */
function markRows(w: WritableRecord, tables: readonly (readonly [table: string, from: number])[], which: string): void {
  const touched = new Set<number>();
  for (const [table, from] of tables) {
    const sql = TOUCHED[table] ?? `SELECT DISTINCT k.machine_id FROM ${table} x, machine_forecasts k`;
    for (const [id] of bulk<[number | null]>(w, `${sql} WHERE ${which}`, { from })) if (id !== null) touched.add(id);
  }
  if (touched.size > 0)
    w.sqlite
      .prepare('UPDATE machine_forecasts SET stale = 1 WHERE machine_id IN (SELECT value FROM json_each(?))')
      .run(JSON.stringify(boundMachines(w, [...touched]).machineIds));
}
