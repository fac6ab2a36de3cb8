import type { Handler } from '../contract/operation.ts';
import type { renewalPutRight } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import { limitsOfRenewal, putRenewalRight, strikeLimits, strikeRenewal } from '../record/renewalStore.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { lifeBefore, renewalOrRefuse, visitOf } from './renewalAnswer.ts';
import { writeLimitsOf } from './writeRenewal.ts';

/** Puts a renewal right, or strikes it out; limits that came with it go along. The old rows stay visible. */
export const renewalPutRightHandler: Handler<typeof renewalPutRight, Context> = (context, request) => {
  const record = recordOf(context);
  const { renewalId: rowId, right, reason, by } = request;
  const row = renewalOrRefuse(record, rowId);
  if (row.kind === 'oversize' && right?.sizeMm === null)
    throw new RefusedError({ code: 'oversize-needs-size', facts: { path: 'right.sizeMm', pointId: row.pointId } });
  const before = lifeBefore(context, row);
  const renewalId = writeEntry(record, entryNow(context, 'renewal/putRight', by), (w, entryId) => {
    for (const limitsId of limitsOfRenewal(record, row.chainId)) strikeLimits(w, entryId, limitsId, reason);
    if (right === null) return strikeRenewal(w, entryId, rowId, reason);
    const { sizeMm, stamped = row.stamped } = right;
    const id = putRenewalRight(w, entryId, rowId, { sizeMm, stamped, parked: false, reason });
    writeLimitsOf(w, entryId, before, { ...row, sizeMm, renewalId: row.chainId }, visitOf(row, by));
    return id;
  });
  return { renewalId };
};
