import Database from 'better-sqlite3';
import { RefusedError } from '../outcome.ts';
import { mending } from './recordFault.ts';
import type { ReadableRecord } from './recordFile.ts';

/** Pages copied at a time: large steps are several times faster than the default. */
const PAGES_A_STEP = 5000;

/**
 * Copies an open record to a file, while it stays in use, and makes sure that the copy is whole: SQLite's own check, and
 * as many rows in every table.
 *
 * @throws RefusedError backup-not-whole, disk-full, ...
 */
export async function copyRecord(record: ReadableRecord, toFile: string): Promise<void> {
  for (let attempt = 1; ; attempt++) {
    await record.sqlite.backup(toFile, { progress: () => PAGES_A_STEP });
    const found = mending(toFile, () => whatIsInCopy(toFile));
    // the record may have been written to between the last page and the count: then once more
    if (found.sound && found.counts === tableCounts(record.sqlite)) return;
    if (!found.sound || attempt === 3) throw new RefusedError({ code: 'backup-not-whole', facts: { file: toFile } });
  }
}

/** The same for a file nobody has open, in one go. */
export function copyRecordFile(fromFile: string, toFile: string): void {
  mending(fromFile, () => {
    const source = new Database(fromFile);
    try {
      source.prepare('VACUUM INTO ?').run(toFile);
      const { sound, counts } = whatIsInCopy(toFile);
      if (!sound || counts !== tableCounts(source))
        throw new RefusedError({ code: 'backup-not-whole', facts: { file: toFile } });
    } finally {
      source.close();
    }
  });
}

function whatIsInCopy(file: string): { sound: boolean; counts: string } {
  const copy = new Database(file);
  try {
    copy.pragma('journal_mode = DELETE'); // a backup is one file
    return { sound: copy.pragma('integrity_check', { simple: true }) === 'ok', counts: tableCounts(copy) };
  } finally {
    copy.close();
  }
}

/** Rows in every table, as one text to compare. */
function tableCounts(sqlite: Database.Database): string {
  const tables = sqlite
    .prepare("SELECT name FROM sqlite_schema WHERE type = 'table' AND name NOT LIKE 'sqlite%' ORDER BY name")
    .pluck()
    .all() as string[];
  return tables
    .map((table) => `${table} ${sqlite.prepare(`SELECT count(*) FROM "${table}"`).pluck().get()}`)
    .join('\n');
}

/** What a backup file holds: read without changing it. @throws RefusedError not-a-record, record-damaged */
export function backupFacts(file: string): { identity: string; machines: number; sizes: number } {
  return mending(file, () => {
    const sqlite = new Database(file, { readonly: true });
    try {
      const identity = sqlite.prepare('SELECT identity FROM record_about').pluck().get() as string | undefined;
      if (identity === undefined) throw new RefusedError({ code: 'not-a-record', facts: { file } });
      return {
        identity,
        machines: sqlite.prepare('SELECT count(*) FROM machines').pluck().get() as number,
        sizes: sqlite.prepare('SELECT count(*) FROM sizes WHERE chain_id IS NULL').pluck().get() as number,
      };
    } finally {
      sqlite.close();
    }
  });
}
