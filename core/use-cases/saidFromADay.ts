import { RefusedError } from '../outcome.ts';
import type { Day } from '../units/day.ts';
import { refuseField } from './asked.ts';

/** What holds of a machine from a day on, as it stands in the record. */
type SaidFromADay = { id: number; fromOn: Day | null; superseded: boolean; struck: boolean };

/**
 * The row to be put right must be one that counts; a new one must say something.
 *
 * @throws RefusedError the code given; already-put-right; not-as-expected
 */
export function refuseRow(
  rows: readonly SaidFromADay[],
  rowId: number | null,
  is: unknown,
  names: { path: string; code: string },
): void {
  if (rowId === null) {
    if (is === null) refuseField('is', 'what holds from the day on');
    return;
  }
  const row = rows.find(({ id }) => id === rowId);
  const facts = { path: names.path, [names.path]: rowId };
  if (!row) throw new RefusedError({ code: names.code, facts });
  if (row.superseded || row.struck)
    throw new RefusedError({ code: 'already-put-right', facts: { ...facts, id: rowId } });
}

/** Two rows of one day would leave it open which of them holds. @throws RefusedError day-taken */
export function refuseTakenDay(
  rows: readonly SaidFromADay[],
  exceptRowId: number | null,
  from: Day | string | null,
): void {
  const taken = rows.some((row) => row.id !== exceptRowId && !row.superseded && !row.struck && row.fromOn === from);
  if (taken) throw new RefusedError({ code: 'day-taken', facts: { path: 'is.from', from } });
}
