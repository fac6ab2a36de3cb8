import type { Handler } from '../contract/operation.ts';
import type { findingStrikeDecline } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import { declinesOf, strikeDecline } from '../record/findingStore.ts';
import { type Context, entryNow, recordOf } from './context.ts';

export const findingStrikeDeclineHandler: Handler<typeof findingStrikeDecline, Context> = (context, request) => {
  const record = recordOf(context);
  const { declineId, reason, by } = request;
  if (!declinesOf(record).some(({ id }) => id === declineId))
    throw new RefusedError({ code: 'unknown-decline', facts: { path: 'declineId', declineId } });
  writeEntry(record, entryNow(context, 'finding/strikeDecline', by), (w, entryId) =>
    strikeDecline(w, entryId, declineId, reason),
  );
  return { declineId };
};
