import type { hoursShare } from '../contract/hours.ts';
import type { Handler, RequestOf } from '../contract/operation.ts';
import { writeEntry } from '../record/entry.ts';
import { machineOrRefuse } from '../record/machineStore.ts';
import type { WritableRecord } from '../record/recordFile.ts';
import { workShares } from '../record/schema.ts';
import { strikeOut, supersede } from '../record/supersede.ts';
import { insertWorkShare, workShareRowsOf } from '../record/workShareStore.ts';
import type { Day } from '../units/day.ts';
import { pastDay } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { refuseRow, refuseTakenDay } from './saidFromADay.ts';

type Asked = RequestOf<typeof hoursShare>;

/** From this day on, this work type and this share; or what was said of a day put right. */
export const hoursShareHandler: Handler<typeof hoursShare, Context> = (context, request) => {
  const record = recordOf(context);
  machineOrRefuse(record, request.machineId);
  const rows = workShareRowsOf(record, request.machineId);
  refuseRow(rows, request.workShareId, request.is, { path: 'workShareId', code: 'unknown-work-share' });
  const from = request.is?.from ?? null;
  if (from !== null) pastDay(context, from, 'is.from');
  if (request.is) refuseTakenDay(rows, request.workShareId, from);
  const made = entryNow(context, 'hours/share', request.by);
  return { workShareId: writeEntry(record, made, (w, entryId) => write(w, entryId, request)) };
};

function write(w: WritableRecord, entryId: number, { machineId, workShareId, is, reason }: Asked): number {
  if (!is) return strikeOut(w, workShares, workShareId!, entryId, reason);
  const said = { fromOn: is.from as Day | null, share: is.share, workType: is.workType || null, reason };
  if (workShareId !== null) return supersede(w, workShares, workShareId, entryId, said);
  return insertWorkShare(w, entryId, { machineId, ...said });
}
