import type { Handler } from '../contract/operation.ts';
import type { findingClose } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import { insertClosing } from '../record/findingStore.ts';
import { pastDay, refuseField } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { findingOrRefuse } from './findingOrRefuse.ts';

export const findingCloseHandler: Handler<typeof findingClose, Context> = (context, request) => {
  const record = recordOf(context);
  const { findingId, outcome, by } = request;
  const closedOn = pastDay(context, request.closedOn, 'closedOn');
  const finding = findingOrRefuse(record, findingId);
  if (finding.closedOn !== null)
    throw new RefusedError({ code: 'already-closed', facts: { findingId, closedOn: finding.closedOn } });
  if (closedOn < finding.takenOn) refuseField('closedOn', `a day from ${finding.takenOn} on, when it was found`);
  writeEntry(record, entryNow(context, 'finding/close', by), (w, entryId) =>
    insertClosing(w, entryId, { findingId, closedOn, outcome, closedBy: by }),
  );
  return { findingId };
};
