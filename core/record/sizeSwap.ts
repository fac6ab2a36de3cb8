import { eq } from 'drizzle-orm';
import { assertInvariant } from '../outcome.ts';
import type { WritableRecord } from './recordFile.ts';
import { sizes } from './schema.ts';
import { insertSize } from './sizeStore.ts';
import { strikeOut, supersede } from './supersede.ts';

/** What is said of a size in its new place. */
type Judged = { parked: boolean; question: string | null };

/** The size of one row, and the gauge it was read with, into the place of another row; that one stays visible. */
export function putSizeInPlaceOf(
  w: WritableRecord,
  entryId: number,
  placeRowId: number,
  fromRowId: number,
  judged: Judged,
  reason: string,
): void {
  const { sizeMm, gaugeId, gaugeErrorMm, gaugeStepMm } = sizeRow(w, fromRowId);
  supersede(w, sizes, placeRowId, entryId, {
    sizeMm,
    gaugeId,
    gaugeErrorMm,
    gaugeStepMm,
    struck: false,
    ...judged,
    reason,
  });
}

/** The size of one row into a place of the same strip-down where nothing stood; its own place is struck out. */
export function moveSize(
  w: WritableRecord,
  entryId: number,
  fromRowId: number,
  to: { pointId: number; station: string },
  judged: Judged,
  reason: string,
): void {
  const { stripDownId, event, sizeMm, gaugeId, gaugeErrorMm, gaugeStepMm } = sizeRow(w, fromRowId);
  insertSize(w, entryId, { stripDownId, ...to, event, sizeMm, gaugeId, gaugeErrorMm, gaugeStepMm, ...judged });
  strikeOut(w, sizes, fromRowId, entryId, reason);
}

function sizeRow(w: WritableRecord, rowId: number) {
  const row = w.read.select().from(sizes).where(eq(sizes.id, rowId)).get();
  assertInvariant(row, 'the size to be moved is on record');
  return row;
}
