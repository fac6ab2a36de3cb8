import { basename, join } from 'node:path';
import type { Backup } from '../contract/record.ts';
import { type Refusal, RefusedError } from '../outcome.ts';
import { readAbout } from '../record/aboutStore.ts';
import { copyBackupFile, copyRecord, copyRecordFile } from '../record/backup.ts';
import {
  type BackupFile,
  backupFileName,
  backupFilesIn,
  dropBackupsBut,
  isReachable,
  recordBytes,
  refuseToFill,
} from '../record/backupFiles.ts';
import { backupChoices, backupFolders, backupOf, beforeMigratingFolder } from './backupFolders.ts';
import { backupsToKeep } from './backupsToKeep.ts';
import { type Context, recordOf } from './context.ts';

/** What came of the last backup: why it, or its copy in the chosen folder, was not made. */
export type BackupTrouble = { failed: Refusal | null; notAlso: Refusal | null };

/**
 * Backs the open record up, checks the copy, copies it to the folder the shop chose, and lets go of backups that later
 * ones stand for. A chosen folder that is not there (a stick not plugged in) is told and leaves the backup as made.
 *
 * @throws RefusedError backup-would-fill-disk, backup-not-whole, disk-full, cannot-write
 */
export async function backUpNow(context: Context): Promise<Backup & { notAlso: Refusal | null }> {
  const record = recordOf(context);
  const { own } = backupFolders(context);
  const madeAt = context.now();
  const file = join(own, backupFileName(madeAt));
  try {
    refuseToFill(own, recordBytes(record.path));
    await copyRecord(record, file);
  } catch (thrown) {
    if (thrown instanceof RefusedError) context.backups.failed = thrown.refusal;
    throw thrown;
  }
  context.backups.failed = null;
  dropOldIn(own);
  const made = { file, madeAt, bytes: recordBytes(file) };
  copyToChosen(context, made);
  return { ...backupOf(context, made), notAlso: context.backups.notAlso };
}

/** Copies a backup to the chosen folder when there is one; what stands in the way is kept for the state of the record. */
function copyToChosen(context: Context, { file, bytes }: BackupFile): void {
  const { chosen } = backupFolders(context);
  const { folder } = backupChoices(context);
  context.backups.notAlso = null;
  if (!chosen || !folder) return;
  try {
    if (!isReachable(folder)) throw new RefusedError({ code: 'folder-not-there', facts: { folder } });
    refuseToFill(chosen, bytes);
    copyBackupFile(file, join(chosen, basename(file)));
    dropOldIn(chosen);
  } catch (thrown) {
    if (!(thrown instanceof RefusedError)) throw thrown;
    context.backups.notAlso = thrown.refusal;
  }
}

function dropOldIn(folder: string): void {
  dropBackupsBut(folder, backupsToKeep(backupFilesIn(folder).map(({ madeAt }) => madeAt)));
}

/** Backups made before migrating are few; this many are kept of each record. */
const BEFORE_MIGRATING_KEPT = 5;

/** An older record is copied as it is before it is migrated. @throws RefusedError as backUpNow: it is then not migrated */
export function backUpBeforeMigrating(context: Context, recordPath: string): void {
  const folder = beforeMigratingFolder(context.dataFolder, recordPath);
  refuseToFill(folder, recordBytes(recordPath));
  copyRecordFile(recordPath, join(folder, backupFileName(context.now())));
  const kept = backupFilesIn(folder).map(({ madeAt }) => madeAt);
  dropBackupsBut(folder, new Set([...kept.slice(0, BEFORE_MIGRATING_KEPT - 1), ...kept.slice(-1)]));
}

/** The next backup of a day is made this long after the last [ms]. */
const DUE_AFTER_MS = 20 * 3_600_000;

/**
 * Backs the open record up unless the last backup is younger than a day; asked at the start and every so often after.
 * A backup the chosen folder could not take before goes there as soon as it can.
 *
 * @returns the backup made, if one was due
 */
export async function backUpIfDue(context: Context): Promise<Backup | null> {
  if (!context.record || context.record.path === ':memory:' || readAbout(context.record)?.isDemo) return null;
  const { own, chosen } = backupFolders(context);
  const [last] = backupFilesIn(own);
  const isDue = !last || Date.parse(context.now()) - Date.parse(last.madeAt) > DUE_AFTER_MS;
  if (isDue) return backUpNow(context);
  if (chosen && backupFilesIn(chosen)[0]?.madeAt !== last.madeAt) copyToChosen(context, last);
  return null;
}
