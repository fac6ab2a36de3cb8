import type { Handler } from '../contract/operation.ts';
import type { sizePutRight } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import { putSizeRight, readSizeRow, strikeSize } from '../record/sizeStore.ts';
import { type Context, entryNow, recordOf } from './context.ts';

/** Puts a size right, or strikes it out; the old one stays visible. */
export const sizePutRightHandler: Handler<typeof sizePutRight, Context> = (context, request) => {
  const record = recordOf(context);
  const { sizeId: rowId, sizeMm, reason, by } = request;
  if (!readSizeRow(record, rowId))
    throw new RefusedError({ code: 'unknown-size', facts: { path: 'sizeId', sizeId: rowId } });
  const sizeId = writeEntry(record, entryNow(context, 'size/putRight', by), (w, entryId) =>
    sizeMm === null
      ? strikeSize(w, entryId, rowId, reason)
      : putSizeRight(w, entryId, rowId, { sizeMm, parked: false, reason }),
  );
  return { sizeId };
};
