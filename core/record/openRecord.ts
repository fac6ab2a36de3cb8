import { accessSync, constants, existsSync, readFileSync, statSync } from 'node:fs';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { drizzle } from 'drizzle-orm/better-sqlite3';
import { RefusedError } from '../outcome.ts';
import { APPLICATION_ID } from './applicationId.ts';
import { fileIdOf } from './fileId.ts';
import { migrateRecord } from './migrateRecord.ts';
import { mending } from './recordFault.ts';
import type { OpenRecord } from './recordFile.ts';
import { recordPlace } from './recordPlace.ts';
import * as schema from './schema.ts';

export const RECORD_EXTENSION = '.hoursandwear';

const MIGRATIONS_FOLDER = join(import.meta.dirname, '..', '..', 'migrations');
/** Another program at the record is waited for this long [ms]. */
const BUSY_MS = 3000;

/** A larger file is looked through with its daily backup instead of at every opening: about 2 ms a megabyte [bytes]. */
const LOOKED_THROUGH_BYTES = 64_000_000;

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
  if (!statSync(path).isFile()) throw new RefusedError({ code: 'not-a-record', facts: { file: path } });
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
 * A file that may only be read is opened for reading.
 *
 * @param path a file, or ':memory:'
 * @throws RefusedError no-such-record, not-a-record (the file is something else), record-newer (made by a later
 *   program: left untouched), record-in-use, record-read-only, record-damaged, migration-failed, cannot-open-record,
 *   disk-full
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
  const readOnly = !isNewFile && !mayBeWritten(path);
  const isOlder = found?.schemaVersion !== ours;
  if (readOnly && isOlder) throw new RefusedError({ code: 'record-read-only', facts: { file: path } });
  if (found && isOlder) options.beforeMigrating?.(path, found.schemaVersion);

  return mending(path, () => {
    const sqlite = openFile(path, readOnly);
    try {
      if (found && statSync(path).size <= LOOKED_THROUGH_BYTES) refuseUnsound(sqlite, path);
      if (isOlder) migrateRecord(sqlite, path, migrationsFolder);
      sqlite.pragma('foreign_keys = ON');
      const orm = drizzle({ client: sqlite, schema });
      const closing = new AbortController();
      const close = () => {
        closing.abort();
        closeFile(sqlite);
      };
      const { signal: untilClosed } = closing;
      return { path, readOnly, fileId: fileIdOf(path), sqlite, orm, read: orm, untilClosed, close };
    } catch (thrown) {
      sqlite.close();
      throw thrown;
    }
  });
}

function mayBeWritten(path: string): boolean {
  try {
    accessSync(path, constants.W_OK);
    return true;
  } catch {
    return false;
  }
}

function openFile(path: string, readOnly: boolean): Database.Database {
  const sqlite = new Database(path, { timeout: BUSY_MS, readonly: readOnly });
  if (readOnly) return sqlite;
  try {
    // the write-ahead log needs memory shared by all who have the file open: not across computers
    sqlite.pragma(`journal_mode = ${recordPlace(path).network ? 'DELETE' : 'WAL'}`);
    sqlite.pragma('synchronous = FULL');
    sqlite.pragma('recursive_triggers = ON'); // else REPLACE would slip past the triggers that forbid deleting
    return sqlite;
  } catch (thrown) {
    sqlite.close();
    throw thrown;
  }
}

/** @throws RefusedError record-damaged */
function refuseUnsound(sqlite: Database.Database, path: string): void {
  const found = String(sqlite.pragma('quick_check(1)', { simple: true }));
  if (found !== 'ok')
    throw new RefusedError({ code: 'record-damaged', facts: { file: path, reason: found.slice(0, 200) } });
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
