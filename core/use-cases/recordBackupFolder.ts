import { isAbsolute, resolve } from 'node:path';
import type { Handler } from '../contract/operation.ts';
import type { recordBackupFolder } from '../contract/record.ts';
import { RefusedError } from '../outcome.ts';
import { isReachable } from '../record/backupFiles.ts';
import { mendingFiles } from '../record/recordFault.ts';
import { refuseField } from './asked.ts';
import { backUpIfDue } from './backUps.ts';
import { backupFolders, chooseFolder, listBackups } from './backupFolders.ts';
import type { Context } from './context.ts';

/**
 * Chooses a further folder for backups; the last backup is copied there at once. The choice is this computer's and is kept
 * beside the program's own files, not in the record.
 *
 * @throws RefusedError folder-not-there; not-as-expected (the program's own folder); and why the copy could not be made
 */
export const recordBackupFolderHandler: Handler<typeof recordBackupFolder, Context> = async (context, { folder }) => {
  if (folder !== null) {
    if (!isAbsolute(folder)) refuseField('folder', 'a whole path');
    if (!isReachable(folder)) throw new RefusedError({ code: 'folder-not-there', facts: { path: 'folder', folder } });
    if (
      backupFolders(context).own.startsWith(resolve(folder)) &&
      resolve(folder).startsWith(resolve(context.dataFolder))
    )
      refuseField('folder', 'a folder other than the program’s own');
  }
  mendingFiles(folder ?? context.dataFolder, () => chooseFolder(context, folder));
  if (context.record) await backUpIfDue(context);
  return listBackups(context);
};
