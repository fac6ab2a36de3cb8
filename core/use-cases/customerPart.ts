import type { customerPart } from '../contract/customer.ts';
import type { Handler } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { customersAmong, detailsBefore, insertDetails, mergesOf, strikeMerge } from '../record/customerStore.ts';
import { writeEntry } from '../record/entry.ts';
import { type Context, entryNow, recordOf } from './context.ts';

/** Each is as before the merge; details the merge gave the other go back too, unless they were changed since. */
export const customerPartHandler: Handler<typeof customerPart, Context> = (context, { mergeId, reason, by }) => {
  const record = recordOf(context);
  const merge = mergesOf(record).find(({ id }) => id === mergeId);
  if (!merge) throw new RefusedError({ code: 'unknown-merge', facts: { path: 'mergeId', mergeId } });
  const { customerId, intoCustomerId } = merge;
  if (customersAmong(record, [customerId]).own.get(customerId)?.erased)
    throw new RefusedError({ code: 'customer-erased', facts: { path: 'mergeId', customerId } });
  writeEntry(record, entryNow(context, 'customer/part', by), (w, entryId) => {
    const { before, stillLast } = detailsBefore(w, intoCustomerId, merge.entryId);
    if (stillLast && before) insertDetails(w, entryId, intoCustomerId, before);
    strikeMerge(w, entryId, mergeId, reason);
  });
  return { customerId };
};
