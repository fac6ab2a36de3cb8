import type { oldSheetsSave } from '../contract/oldSheets.ts';
import type { Handler } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { type NotedDial, notedDial } from './notedDial.ts';
import { SAVE_SHEET } from './oldSheetsBatch.ts';
import { refuseSavedMeanwhile } from './savedMeanwhile.ts';
import { refuseTypedMeanwhile } from './typedMeanwhile.ts';
import { judgeTyped, judgeTypedRenewals, typedStripDown } from './typedStripDown.ts';
import { isEmpty, parkedOf, writeStripDown } from './writeStripDown.ts';

/**
 * Saves an old sheet whole, in one step. What is doubtful holds nothing up: sizes and a dial that were questioned and not
 * answered are kept aside, and listed. No forecast is made.
 *
 * @throws RefusedError nothing-typed; measured-meanwhile unless `anotherSure`; typed-meanwhile; and as typedStripDown
 */
export const oldSheetsSaveHandler: Handler<typeof oldSheetsSave, Context> = (context, request) => {
  const typed = typedStripDown(context, request);
  if (isEmpty(request)) throw new RefusedError({ code: 'nothing-typed', facts: { path: 'sizes' } });
  refuseSavedMeanwhile(context, request);
  refuseTypedMeanwhile(context, request);
  const judged = { sizes: judgeTyped(context, typed), renewals: judgeTypedRenewals(context, typed) };
  const noted = notedDial(context, request.machineId, typed.takenOn, request.dialHours, 'dialHours', true);
  const dial = request.dialSure ? noted : keptAside(noted);
  const saved = writeEntry(recordOf(context), entryNow(context, SAVE_SHEET, request.fitter), (w, entryId) => ({
    entryId,
    stripDownId: writeStripDown(w, entryId, typed, judged, dial),
  }));
  return {
    ...saved,
    parked: parkedOf(request, judged),
    dialParked: dial !== null && 'reading' in dial && dial.reading.parked,
  };
};

/** A dial that was questioned and not answered stays out of the machine's hours. */
const keptAside = (noted: NotedDial): NotedDial =>
  noted !== null && 'reading' in noted && noted.asked.question !== null
    ? { ...noted, reading: { ...noted.reading, parked: true } }
    : noted;
