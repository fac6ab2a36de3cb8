import { closeSync, copyFileSync, fsyncSync, mkdirSync, openSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import Database from 'better-sqlite3';
import { RefusedError } from '../outcome.ts';
import { rowCounts } from './migrateRecord.ts';
import { faultOfSystem, mending, mendingFiles } from './recordFault.ts';
import type { ReadableRecord } from './recordFile.ts';

/** Pages copied at a time: large steps are several times faster than the default. */
const PAGES_A_STEP = 5000;
/** Ending of a copy that is not known to be whole yet. */
export const UNFINISHED = '.unfinished';

/**
 * Copies an open record to a file, while it stays in use, and makes sure that the copy is whole: SQLite's own check, and
 * as many rows in every table. The file gets its name only then.
 *
 * @throws RefusedError backup-not-whole, disk-full, cannot-write, ...
 */
export async function copyRecord(record: ReadableRecord, toFile: string): Promise<void> {
  const passing = `${toFile}${UNFINISHED}`;
  try {
    mendingFiles(passing, () => mkdirSync(dirname(passing), { recursive: true }));
    await copiedWhole(record, passing);
    mendingFiles(toFile, () => renameSync(passing, toFile));
  } catch (thrown) {
    throw asRefusal(thrown, record.path);
  } finally {
    removeFile(passing);
  }
}

async function copiedWhole(record: ReadableRecord, passing: string): Promise<void> {
  for (let attempt = 1; ; attempt++) {
    removeFile(passing);
    await record.sqlite.backup(passing, { progress: () => PAGES_A_STEP });
    const found = mending(passing, () => whatIsInCopy(passing));
    // the record may have been written to between the last page and the count: then once more
    if (found.sound && found.counts === tableCounts(record.sqlite)) return;
    if (!found.sound || attempt === 3) throw new RefusedError({ code: 'backup-not-whole', facts: { file: passing } });
  }
}

/** The same for a file nobody has open, in one go. */
export function copyRecordFile(fromFile: string, toFile: string): void {
  const passing = `${toFile}${UNFINISHED}`;
  try {
    mendingFiles(passing, () => mkdirSync(dirname(passing), { recursive: true }));
    removeFile(passing);
    const source = new Database(fromFile);
    try {
      source.prepare('VACUUM INTO ?').run(passing);
      const { sound, counts } = whatIsInCopy(passing);
      if (!sound || counts !== tableCounts(source))
        throw new RefusedError({ code: 'backup-not-whole', facts: { file: toFile } });
    } finally {
      source.close();
    }
    syncFile(passing);
    mendingFiles(toFile, () => renameSync(passing, toFile));
  } catch (thrown) {
    throw asRefusal(thrown, fromFile);
  } finally {
    removeFile(passing);
  }
}

/** Copies a backup, which nobody writes to, to another folder or disk; whole, or not at all. */
export function copyBackupFile(fromFile: string, toFile: string): void {
  const passing = `${toFile}${UNFINISHED}`;
  try {
    mendingFiles(passing, () => {
      mkdirSync(dirname(passing), { recursive: true });
      copyFileSync(fromFile, passing);
      syncFile(passing);
    });
    const [from, to] = [fromFile, passing].map((file) => mending(file, () => whatIsInCopy(file)));
    if (!to?.sound || to.counts !== from?.counts)
      throw new RefusedError({ code: 'backup-not-whole', facts: { file: toFile } });
    mendingFiles(toFile, () => renameSync(passing, toFile));
  } finally {
    removeFile(passing);
  }
}

/** What was written to a file is on the disk. */
export function syncFile(file: string): void {
  const opened = openSync(file, 'r+');
  try {
    fsyncSync(opened);
  } finally {
    closeSync(opened);
  }
}

export function removeFile(file: string): void {
  for (const end of ['', '-wal', '-shm', '-journal']) rmSync(`${file}${end}`, { force: true });
}

function asRefusal(thrown: unknown, path: string): unknown {
  const system = faultOfSystem(thrown, path);
  if (system) return new RefusedError(system);
  try {
    return mending(path, () => {
      throw thrown;
    });
  } catch (mended) {
    return mended;
  }
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
const tableCounts = (sqlite: Database.Database): string =>
  [...rowCounts(sqlite)].map(([table, count]) => `${table} ${count}`).join('\n');
