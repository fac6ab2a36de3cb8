import type { customerErase } from '../contract/customer.ts';
import type { Handler } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import { ERASE } from '../record/entryStore.ts';
import { eraseCustomer, rowsOfPerson, writeAnew } from '../record/eraseCustomer.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { copiesWith } from './customerErasePreview.ts';
import { customerOrRefuse } from './customerOrRefuse.ts';

/** The one thing in the record that is destroyed, on request and with the name typed; who did it and when is kept. */
export const customerEraseHandler: Handler<typeof customerErase, Context> = (context, request) => {
  const record = recordOf(context);
  const { customerId, words, typedName, by } = request;
  const { name } = customerOrRefuse(record, customerId);
  if (typedName.trim() !== name.trim())
    throw new RefusedError({ code: 'name-not-typed', facts: { path: 'typedName', name } });
  const texts = writeEntry(record, entryNow(context, ERASE, by), (w, entryId) =>
    eraseCustomer(w, entryId, rowsOfPerson(w, customerId), words),
  );
  return { texts, backups: copiesWith(context), writtenAnew: writeAnew(record) };
};
