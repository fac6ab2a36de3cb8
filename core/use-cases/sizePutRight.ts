import type { Handler } from '../contract/operation.ts';
import type { sizePutRight } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import { listClasses } from '../record/classStore.ts';
import { writeEntry } from '../record/entry.ts';
import { putSizeRight, readSizeRow, type SizeRow, strikeSize } from '../record/sizeStore.ts';
import type { SizeJudgement } from '../series/judgeSize.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { judgeAmongOthers } from './laterDoubts.ts';
import { pointNow } from './seriesNow.ts';

/**
 * Puts a size right, or strikes it out; the old one stays visible. The right one is judged as if it were entered for the
 * first time: what is odd about it is asked, and it is kept aside until answered.
 */
export const sizePutRightHandler: Handler<typeof sizePutRight, Context> = (context, request) => {
  const record = recordOf(context);
  const { sizeId: rowId, sizeMm, reason, by } = request;
  const row = readSizeRow(record, rowId);
  if (!row) throw new RefusedError({ code: 'unknown-size', facts: { path: 'sizeId', sizeId: rowId } });
  const judged = sizeMm === null ? undefined : judgePutRight(context, row, sizeMm);
  const [first] = judged?.parked ? judged.cautions : [];
  const sizeId = writeEntry(record, entryNow(context, 'size/putRight', by), (w, entryId) =>
    sizeMm === null
      ? strikeSize(w, entryId, rowId, reason)
      : putSizeRight(w, entryId, rowId, { sizeMm, parked: first !== undefined, question: first?.code ?? null, reason }),
  );
  return {
    sizeId,
    question: first && judged ? { code: first.code, facts: first.facts ?? {}, choices: judged.choices } : null,
  };
};

/** The size as put right among the others on record; absent: nothing odd about it. */
function judgePutRight(context: Context, { id, pointId }: SizeRow, sizeMm: number): SizeJudgement | undefined {
  const point = pointNow(context, pointId);
  if (!point?.sizes.some((size) => size.id === id)) return undefined;
  const right = {
    ...point,
    sizes: point.sizes.map((size) => (size.id === id ? { ...size, id: -1, sizeMm, parked: false } : size)),
  };
  const others = { ...point, sizes: point.sizes.filter((size) => size.id !== id) };
  const tolerance = listClasses(recordOf(context)).find(({ name }) => name === point.partClass)?.newSizeTolMm ?? null;
  return judgeAmongOthers(right, others, tolerance).get(-1);
}
