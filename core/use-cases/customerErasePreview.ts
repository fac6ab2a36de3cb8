import type { customerErasePreview } from '../contract/customer.ts';
import type { Handler } from '../contract/operation.ts';
import { namedBy, namesStandingAlone, namingTexts, rowsOfPerson } from '../record/eraseCustomer.ts';
import { listBackups } from './backupFolders.ts';
import { type Context, recordOf } from './context.ts';
import { customerOrRefuse } from './customerOrRefuse.ts';
import { customerSheets } from './customersSheet.ts';

export const customerErasePreviewHandler: Handler<typeof customerErasePreview, Context> = (context, request) => {
  const record = recordOf(context);
  const { customerId, words } = request;
  customerOrRefuse(record, customerId);
  const ids = rowsOfPerson(record, customerId);
  const by = namedBy(record, ids, words);
  const sheet = customerSheets(record).find((one) => one.customerId === customerId);
  return {
    // what is kept of slips and drafts is long: they are told of by their number, not by their texts
    texts: namingTexts(record, ids, by)
      .filter(({ column }) => !LONG.includes(column))
      .map(({ table, column, before, after }) => ({ table, column, before, after })),
    alone: namesStandingAlone(record, ids, by),
    slips: sheet?.slips ?? 0,
    owned: sheet?.owned ?? [],
    backups: copiesWith(context),
  };
};

const LONG = ['slip', 'draft', 'facts'];

/** Copies of the record that were made before, and hold what they held. */
export const copiesWith = (context: Context): { file: string; madeAt: string }[] =>
  listBackups(context).backups.map(({ file, madeAt }) => ({ file, madeAt }));
