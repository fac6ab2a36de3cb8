import { createHash } from 'node:crypto';
import { basename, join, resolve } from 'node:path';
import type { z } from 'zod';
import { type BackupChoices, zBackupChoices } from '../contract/keptBeside.ts';
import type { Backup, zBackups } from '../contract/record.ts';
import { readAbout } from '../record/aboutStore.ts';
import { backupFacts } from '../record/backupFacts.ts';
import { type BackupFile, backupFilesIn, freeBytesAt, isReachable } from '../record/backupFiles.ts';
import { readKeptFile, writeKeptFile } from '../record/keptFile.ts';
import type { Context } from './context.ts';

const fileOf = (context: Context): string => join(context.dataFolder, 'backups.json');

export const backupChoices = (context: Context): BackupChoices =>
  zBackupChoices.safeParse(readKeptFile(fileOf(context))).data ?? { folder: null, identities: {} };

export function chooseFolder(context: Context, folder: string | null): void {
  writeKeptFile(fileOf(context), { ...backupChoices(context), folder });
}

/** Notes which record lies at a path. */
export function noteIdentity(context: Context, path: string, identity: string): void {
  const choices = backupChoices(context);
  if (path === ':memory:' || choices.identities[path] === identity) return;
  writeKeptFile(fileOf(context), { ...choices, identities: { ...choices.identities, [path]: identity } });
}

/** The record backups are asked of: the open one, else the one the program was started with. */
function recordAsked(context: Context): { path: string; identity: string | null } {
  const path = context.record?.path ?? context.defaultRecordPath;
  const identity = context.record ? readAbout(context.record)?.identity : backupChoices(context).identities[path];
  return { path, identity: identity ?? null };
}

/** Backups are filed under the record's identity, so that renaming or moving it loses none of them. */
export function backupFolders(context: Context): { own: string; chosen: string | null; beforeMigrating: string } {
  const { path, identity } = recordAsked(context);
  const { folder } = backupChoices(context);
  const named = identity ?? 'unnamed';
  return {
    own: join(context.dataFolder, 'backups', named),
    chosen: folder && join(folder, `hours-and-wear ${named}`),
    beforeMigrating: beforeMigratingFolder(context.dataFolder, path),
  };
}

/** Where an older record is copied to before it is migrated: by its path, since its identity is not read yet. */
export const beforeMigratingFolder = (dataFolder: string, recordPath: string): string => {
  const ofPath = createHash('sha256').update(resolve(recordPath)).digest('hex').slice(0, 12);
  return join(dataFolder, 'backups', `before-migrating-${ofPath}`);
};

/** The backups of the record, newest first, wherever they lie, and what room they take. */
export function listBackups(context: Context): z.infer<typeof zBackups> {
  const { own, chosen, beforeMigrating } = backupFolders(context);
  const [ownFiles, olderFiles, chosenFiles] = [own, beforeMigrating, chosen].map((at) => (at ? backupFilesIn(at) : []));
  const names = new Set(ownFiles?.map(({ file }) => basename(file)));
  const onlyChosen = chosenFiles?.filter(({ file }) => !names.has(basename(file))) ?? [];
  const kept = [...(ownFiles ?? []), ...onlyChosen].map((backup) => backupOf(context, backup));
  const older = (olderFiles ?? []).map(
    (backup): Backup => ({ ...backupOf(context, backup), kind: 'before-migrating', alsoAt: null }),
  );
  const { folder } = backupChoices(context);
  return {
    backups: [...kept, ...older].sort((a, b) => (a.madeAt < b.madeAt ? 1 : -1)),
    folders: [
      folderLine(own, false, [...(ownFiles ?? []), ...(olderFiles ?? [])]),
      ...(folder ? [folderLine(folder, true, chosenFiles ?? [])] : []),
    ],
  };
}

const folderLine = (folder: string, chosen: boolean, files: readonly BackupFile[]) => ({
  folder,
  chosen,
  reachable: !chosen || isReachable(folder),
  backups: files.length,
  bytes: files.reduce((sum, { bytes }) => sum + bytes, 0),
  freeBytes: chosen && !isReachable(folder) ? null : freeBytesAt(folder),
});

/** A backup with what it holds; its counts are empty when it cannot be read. */
export function backupOf(context: Context, { file, madeAt, bytes }: BackupFile): Backup {
  const { chosen } = backupFolders(context);
  const also = chosen ? backupFilesIn(chosen).find((one) => basename(one.file) === basename(file)) : undefined;
  const alsoAt = also && also.file !== file ? also.file : null;
  return { file, madeAt, bytes, counts: countsIn(file), kind: 'kept', alsoAt };
}

function countsIn(file: string): string {
  try {
    const { counts } = backupFacts(file);
    return `${counted(counts.machines, 'machine')}, ${counted(counts.sizes, 'size')}`;
  } catch {
    return '';
  }
}

const counted = (count: number, noun: string): string => `${count} ${noun}${count === 1 ? '' : 's'}`;
