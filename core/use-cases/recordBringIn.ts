import type { Handler, RequestOf } from '../contract/operation.ts';
import type { ImportAccount, recordBringIn } from '../contract/record.ts';
import type { FileBytes } from '../exchange/readFolder.ts';
import { openRecord } from '../record/openRecord.ts';
import { bringIn } from './bring-in/bringIn.ts';
import { type Context, entryNow, recordOf, whichIsOpen } from './context.ts';
import { layDownShop } from './newShop.ts';
import { freePath, startEmpty } from './recordStartEmpty.ts';

/** Brings CSV files in. Where no record is open yet one is laid down, but only for files without faults. */
export const recordBringInHandler: Handler<typeof recordBringIn, Context> = (context, { files, dryRun }) => {
  const account = broughtIn(context, files, dryRun);
  return { ...account, recordId: whichIsOpen(context).recordId };
};

function broughtIn(context: Context, files: RequestOf<typeof recordBringIn>['files'], dryRun: boolean): ImportAccount {
  const bytes = files.map(({ name, base64 }) => ({ name, bytes: Buffer.from(base64, 'base64') }));
  const made = entryNow(context, 'record/bringIn', 'brought in');
  const asOf = context.today();
  if (context.record) return bringIn(context.record, bytes, made, { asOf, dryRun });

  const tried = tryInMemory(context, bytes);
  if (dryRun || tried.faults.length > 0) return tried;
  startEmpty(context, freePath(context.defaultRecordPath));
  return bringIn(recordOf(context), bytes, made, { asOf, dryRun });
}

function tryInMemory(context: Context, files: readonly FileBytes[]): ImportAccount {
  const record = openRecord(':memory:');
  try {
    layDownShop(record, context.now(), { isDemo: false });
    const made = entryNow(context, 'record/bringIn', 'brought in');
    return bringIn(record, files, made, { asOf: context.today(), dryRun: true });
  } finally {
    record.close();
  }
}
