import { existsSync, readdirSync, rmSync, statfsSync, statSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { RefusedError } from '../outcome.ts';
import { UNFINISHED } from './backup.ts';
import { RECORD_EXTENSION } from './openRecord.ts';

/** A backup as it lies in a folder; its name is the instant it was made at. */
export type BackupFile = { file: string; madeAt: string; bytes: number };

/** This much stays free on a disk whatever is backed up to it [bytes]; common practice, no source. */
const LEFT_FREE_BYTES = 200_000_000;

export const backupFileName = (madeAt: string): string => `${madeAt.replace(/[:.]/g, '-')}${RECORD_EXTENSION}`;

/** "2026-11-02T08-10-33-123Z" back to an ISO instant; null for a file that is no backup of ours. */
function madeAtOf(fileName: string): string | null {
  const found = /^(\d{4}-\d\d-\d\dT\d\d)-(\d\d)-(\d\d)-(\d{3}Z)/.exec(fileName);
  return found && fileName.endsWith(RECORD_EXTENSION) ? `${found[1]}:${found[2]}:${found[3]}.${found[4]}` : null;
}

/** The backups of a folder, newest first; none when it is not there. */
export function backupFilesIn(folder: string): BackupFile[] {
  if (!isReachable(folder)) return [];
  return readdirSync(folder)
    .flatMap((name) => {
      const madeAt = madeAtOf(name);
      const file = join(folder, name);
      const bytes = statSync(file, { throwIfNoEntry: false })?.size;
      return madeAt && bytes !== undefined ? [{ file, madeAt, bytes }] : [];
    })
    .sort((a, b) => (a.madeAt < b.madeAt ? 1 : -1));
}

/** Takes away backups that later ones stand for, and copies that were broken off. */
export function dropBackupsBut(folder: string, keep: ReadonlySet<string>): void {
  for (const { file, madeAt } of backupFilesIn(folder)) if (!keep.has(madeAt)) rmSync(file);
  for (const name of readdirSync(folder)) if (name.endsWith(UNFINISHED)) rmSync(join(folder, name), { force: true });
}

export function isReachable(folder: string): boolean {
  try {
    return statSync(folder).isDirectory();
  } catch {
    return false;
  }
}

/** Room left for a person's files on the disk a folder is, or will be, on [bytes]; null: not known. */
export function freeBytesAt(folder: string): number | null {
  let at = folder;
  while (!existsSync(at) && dirname(at) !== at) at = dirname(at);
  try {
    const { bavail, bsize } = statfsSync(at);
    return bavail * bsize;
  } catch {
    return null;
  }
}

/** Room a record's file takes, its write-ahead log with it [bytes]. */
export const recordBytes = (path: string): number =>
  [path, `${path}-wal`].reduce((sum, file) => sum + (statSync(file, { throwIfNoEntry: false })?.size ?? 0), 0);

/** @throws RefusedError backup-would-fill-disk */
export function refuseToFill(folder: string, bytes: number): void {
  const freeBytes = freeBytesAt(folder);
  if (freeBytes === null || freeBytes - bytes >= LEFT_FREE_BYTES) return;
  const inMb = (count: number) => Math.round(count / 1e6);
  throw new RefusedError({
    code: 'backup-would-fill-disk',
    facts: { folder, neededMb: inMb(bytes + LEFT_FREE_BYTES), freeMb: inMb(freeBytes) },
  });
}
