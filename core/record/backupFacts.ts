import Database from 'better-sqlite3';
import { RefusedError } from '../outcome.ts';
import { countRows, type RecordCounts } from './aboutStore.ts';
import { recordHead } from './openRecord.ts';
import { mending } from './recordFault.ts';
import type { ReadableRecord } from './recordFile.ts';

/** An entry by what tells it from any other of its shop. */
export type EntryKey = { id: number; madeAt: string; madeBy: string; what: string; undone: boolean };

export type BackupFacts = {
  identity: string;
  schemaVersion: number;
  counts: RecordCounts & { slips: number };
  entries: EntryKey[];
};

/** What a backup file holds, read without changing it. @throws RefusedError not-a-record, record-damaged */
export function backupFacts(file: string): BackupFacts {
  const head = recordHead(file);
  if (!head) throw new RefusedError({ code: 'not-a-record', facts: { file } });
  return mending(file, () => {
    const sqlite = new Database(file, { readonly: true });
    try {
      return { ...factsIn(sqlite, file), schemaVersion: head.schemaVersion };
    } finally {
      sqlite.close();
    }
  });
}

/** The same of the record that is open. */
export const recordFacts = (record: ReadableRecord): Omit<BackupFacts, 'schemaVersion'> =>
  mending(record.path, () => record.sqlite.transaction(() => factsIn(record.sqlite, record.path))());

function factsIn(sqlite: Database.Database, file: string): Omit<BackupFacts, 'schemaVersion'> {
  const identity = sqlite.prepare('SELECT identity FROM record_about').pluck().get() as string | undefined;
  if (identity === undefined) throw new RefusedError({ code: 'not-a-record', facts: { file } });
  const entries = sqlite
    .prepare(
      'SELECT id, made_at AS madeAt, made_by AS madeBy, what, undone_at IS NOT NULL AS undone FROM entries ORDER BY id',
    )
    .all() as (Omit<EntryKey, 'undone'> & { undone: number })[];
  return {
    identity,
    counts: {
      ...countRows({ sqlite } as ReadableRecord),
      slips: sqlite.prepare('SELECT count(*) FROM slips').pluck().get() as number,
    },
    entries: entries.map((entry) => ({ ...entry, undone: entry.undone === 1 })),
  };
}

/** How many rows of each sort came with some entries; a size put right counts with the entry that first brought it. */
export function rowsOfEntries(record: ReadableRecord, entryIds: readonly number[]): Omit<RecordCounts, 'customers'> {
  const count = (table: string, more = '') =>
    record.sqlite
      .prepare(`SELECT count(*) FROM ${table} WHERE entry_id IN (SELECT value FROM json_each(?)) ${more}`)
      .pluck()
      .get(JSON.stringify(entryIds)) as number;
  return {
    machines: count('machines'),
    points: count('measuring_points'),
    sizes: count('sizes', 'AND chain_id IS NULL'),
    findings: count('findings', 'AND chain_id IS NULL'),
  };
}
