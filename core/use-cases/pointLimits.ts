import type { pointLimits } from '../contract/machine.ts';
import type { Handler } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import { insertLimits, readPoint } from '../record/pointStore.ts';
import type { Day } from '../units/day.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { refuseOddLimits } from './soundLimits.ts';

/** Limits from a day on; what was judged before that day keeps the limits of its day. */
export const pointLimitsHandler: Handler<typeof pointLimits, Context> = (context, request) => {
  const record = recordOf(context);
  const { pointId, from, enteredBy, ...limits } = request;
  const point = readPoint(record, pointId);
  if (!point) throw new RefusedError({ code: 'unknown-point', facts: { path: 'pointId', pointId } });
  refuseOddLimits(point.wears, limits, '');
  writeEntry(record, entryNow(context, 'point/limits', enteredBy), (w, entryId) =>
    insertLimits(w, entryId, { pointId, fromOn: from as Day, enteredBy, ...limits }),
  );
  return { pointId };
};
