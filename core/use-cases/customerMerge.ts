import type { customerMerge } from '../contract/customer.ts';
import type { Handler } from '../contract/operation.ts';
import { insertDetails, insertMerge } from '../record/customerStore.ts';
import { writeEntry } from '../record/entry.ts';
import { refuseField } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { customerOrRefuse } from './customerOrRefuse.ts';

/** Both rows stay; the one points to the other, and so does whatever points to it. */
export const customerMergeHandler: Handler<typeof customerMerge, Context> = (context, request) => {
  const record = recordOf(context);
  const { customerId, intoCustomerId, details, by } = request;
  customerOrRefuse(record, customerId);
  const into = customerOrRefuse(record, intoCustomerId, 'intoCustomerId');
  if (customerId === intoCustomerId) refuseField('intoCustomerId', 'another customer than the one that is merged');
  const changed = Object.entries(details).some(([key, text]) => into[key as keyof typeof details] !== text);
  const mergeId = writeEntry(record, entryNow(context, 'customer/merge', by), (w, entryId) => {
    if (changed) insertDetails(w, entryId, intoCustomerId, details);
    return insertMerge(w, entryId, customerId, intoCustomerId);
  });
  return { mergeId };
};
