import type { hoursSource } from '../contract/hours.ts';
import type { Handler, RequestOf } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import {
  hoursSourceRowsOf,
  insertHoursSource,
  type NewHoursSource,
  pullsOnRecord,
} from '../record/hoursSourceStore.ts';
import { machineOrRefuse } from '../record/machineStore.ts';
import type { ReadableRecord, WritableRecord } from '../record/recordFile.ts';
import { hoursSources } from '../record/schema.ts';
import { strikeOut, supersede } from '../record/supersede.ts';
import { ringOfPulls } from '../shop/ringOfPulls.ts';
import type { Day } from '../units/day.ts';
import { pastDay } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { refuseRow, refuseTakenDay } from './saidFromADay.ts';

type Asked = RequestOf<typeof hoursSource>;

/** From this day on its hours are a share of its puller's, or so many a year; or what was said of a day put right. */
export const hoursSourceHandler: Handler<typeof hoursSource, Context> = (context, request) => {
  const { machineId, hoursSourceId, is } = request;
  const record = recordOf(context);
  machineOrRefuse(record, machineId);
  const rows = hoursSourceRowsOf(record, machineId);
  refuseRow(rows, hoursSourceId, is, { path: 'hoursSourceId', code: 'unknown-hours-source' });
  if (is) {
    pastDay(context, is.from, 'is.from');
    refuseTakenDay(rows, hoursSourceId, is.from);
    if (is.kind === 'pulled') refuseRing(record, machineId, is.pullerId, hoursSourceId);
  }
  const made = entryNow(context, 'hours/source', request.by);
  return { hoursSourceId: writeEntry(record, made, (w, entryId) => write(w, entryId, request)) };
};

/** @throws RefusedError unknown-machine; pulled-in-a-ring, with the machines of the ring */
function refuseRing(record: ReadableRecord, machineId: number, pullerId: number, exceptRowId: number | null): void {
  machineOrRefuse(record, pullerId, 'is.pullerId');
  const ring = ringOfPulls([...pullsOnRecord(record, exceptRowId), { machineId, pullerId }], machineId);
  if (!ring) return;
  const machines = ring.map((id) => machineOrRefuse(record, id).name).join(', ');
  throw new RefusedError({ code: 'pulled-in-a-ring', facts: { path: 'is.pullerId', machines } });
}

function write(w: WritableRecord, entryId: number, { machineId, hoursSourceId, is, reason, by }: Asked): number {
  if (!is) return strikeOut(w, hoursSources, hoursSourceId!, entryId, reason);
  const said = { ...columnsOf(is), saidBy: by, reason };
  if (hoursSourceId !== null) return supersede(w, hoursSources, hoursSourceId, entryId, said);
  return insertHoursSource(w, entryId, { machineId, ...said });
}

/** What does not belong to its kind stays empty. */
export function columnsOf(is: NonNullable<Asked['is']>): Omit<NewHoursSource, 'machineId' | 'saidBy'> {
  const fromOn = is.from as Day; // the contract has read it as a day
  const none = { pullerId: null, share: null, hoursPerYear: null, errorShare: null };
  if (is.kind === 'own') return { ...none, fromOn, kind: is.kind };
  if (is.kind === 'yearly')
    return { ...none, fromOn, kind: is.kind, hoursPerYear: is.hoursPerYear, errorShare: is.errorShare };
  return { ...none, fromOn, kind: is.kind, pullerId: is.pullerId, share: is.share, errorShare: is.errorShare };
}
