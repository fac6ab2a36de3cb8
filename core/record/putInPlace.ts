import { closeSync, copyFileSync, existsSync, fsyncSync, openSync, renameSync, rmSync } from 'node:fs';
import { basename, dirname, join } from 'node:path';
import Database from 'better-sqlite3';
import { RefusedError } from '../outcome.ts';
import { removeFile, syncFile } from './backup.ts';
import { backupFileName } from './backupFiles.ts';
import { RECORD_EXTENSION } from './openRecord.ts';
import { mendingFiles } from './recordFault.ts';

/** Ending of a backup on its way to the record's place; whole from the moment the record's own file has made way. */
const RESTORING = '.restoring';
const LOGS = ['-wal', '-shm'];

/** The name a record's file goes by when it makes way for a backup. */
const setAsideName = (recordPath: string, at: string): string =>
  join(dirname(recordPath), `${basename(recordPath, RECORD_EXTENSION)} before restoring ${backupFileName(at)}`);

/**
 * Puts a backup's file in the place of a record that is closed. The record's file, with its log when it has one, goes by
 * another name beside it; at no moment is either the only copy half there.
 *
 * @returns whole path of the file set aside; null: there was none
 * @throws RefusedError record-in-use (another program has it open), disk-full, cannot-write
 */
export function putInPlace(backup: string, recordPath: string, at: string): string | null {
  const restoring = `${recordPath}${RESTORING}`;
  const aside = existsSync(recordPath) ? setAsideName(recordPath, at) : null;
  try {
    mendingFiles(restoring, () => {
      copyFileSync(backup, restoring);
      syncFile(restoring);
    });
    if (aside) {
      foldInAlone(recordPath);
      moveWithLog(recordPath, aside);
    }
    // a log left by a record that is gone would be taken for the backup's own
    for (const log of LOGS) rmSync(`${recordPath}${log}`, { force: true });
    mendingFiles(recordPath, () => renameSync(restoring, recordPath));
    syncFolder(dirname(recordPath));
    return aside;
  } catch (thrown) {
    if (aside && existsSync(aside) && !existsSync(recordPath)) moveWithLog(aside, recordPath);
    throw thrown;
  } finally {
    removeFile(restoring);
  }
}

/** Takes it back: the file set aside is the record again. */
export function putBack(aside: string, recordPath: string): void {
  removeFile(recordPath);
  moveWithLog(aside, recordPath);
}

/** A program that ended between the two steps of a restoring left the backup beside an empty place: it goes there now. */
export function finishPuttingInPlace(recordPath: string): void {
  const restoring = `${recordPath}${RESTORING}`;
  if (recordPath === ':memory:' || existsSync(recordPath) || !existsSync(restoring)) return;
  for (const log of LOGS)
    if (existsSync(`${recordPath}${log}`)) renameSync(`${recordPath}${log}`, `${recordPath}${log}.left-over`);
  mendingFiles(recordPath, () => renameSync(restoring, recordPath));
}

/**
 * Folds a record's log into its file, and makes sure that no other program has it open: it would write on into the file set
 * aside. A file too broken for that keeps its log, and is not written to.
 */
function foldInAlone(recordPath: string): void {
  let sqlite: Database.Database | null = null;
  try {
    sqlite = new Database(recordPath, { timeout: 500 });
    sqlite.pragma('locking_mode = EXCLUSIVE'); // the first reading then asks for the file alone
    sqlite.prepare('SELECT count(*) FROM sqlite_schema').get();
    sqlite.pragma('wal_checkpoint(TRUNCATE)');
  } catch (thrown) {
    const code = thrown instanceof Error && 'code' in thrown ? String(thrown.code) : '';
    if (code.startsWith('SQLITE_BUSY') || code.startsWith('SQLITE_LOCKED'))
      throw new RefusedError({ code: 'record-in-use', facts: { file: recordPath } });
  } finally {
    sqlite?.close();
  }
}

function moveWithLog(from: string, to: string): void {
  mendingFiles(from, () => {
    renameSync(from, to);
    for (const log of LOGS) if (existsSync(`${from}${log}`)) renameSync(`${from}${log}`, `${to}${log}`);
  });
}

/** The names in a folder are on the disk; where folders cannot be opened so, the system sees to it. */
function syncFolder(folder: string): void {
  try {
    const opened = openSync(folder, 'r');
    fsyncSync(opened);
    closeSync(opened);
  } catch {
    // Windows
  }
}
