import { existsSync } from 'node:fs';
import { isAbsolute, resolve } from 'node:path';
import type { Handler } from '../contract/operation.ts';
import type { recordRestore } from '../contract/record.ts';
import { RefusedError } from '../outcome.ts';
import { backupFacts } from '../record/backupFacts.ts';
import { schemaVersion } from '../record/openRecord.ts';
import { putBack, putInPlace } from '../record/putInPlace.ts';
import { refuseField } from './asked.ts';
import { backUpNow } from './backUps.ts';
import { type Context, openInto, setRecord } from './context.ts';
import { rememberRecord } from './recentRecords.ts';
import { stateOf } from './recordState.ts';

/**
 * Puts a backup in place of the record: the open one, or the one the program could not open at its start. The record as it
 * stands is backed up first where it can be, and its file is set aside in any case, so that nothing is lost whichever was
 * the better one.
 */
export const recordRestoreHandler: Handler<typeof recordRestore, Context> = async (context, { file }) => {
  usableBackup(context, file);
  const recordPath = context.record?.path ?? context.defaultRecordPath;
  if (context.record) await backUpIfPossible(context);

  setRecord(context, null);
  let aside: string | null = null;
  try {
    aside = putInPlace(file, recordPath, context.now());
    openInto(context, recordPath);
  } catch (thrown) {
    if (aside) putBack(aside, recordPath);
    reopen(context, recordPath);
    throw thrown;
  }
  rememberRecord(context, recordPath);
  return stateOf(context);
};

/**
 * What a backup holds, once it is known that it could take the record's place.
 * @throws RefusedError no-such-record, not-a-record, record-newer, record-damaged
 */
export function usableBackup(context: Context, file: string) {
  if (!isAbsolute(file)) refuseField('file', 'a whole path');
  if (!existsSync(file)) throw new RefusedError({ code: 'no-such-record', facts: { path: 'file', file } });
  if (resolve(file) === resolve(context.record?.path ?? context.defaultRecordPath))
    refuseField('file', 'a backup, not the record itself');
  const facts = backupFacts(file);
  const programVersion = schemaVersion();
  if (facts.schemaVersion > programVersion)
    throw new RefusedError({
      code: 'record-newer',
      facts: { file, recordVersion: facts.schemaVersion, programVersion },
    });
  return facts;
}

/** A record too broken to be backed up, or a disk too full, must not stand in the way: its file is set aside as it is. */
async function backUpIfPossible(context: Context): Promise<void> {
  try {
    await backUpNow(context);
  } catch (thrown) {
    if (!(thrown instanceof RefusedError)) throw thrown;
  }
}

/** As it was before: open, or in its trouble. */
function reopen(context: Context, recordPath: string): void {
  try {
    if (existsSync(recordPath)) openInto(context, recordPath);
  } catch (thrown) {
    if (!(thrown instanceof RefusedError)) throw thrown;
    context.trouble = thrown.refusal;
  }
}
