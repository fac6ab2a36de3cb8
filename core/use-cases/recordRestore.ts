import { copyFileSync, existsSync, renameSync, rmSync } from 'node:fs';
import { isAbsolute, resolve } from 'node:path';
import type { Handler } from '../contract/operation.ts';
import type { recordRestore } from '../contract/record.ts';
import { RefusedError } from '../outcome.ts';
import { backupFacts } from '../record/backup.ts';
import { recordHead, schemaVersion } from '../record/openRecord.ts';
import { refuseField } from './asked.ts';
import { backUpNow, setAsideName } from './backUps.ts';
import { type Context, openInto, setRecord } from './context.ts';
import { rememberRecord } from './recentRecords.ts';
import { stateOf } from './recordState.ts';

/**
 * Puts a backup in place of the record. The record as it stands is backed up first and its file set aside, so that
 * nothing is lost whichever was the better one.
 */
export const recordRestoreHandler: Handler<typeof recordRestore, Context> = async (context, { file }) => {
  if (!isAbsolute(file)) refuseField('file', 'a whole path');
  if (!existsSync(file)) throw new RefusedError({ code: 'no-such-record', facts: { path: 'file', file } });
  refuseUnusable(file);
  const recordPath = context.record?.path ?? context.defaultRecordPath;
  if (resolve(file) === resolve(recordPath)) refuseField('file', 'a backup, not the record itself');
  if (context.record) await backUpNow(context);

  const restoring = `${recordPath}.restoring`;
  copyFileSync(file, restoring);
  setRecord(context, null);
  if (existsSync(recordPath)) renameSync(recordPath, setAsideName(recordPath, context.now()));
  // a log left by a record that was not closed would be taken for the backup's own
  for (const log of [`${recordPath}-wal`, `${recordPath}-shm`]) rmSync(log, { force: true });
  renameSync(restoring, recordPath);
  openInto(context, recordPath);
  rememberRecord(context, recordPath);
  return stateOf(context);
};

/** @throws RefusedError not-a-record, record-newer, record-damaged */
function refuseUnusable(file: string): void {
  const head = recordHead(file);
  if (!head) throw new RefusedError({ code: 'not-a-record', facts: { path: 'file', file } });
  const programVersion = schemaVersion();
  if (head.schemaVersion > programVersion)
    throw new RefusedError({
      code: 'record-newer',
      facts: { file, recordVersion: head.schemaVersion, programVersion },
    });
  backupFacts(file);
}
