import { idsGivenOut } from './allRows.ts';
import { boundMachines } from './boundMachines.ts';
import { bulk } from './bulk.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';

/** The last forecast of a machine: its line of the list and its points, as JSON. */
export type KeptMachineForecast = { machineId: number; line: string; points: string };

/** Under which day and learning forecasts are kept. */
export type KeptUnder = { asOf: string; learned: string };

/** The mark says that whoever wrote to the record since kept the marks of stale forecasts up to date. */
const markOf = (db: ReadableRecord): string | null =>
  bulk<[string]>(db, 'SELECT revision FROM forecasts_marked WHERE id = 1', {})[0]?.[0] ?? null;

/** What is kept of one sort, by machine, and whether it holds: nothing it rests on has been entered since, and day and learning are the same. */
export function keptForecasts(
  db: ReadableRecord,
  what: 'line' | 'points',
  revision: string,
  { asOf, learned }: KeptUnder,
): Map<number, { text: string; holds: boolean }> {
  const isMarked = markOf(db) === revision;
  const rows = bulk<[machineId: number, text: string, holds: number]>(
    db,
    `SELECT machine_id, ${what}, stale = 0 AND as_of = @asOf AND learned = @learned FROM machine_forecasts`,
    { asOf, learned },
  );
  return new Map(rows.map(([machineId, text, holds]) => [machineId, { text, holds: isMarked && holds === 1 }]));
}

/** Keeps forecasts worked out of the record as it stood at a revision. @param revision that of the record now */
export function keepMachineForecasts(
  w: WritableRecord,
  revision: string,
  { asOf, learned }: KeptUnder,
  forecasts: readonly KeptMachineForecast[],
): void {
  if (markOf(w) !== revision) {
    w.sqlite.prepare('UPDATE machine_forecasts SET stale = 1 WHERE stale = 0').run();
    setMark(w, revision);
  }
  const keep = w.sqlite.prepare(
    `INSERT INTO machine_forecasts (machine_id, as_of, learned, stale, line, points)
     VALUES (@machineId, @asOf, @learned, 0, @line, @points)
     ON CONFLICT (machine_id) DO UPDATE SET as_of = @asOf, learned = @learned, stale = 0, line = @line, points = @points`,
  );
  for (const forecast of forecasts) keep.run({ ...forecast, asOf, learned });
}

const setMark = (w: WritableRecord, revision: string): void => {
  w.sqlite
    .prepare(
      'INSERT INTO forecasts_marked (id, revision) VALUES (1, @revision) ON CONFLICT (id) DO UPDATE SET revision = @revision',
    )
    .run({ revision });
};

/** Rows of x sit at an assembly: every machine it ever sat on. */
const seats = (assemblyId: string) => `JOIN sittings y ON y.assembly_id = ${assemblyId}`;
const byPoint = (pointId: string) =>
  `JOIN measuring_points m ON m.id = ${pointId} JOIN positions p ON p.id = m.position_id ${seats('p.assembly_id')}`;

/** From rows x of each table to the machines whose forecasts rest on them. Null: those of the whole shop do. */
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
  position_sittings: `SELECT y.machine_id FROM position_sittings x JOIN positions p ON p.id = x.position_id
    JOIN sittings y ON y.assembly_id IN (p.assembly_id, x.assembly_id)`,
  measuring_points: `SELECT y.machine_id FROM measuring_points x JOIN positions p ON p.id = x.position_id ${seats('p.assembly_id')}`,
  ...Object.fromEntries(
    ['sizes', 'renewals', 'shims', 'point_limits', 'joint_members'].map((table) => [
      table,
      `SELECT y.machine_id FROM ${table} x ${byPoint('x.point_id')}`,
    ]),
  ),
  joints: `SELECT y.machine_id FROM joints x ${byPoint('x.slack_point_id')}`,
  findings: `SELECT y.machine_id FROM findings x ${seats('x.assembly_id')}`,
  finding_closings: `SELECT y.machine_id FROM finding_closings x JOIN findings f ON f.id = x.finding_id ${seats('f.assembly_id')}`,
  finding_declines: `SELECT y.machine_id FROM finding_declines x JOIN findings f ON f.id = x.finding_id ${seats('f.assembly_id')}`,
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
  if (markOf(w) !== before.revision) return;
  const written = idsGivenOut(w).filter(([table, lastId]) => lastId > (before.lastIds.get(table) ?? 0));
  const tables = written.map(([table]) => table).filter(touchesForecasts);
  markRows(w, tables, (table) => `x.id > ${before.lastIds.get(table) ?? 0}`);
  setMark(w, revision);
}

/** Marks stale what rests on an entry that is undone or put in again; the entry that says so moves the mark on. */
export const markUndone = (w: WritableRecord, entryId: number): void => {
  if (markOf(w) !== null) markRows(w, Object.keys(TOUCHED), () => `x.entry_id = ${entryId}`);
};

function markRows(w: WritableRecord, tables: readonly string[], which: (table: string) => string): void {
  const touched = new Set<number>();
  for (const table of tables) {
    const sql = TOUCHED[table] ?? `SELECT DISTINCT k.machine_id FROM ${table} x, machine_forecasts k`;
    const ids = w.sqlite
      .prepare(`${sql} WHERE ${which(table)}`)
      .pluck()
      .all() as (number | null)[];
    for (const id of ids) if (id !== null) touched.add(id);
  }
  if (touched.size > 0)
    w.sqlite
      .prepare('UPDATE machine_forecasts SET stale = 1 WHERE machine_id IN (SELECT value FROM json_each(?))')
      .run(JSON.stringify(boundMachines(w, [...touched]).machineIds));
}
