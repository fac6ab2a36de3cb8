import type Database from 'better-sqlite3';
import { assertInvariant } from '../outcome.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';

/**
 * The record's tables as SQLite itself tells of them, and their rows as they are stored: put right and undone ones too.
 * A table or column that comes with a later schema is in here of itself.
 */
export type StoredTable = {
  name: string;
  columns: readonly StoredColumn[];
  /** columns that give the rows their order */
  key: readonly string[];
};
export type StoredColumn = { name: string; type: 'INTEGER' | 'REAL' | 'TEXT' | 'BLOB'; mayBeNull: boolean };
export type StoredValue = string | number | Uint8Array | null;
export type StoredRow = readonly StoredValue[];

/** What is worked out again when it is missing: it is neither exported nor brought in. */
export const DERIVED_TABLES: readonly string[] = ['machine_forecasts', 'forecasts_marked'];

/** All tables but derived ones, each after those its rows refer to. */
export function tablesOnRecord({ sqlite }: ReadableRecord): StoredTable[] {
  const names = sqlite
    .prepare(
      "SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' AND name NOT LIKE '\\_\\_%' ESCAPE '\\' ORDER BY name",
    )
    .pluck()
    .all() as string[];
  const told = names.filter((name) => !DERIVED_TABLES.includes(name));
  const left = new Map(told.map((name) => [name, referredTo(sqlite, name)]));
  const tables: StoredTable[] = [];
  while (left.size > 0) {
    const next = [...left].find(([, parents]) => parents.every((parent) => !left.has(parent)));
    assertInvariant(next, 'tables of the record refer to one another in no ring');
    left.delete(next[0]);
    tables.push(tableCalled(sqlite, next[0]));
  }
  return tables;
}

/** Tables a table's rows refer to, but for itself. */
const referredTo = (sqlite: Database.Database, name: string): string[] =>
  (sqlite.prepare('SELECT "table" FROM pragma_foreign_key_list(?)').pluck().all(name) as string[]).filter(
    (parent) => parent !== name,
  );

type ColumnInfo = { name: string; type: string; notnull: number; pk: number };

function tableCalled(sqlite: Database.Database, name: string): StoredTable {
  const info = sqlite
    .prepare('SELECT name, type, "notnull", pk FROM pragma_table_info(?) ORDER BY cid')
    .all(name) as ColumnInfo[];
  const key = info
    .filter(({ pk }) => pk > 0)
    .sort((a, b) => a.pk - b.pk)
    .map((column) => column.name);
  assertInvariant(key.length > 0, `the rows of ${name} have a key`);
  return { name, key, columns: info.map(columnOf) };
}

function columnOf({ name, type, notnull, pk }: ColumnInfo): StoredColumn {
  const stored = type.toUpperCase();
  assertInvariant(
    stored === 'INTEGER' || stored === 'REAL' || stored === 'TEXT' || stored === 'BLOB',
    `column ${name} holds one of the kinds a strict table knows`,
  );
  return { name, type: stored, mayBeNull: notnull === 0 && pk === 0 };
}

const quoted = (names: readonly string[]): string => names.map((name) => `"${name}"`).join(', ');

/** A table's rows in the order of their keys, one value a column. */
export const rowsOfTable = ({ sqlite }: ReadableRecord, { name, columns, key }: StoredTable): Iterable<StoredRow> =>
  sqlite
    .prepare(`SELECT ${quoted(columns.map((column) => column.name))} FROM "${name}" ORDER BY ${quoted(key)}`)
    .raw()
    .iterate() as IterableIterator<StoredRow>;

/** Puts rows back as they were stored, under the ids they had. @returns how many */
export function putBackRows(w: WritableRecord, { name, columns }: StoredTable, rows: Iterable<StoredRow>): number {
  const statement = w.sqlite.prepare(
    `INSERT INTO "${name}" (${quoted(columns.map((column) => column.name))}) VALUES (${columns.map(() => '?').join(', ')})`,
  );
  let count = 0;
  for (const row of rows) {
    statement.run(row);
    count++;
  }
  return count;
}

/** Refers are looked at when the transaction ends: a row may stand before the one it refers to. */
export const deferRefers = (w: WritableRecord): void => {
  w.sqlite.pragma('defer_foreign_keys = ON');
};

/** True when no table holds a row. */
export const holdsNothing = (db: ReadableRecord): boolean =>
  tablesOnRecord(db).every(({ name }) => db.sqlite.prepare(`SELECT 1 FROM "${name}" LIMIT 1`).get() === undefined);

/** The last id given out in each table: ids of rows taken away since are not given out again. */
export const idsGivenOut = ({ sqlite }: ReadableRecord): [table: string, lastId: number][] =>
  sqlite
    .prepare(
      "SELECT name, seq FROM sqlite_sequence WHERE name NOT LIKE '\\_\\_%' ESCAPE '\\' AND seq > 0 ORDER BY name",
    )
    .raw()
    .all() as [string, number][];

/** Goes on giving out ids from there. */
export function setIdsGivenOut(w: WritableRecord, given: Iterable<readonly [table: string, lastId: number]>): void {
  for (const [table, lastId] of given) {
    const { changes } = w.sqlite
      .prepare('UPDATE sqlite_sequence SET seq = max(seq, @lastId) WHERE name = @table')
      .run({ table, lastId });
    if (changes === 0) w.sqlite.prepare('INSERT INTO sqlite_sequence (name, seq) VALUES (?, ?)').run(table, lastId);
  }
}
