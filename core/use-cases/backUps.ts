import { createHash } from 'node:crypto';
import { existsSync, mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { basename, join, resolve } from 'node:path';
import type { z } from 'zod';
import type { zBackup } from '../contract/record.ts';
import { readAbout } from '../record/aboutStore.ts';
import { backupFacts, copyRecord, copyRecordFile } from '../record/backup.ts';
import { RECORD_EXTENSION } from '../record/openRecord.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { backupsToKeep } from './backupsToKeep.ts';
import { type Context, recordOf } from './context.ts';

type Backup = z.infer<typeof zBackup>;

const fileNameOf = (madeAt: string): string => `${madeAt.replace(/[:.]/g, '-')}${RECORD_EXTENSION}`;

/** "2026-11-02T08-10-33-123Z" back to an ISO instant; null for a file that is no backup of ours. */
function madeAtOf(fileName: string): string | null {
  const found = /^(\d{4}-\d\d-\d\dT\d\d)-(\d\d)-(\d\d)-(\d{3}Z)/.exec(fileName);
  return found && fileName.endsWith(RECORD_EXTENSION) ? `${found[1]}:${found[2]}:${found[3]}.${found[4]}` : null;
}

/** Backups are filed under the record's identity, so that renaming or moving it loses none of them. */
function folderOf(context: Context, record: ReadableRecord): string {
  const folder = join(context.dataFolder, 'backups', readAbout(record)?.identity ?? 'unnamed');
  mkdirSync(folder, { recursive: true });
  return folder;
}

/** Backs the open record up, checks the copy, and lets go of backups that later ones stand for. */
export async function backUpNow(context: Context): Promise<Backup> {
  const record = recordOf(context);
  const folder = folderOf(context, record);
  const madeAt = context.now();
  const file = join(folder, fileNameOf(madeAt));
  try {
    await copyRecord(record, file);
  } catch (thrown) {
    rmSync(file, { force: true });
    throw thrown;
  }
  dropOldBackups(folder);
  return backupOf(file, madeAt);
}

/** An older record is copied as it is before it is migrated. */
export function backUpBeforeMigrating(context: Context, recordPath: string): void {
  const ofPath = createHash('sha256').update(resolve(recordPath)).digest('hex').slice(0, 12);
  const folder = join(context.dataFolder, 'backups', `before-migrating-${ofPath}`);
  mkdirSync(folder, { recursive: true });
  copyRecordFile(recordPath, join(folder, fileNameOf(context.now())));
}

/** The backups of the open record, newest first. */
export function listBackups(context: Context): Backup[] {
  const folder = folderOf(context, recordOf(context));
  return backupFiles(folder).map(({ file, madeAt }) => backupOf(file, madeAt));
}

function backupFiles(folder: string): { file: string; madeAt: string }[] {
  if (!existsSync(folder)) return [];
  return readdirSync(folder)
    .flatMap((name) => {
      const madeAt = madeAtOf(name);
      return madeAt ? [{ file: join(folder, name), madeAt }] : [];
    })
    .sort((a, b) => (a.madeAt < b.madeAt ? 1 : -1));
}

function dropOldBackups(folder: string): void {
  const files = backupFiles(folder);
  const keep = backupsToKeep(files.map(({ madeAt }) => madeAt));
  for (const { file, madeAt } of files) if (!keep.has(madeAt)) rmSync(file);
}

function backupOf(file: string, madeAt: string): Backup {
  const { machines, sizes } = backupFacts(file);
  return { file, madeAt, bytes: statSync(file).size, counts: `${machines} machines, ${sizes} sizes` };
}

/** The name a record's file goes by when it makes way for a backup. */
export const setAsideName = (recordPath: string, at: string): string =>
  join(resolve(recordPath, '..'), `${basename(recordPath, RECORD_EXTENSION)} before restoring ${fileNameOf(at)}`);

/** A backup a day is made when the program starts. */
const DUE_AFTER_MS = 20 * 3_600_000;

/** Backs the open record up unless the last backup is younger than a day. @returns the backup made, if one was due */
export async function backUpIfDue(context: Context): Promise<Backup | null> {
  if (!context.record || context.record.path === ':memory:' || readAbout(context.record)?.isDemo) return null;
  const [last] = backupFiles(folderOf(context, context.record));
  const isDue = !last || Date.parse(context.now()) - Date.parse(last.madeAt) > DUE_AFTER_MS;
  return isDue ? backUpNow(context) : null;
}
