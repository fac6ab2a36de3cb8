import type Database from 'better-sqlite3';
import type { BetterSQLite3Database } from 'drizzle-orm/better-sqlite3';
import type * as schema from './schema.ts';

type Tables = typeof schema;

declare const writable: unique symbol;

/** A record that can be read. Nothing that takes one can write. */
export type ReadableRecord = {
  /** whole path, or ':memory:' */
  readonly path: string;
  /** ordinary reading, typed from the schema */
  readonly read: Pick<BetterSQLite3Database<Tables>, 'select' | 'selectDistinct' | '$count'>;
  /** bulk reading and prepared statements; writing through it is a breach that only record/ could make */
  readonly sqlite: Database.Database;
};

/** A record inside a writing transaction: made only by writeEntry and writePlain (entry.ts). */
export type WritableRecord = ReadableRecord & {
  readonly write: Pick<BetterSQLite3Database<Tables>, 'insert' | 'update' | 'delete'>;
  readonly [writable]: true;
};

/** A record file that is open; whoever opened it closes it. */
export type OpenRecord = ReadableRecord & {
  /** the file may not be written to: nothing can be entered */
  readonly readOnly: boolean;
  /** tells this very file from one put in its place; null: it is kept in memory, or the system gives files no number */
  readonly fileId: string | null;
  readonly orm: BetterSQLite3Database<Tables>;
  /** aborted when the record is closed: what is worked out from it beside the program is then for nobody */
  readonly untilClosed: AbortSignal;
  /** Folds the write-ahead log into the file and lets it go, so that copying the one file is safe. */
  close(): void;
};
