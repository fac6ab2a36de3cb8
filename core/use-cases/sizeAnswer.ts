import type { Handler } from '../contract/operation.ts';
import type { sizeAnswer } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import { insertRenewal } from '../record/renewalStore.ts';
import { putSizeRight, readSizeRow } from '../record/sizeStore.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { pointNow } from './seriesNow.ts';

/**
 * Answers the question about a size kept aside: it is used as it was read. `was-renewed` says besides that the part is
 * another one: put in that day when the old part was found that day too, else elsewhere some time since the size before.
 */
export const sizeAnswerHandler: Handler<typeof sizeAnswer, Context> = (context, { sizeId: rowId, answer, by }) => {
  const record = recordOf(context);
  const row = readSizeRow(record, rowId);
  if (!row) throw new RefusedError({ code: 'unknown-size', facts: { path: 'sizeId', sizeId: rowId } });
  if (!row.parked) throw new RefusedError({ code: 'not-questioned', facts: { path: 'sizeId', sizeId: rowId } });
  const { stripDownId, pointId, takenOn } = row;
  const point = pointNow(context, pointId);
  const hoursKnown =
    row.event === 'as-left' &&
    point?.sizes.some((size) => size.takenOn === takenOn && size.event === 'as-found' && !size.parked) === true;
  // one renewal for all stations of the visit
  const renewedThen = point?.renewals.some(
    (renewal) => renewal.takenOn === takenOn && renewal.hoursKnown === hoursKnown,
  );
  const sizeId = writeEntry(record, entryNow(context, 'size/answer', by), (w, entryId) => {
    if (answer === 'was-renewed' && !renewedThen)
      insertRenewal(w, entryId, { stripDownId, pointId, hoursKnown, sizeMm: null });
    return putSizeRight(w, entryId, rowId, { parked: false, reason: answer });
  });
  return { sizeId };
};
