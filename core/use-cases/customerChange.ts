import type { customerChange } from '../contract/customer.ts';
import type { Handler } from '../contract/operation.ts';
import { insertDetails } from '../record/customerStore.ts';
import { writeEntry } from '../record/entry.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { customerOrRefuse } from './customerOrRefuse.ts';

/** New details from now on; the old ones stay in the record, and slips made before keep what was printed. */
export const customerChangeHandler: Handler<typeof customerChange, Context> = (context, request) => {
  const record = recordOf(context);
  const { customerId, by, ...details } = request;
  customerOrRefuse(record, customerId);
  writeEntry(record, entryNow(context, 'customer/change', by), (w, entryId) =>
    insertDetails(w, entryId, customerId, details),
  );
  return { customerId };
};
