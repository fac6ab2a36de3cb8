import type Database from 'better-sqlite3';
import { readMigrationFiles } from 'drizzle-orm/migrator';
import { RefusedError } from '../outcome.ts';
import { APPLICATION_ID } from './applicationId.ts';
import { faultOfSqlite } from './recordFault.ts';

/** Where the generator's own tools look for what has been run; its shape is theirs. */
const RUN_TABLE = '"__drizzle_migrations"';

/**
 * Brings a record to this program's schema and makes sure that nothing was lost on the way: SQLite's own check, no row
 * without the row it refers to, and no table with fewer rows than before. All of it in one transaction: a record whose
 * migration breaks off, or does not hold, is as it was.
 *
 * @throws RefusedError migration-failed; disk-full, record-in-use, record-read-only
 */
export function migrateRecord(sqlite: Database.Database, path: string, migrationsFolder: string): void {
  const migrations = readMigrationFiles({ migrationsFolder });
  const facts = { file: path, toVersion: migrations.length };
  sqlite.pragma('foreign_keys = OFF'); // a migration may rebuild a table; what it leaves is checked below
  try {
    sqlite
      .transaction(() => {
        const before = rowCounts(sqlite);
        sqlite.pragma(`application_id = ${APPLICATION_ID}`);
        runMissing(sqlite, migrations);
        sqlite.pragma(`user_version = ${migrations.length}`);
        const broken = whatIsBroken(sqlite, before);
        if (broken) throw new RefusedError({ code: 'migration-failed', facts: { ...facts, reason: broken } });
      })
      .immediate();
  } catch (thrown) {
    if (thrown instanceof RefusedError || faultOfSqlite(thrown, path) || !isSqlError(thrown)) throw thrown;
    throw new RefusedError({ code: 'migration-failed', facts: { ...facts, reason: thrown.message.slice(0, 200) } });
  }
}

const isSqlError = (thrown: unknown): thrown is Error =>
  thrown instanceof Error && 'code' in thrown && String(thrown.code).startsWith('SQLITE_');

function runMissing(sqlite: Database.Database, migrations: ReturnType<typeof readMigrationFiles>): void {
  sqlite.exec(
    `CREATE TABLE IF NOT EXISTS ${RUN_TABLE} (id SERIAL PRIMARY KEY, hash text NOT NULL, created_at numeric)`,
  );
  const last = sqlite.prepare(`SELECT max(created_at) FROM ${RUN_TABLE}`).pluck().get() as number | null;
  const note = sqlite.prepare(`INSERT INTO ${RUN_TABLE} (hash, created_at) VALUES (?, ?)`);
  for (const { sql, hash, folderMillis } of migrations) {
    if (last !== null && folderMillis <= Number(last)) continue;
    for (const statement of sql) sqlite.exec(statement);
    note.run(hash, folderMillis);
  }
}

/** @returns null: all is well */
function whatIsBroken(sqlite: Database.Database, before: ReadonlyMap<string, number>): string | null {
  const check = sqlite.pragma('integrity_check(1)', { simple: true });
  if (check !== 'ok') return String(check).slice(0, 200);
  const orphans = sqlite.pragma('foreign_key_check') as unknown[];
  if (orphans.length > 0) return `${orphans.length} rows without the row they refer to`;
  const after = rowCounts(sqlite);
  const fewer = [...before].find(([table, count]) => count > 0 && (after.get(table) ?? 0) < count);
  return fewer ? `${fewer[0]} has fewer rows than before` : null;
}

/** Rows in every table, by its name. */
export function rowCounts(sqlite: Database.Database): Map<string, number> {
  const tables = sqlite
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' ORDER BY name")
    .pluck()
    .all() as string[];
  return new Map(
    tables.map((table) => [table, sqlite.prepare(`SELECT count(*) FROM "${table}"`).pluck().get() as number]),
  );
}
