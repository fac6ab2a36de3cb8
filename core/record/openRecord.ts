import { existsSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import { migrate } from 'drizzle-orm/better-sqlite3/migrator';
import { RefusedError } from '../outcome.ts';
import { mending } from './recordFault.ts';
import type { OpenRecord } from './recordFile.ts';
import * as schema from './schema.ts';

/** "HrWr": tells a record from any other SQLite file. */
export const APPLICATION_ID = 0x48725772;
export const RECORD_EXTENSION = '.hoursandwear';

const MIGRATIONS_FOLDER = join(import.meta.dirname, '..', '..', 'migrations');
/** Another program at the record is waited for this long [ms]. */
const BUSY_MS = 3000;

/** Schema version of this program: how many migrations it has. */
export function schemaVersion(migrationsFolder = MIGRATIONS_FOLDER): number {
  const journal = JSON.parse(readFileSync(join(migrationsFolder, 'meta', '_journal.json'), 'utf8')) as {
    entries: unknown[];
  };
  return journal.entries.length;
}

/** What stands in the file's head, read without touching it; null: the file is new or empty. */
export function recordHead(path: string): { schemaVersion: number } | null {
  if (path === ':memory:' || !existsSync(path)) return null;
  return mending(path, () => {
    const file = new Database(path, { readonly: true, timeout: BUSY_MS });
    try {
      const applicationId = file.pragma('application_id', { simple: true });
      const version = file.pragma('user_version', { simple: true }) as number;
      const tables = file.prepare('SELECT count(*) FROM sqlite_schema').pluck().get() as number;
      if (applicationId === 0 && version === 0 && tables === 0) return null;
      if (applicationId !== APPLICATION_ID) throw new RefusedError({ code: 'not-a-record', facts: { file: path } });
      return { schemaVersion: version };
    } finally {
      file.close();
    }
  });
}

type OpenOptions = {
  /** lay the file down when it is not there */
  create?: boolean;
  /** called with the file as it is before an older one is migrated */
  beforeMigrating?: (path: string, fromVersion: number) => void;
  migrationsFolder?: string;
};

/**
 * Opens a record file and brings it to this program's schema. Every commit is on the disk before it is acknowledged.
 *
 * @param path a file, or ':memory:'
 * @throws RefusedError no-such-record, not-a-record (the file is something else), record-newer (made by a later
 *   program: left untouched), record-in-use, record-read-only, record-damaged, cannot-open-record, disk-full
 */
export function openRecord(path: string, options: OpenOptions = {}): OpenRecord {
  const migrationsFolder = options.migrationsFolder ?? MIGRATIONS_FOLDER;
  const ours = schemaVersion(migrationsFolder);
  const isNewFile = path === ':memory:' || !existsSync(path);
  if (isNewFile && path !== ':memory:' && !options.create)
    throw new RefusedError({ code: 'no-such-record', facts: { file: path } });

  const found = recordHead(path);
  if (!found && !isNewFile && !options.create) throw new RefusedError({ code: 'not-a-record', facts: { file: path } });
  if (found && found.schemaVersion > ours)
    throw new RefusedError({
      code: 'record-newer',
      facts: { file: path, recordVersion: found.schemaVersion, programVersion: ours },
    });
  if (found && found.schemaVersion < ours) options.beforeMigrating?.(path, found.schemaVersion);

  return mending(path, () => {
    const sqlite = new Database(path, { timeout: BUSY_MS });
    try {
      sqlite.pragma('journal_mode = WAL');
      sqlite.pragma('synchronous = FULL');
      sqlite.pragma('recursive_triggers = ON'); // else REPLACE would slip past the triggers that forbid deleting
      const orm = drizzle({ client: sqlite, schema });
      if (found?.schemaVersion !== ours) bringToSchema(sqlite, () => migrate(orm, { migrationsFolder }), ours);
      sqlite.pragma('foreign_keys = ON');
      return { path, sqlite, orm, read: orm, close: () => closeFile(sqlite) };
    } catch (thrown) {
      sqlite.close();
      throw thrown;
    }
  });
}

function bringToSchema(sqlite: Database.Database, runMigrations: () => void, version: number): void {
  // first, so that a file left half way is still known for a record, and is brought on at the next opening
  sqlite.pragma(`application_id = ${APPLICATION_ID}`);
  sqlite.pragma('foreign_keys = OFF'); // a migration may rebuild a table; what it leaves is checked below
  runMigrations();
  const broken = sqlite.pragma('foreign_key_check') as unknown[];
  if (broken.length > 0)
    throw new Error(`Broken invariant: no row is left without the row it refers to (${broken.length})`);
  sqlite.pragma(`user_version = ${version}`);
}

function closeFile(sqlite: Database.Database): void {
  if (!sqlite.open) return;
  if (!sqlite.memory && !sqlite.readonly) {
    try {
      sqlite.pragma('wal_checkpoint(TRUNCATE)');
    } catch {
      // another program holds the file: SQLite folds the log in when the last one lets go
    }
  }
  sqlite.close();
}
