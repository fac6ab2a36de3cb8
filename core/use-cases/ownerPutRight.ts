import type { ownerPutRight } from '../contract/customer.ts';
import type { Handler } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { ownershipsOf, putOwnershipRight } from '../record/customerStore.ts';
import { writeEntry } from '../record/entry.ts';
import { pastDay } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { refuseOddCustomer } from './whoseMachine.ts';

/** The old row stays in the record. Slips made meanwhile stay whose they were. */
export const ownerPutRightHandler: Handler<typeof ownerPutRight, Context> = (context, request) => {
  const record = recordOf(context);
  const { ownershipId, customerId, reason, by } = request;
  const fromOn = request.fromOn === null ? null : pastDay(context, request.fromOn, 'fromOn');
  const row = ownershipsOf(record).find(({ id }) => id === ownershipId);
  if (!row) throw new RefusedError({ code: 'unknown-ownership', facts: { path: 'ownershipId', ownershipId } });
  if (row.struck) throw new RefusedError({ code: 'already-put-right', facts: { id: ownershipId } });
  if (customerId !== null) refuseOddCustomer(record, { customerId, customer: null });
  writeEntry(record, entryNow(context, 'owner/putRight', by), (w, entryId) =>
    putOwnershipRight(w, entryId, ownershipId, customerId === null ? null : { customerId, fromOn }, reason),
  );
  return { ownershipId };
};
