import type { Handler } from '../contract/operation.ts';
import type { findingDecline } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import { insertDecline } from '../record/findingStore.ts';
import { pastDay, refuseField } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { findingOrRefuse } from './findingOrRefuse.ts';

/** The customer was told and does not want it made good. The finding stays as grave and as open as it was. */
export const findingDeclineHandler: Handler<typeof findingDecline, Context> = (context, request) => {
  const record = recordOf(context);
  const { findingId, saidBy, words, by } = request;
  const saidOn = pastDay(context, request.saidOn, 'saidOn');
  const { closedOn, takenOn } = findingOrRefuse(record, findingId);
  if (closedOn !== null) throw new RefusedError({ code: 'already-closed', facts: { findingId, closedOn } });
  if (saidOn < takenOn) refuseField('saidOn', `a day from ${takenOn} on, when it was found`);
  const declineId = writeEntry(record, entryNow(context, 'finding/decline', by), (w, entryId) =>
    insertDecline(w, entryId, { findingId, saidOn, saidBy, words }),
  );
  return { declineId };
};
