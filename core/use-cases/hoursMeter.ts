import type { hoursMeter } from '../contract/hours.ts';
import type { Handler } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { type DialRow, dialRowsOf, putClockRight } from '../record/dialStore.ts';
import { writeEntry } from '../record/entry.ts';
import { machineOrRefuse } from '../record/machineStore.ts';
import { insertMeter, readMeter } from '../record/meterStore.ts';
import { meters } from '../record/schema.ts';
import { supersede } from '../record/supersede.ts';
import { type Context, entryNow, recordOf } from './context.ts';

/** What is known of the meter now fitted: new rows take the place of those that said otherwise. */
export const hoursMeterHandler: Handler<typeof hoursMeter, Context> = (context, request) => {
  const { machineId, meterDigits: digits, hoursBefore, hoursPerDialHour, reason, by } = request;
  const record = recordOf(context);
  machineOrRefuse(record, machineId);
  const fitted = rowOfPresentMeter(dialRowsOf(record, machineId));
  const clockDiffers = hoursPerDialHour !== (fitted?.hoursPerDialHour ?? 1);
  if (clockDiffers && !fitted) throw new RefusedError({ code: 'no-meter-read', facts: { path: 'hoursPerDialHour' } });
  const known = readMeter(record, machineId);
  const differs = known?.digits !== digits || known.hoursBefore !== hoursBefore;
  if (!differs && !clockDiffers) throw new RefusedError({ code: 'nothing-changed', facts: { path: 'machineId' } });
  writeEntry(record, entryNow(context, 'hours/meter', by), (w, entryId) => {
    if (differs && known) supersede(w, meters, known.id, entryId, { digits, hoursBefore, reason });
    if (differs && !known) insertMeter(w, entryId, { machineId, digits, hoursBefore, reason });
    if (clockDiffers && fitted) putClockRight(w, entryId, fitted.id, { hoursPerDialHour, reason });
  });
  return { machineId };
};

/** The row that fitted the meter now in place: the last new meter, else the first row of all; null: none counts. */
export function rowOfPresentMeter(rows: readonly DialRow[]): DialRow | null {
  const counting = rows.filter((row) => !row.superseded && !row.struck && !row.undone && !row.parked);
  return counting.findLast(({ kind }) => kind === 'new-meter') ?? counting[0] ?? null;
}
