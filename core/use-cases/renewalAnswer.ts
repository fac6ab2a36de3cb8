import type { Handler } from '../contract/operation.ts';
import type { renewalAnswer } from '../contract/stripDown.ts';
import { RefusedError } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { putRenewalRight, type RenewalRow, readRenewalRow } from '../record/renewalStore.ts';
import type { PointLife } from '../shop/measuringPoint.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { pointNow } from './seriesNow.ts';
import { writeLimitsOf } from './writeRenewal.ts';

/** Answers the question about a size put in: it is right, and counts from here on, with the limits that move with it. */
export const renewalAnswerHandler: Handler<typeof renewalAnswer, Context> = (
  context,
  { renewalId: rowId, answer, by },
) => {
  const record = recordOf(context);
  const row = renewalOrRefuse(record, rowId);
  if (!row.parked) throw new RefusedError({ code: 'not-questioned', facts: { path: 'renewalId', renewalId: rowId } });
  const renewalId = writeEntry(record, entryNow(context, 'renewal/answer', by), (w, entryId) => {
    const id = putRenewalRight(w, entryId, rowId, { parked: false, reason: answer });
    writeLimitsOf(w, entryId, lifeBefore(context, row), { ...row, renewalId: row.chainId }, visitOf(row, by));
    return id;
  });
  return { renewalId };
};

/** @throws RefusedError unknown-renewal */
export function renewalOrRefuse(record: ReadableRecord, rowId: number): RenewalRow {
  const row = readRenewalRow(record, rowId);
  if (!row) throw new RefusedError({ code: 'unknown-renewal', facts: { path: 'renewalId', renewalId: rowId } });
  return row;
}

export const visitOf = ({ takenOn, by: fitter }: RenewalRow, by: string) => ({ takenOn, fitter: by || fitter });

/** The point as it stood before a renewal: without it, and without the limits it brought. */
export function lifeBefore(context: Context, { id, pointId, takenOn }: RenewalRow): PointLife {
  const life = pointNow(context, pointId);
  if (!life) throw new RefusedError({ code: 'unknown-point', facts: { path: 'renewalId', pointId } });
  return {
    ...life,
    renewals: life.renewals.filter((renewal) => renewal.id !== id),
    limits: life.limits.filter(({ from, withRenewal }) => !(withRenewal && from === takenOn)),
  };
}
