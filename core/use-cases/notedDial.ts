import { RefusedError } from '../outcome.ts';
import { SEEN_DIAL_ID, withSeenDials } from '../reading/seenDials.ts';
import { dialRowsOf, insertDialReading, type NewDialReading } from '../record/dialStore.ts';
import type { WritableRecord } from '../record/recordFile.ts';
import type { DialEvent } from '../shop/machineLife.ts';
import type { Day } from '../units/day.ts';
import { type Context, recordOf } from './context.ts';
import { type AskedDial, askAboutDial } from './dialQuestion.ts';
import { hoursOfMachine } from './seriesNow.ts';

/** A dial figure read beside a strip-down or a move: a row on record gives it already, or it becomes one. */
export type NotedDial = { known: number } | { reading: Omit<NewDialReading, 'saidBy'>; asked: AskedDial } | null;

/**
 * @param sure a figure that cannot be is then kept aside, out of the machine's hours, instead of refused
 * @throws RefusedError with the code of the question (dial-went-back, ...) at `path`
 */
export function notedDial(
  context: Context,
  machineId: number | null,
  takenOn: Day,
  dialHours: number | null,
  path: string,
  sure = false,
): NotedDial {
  if (machineId === null || dialHours === null) return null;
  const rows = dialRowsOf(recordOf(context), machineId);
  const known = rows.find(
    (row) =>
      row.takenOn === takenOn &&
      row.dialHours === dialHours &&
      !row.superseded &&
      !row.undone &&
      !row.struck &&
      !row.parked,
  );
  if (known) return { known: known.chainId };
  const { life, line } = hoursOfMachine(context, machineId);
  const asked = askAboutDial(line, dialReadingEvent(takenOn, dialHours));
  if (asked.cannotBe && !sure && asked.question)
    throw new RefusedError({ code: asked.question.code, facts: { ...asked.question.facts, path } });
  const events = withSeenDials(life, [{ takenOn, dialHours }]).dialEvents;
  const place = events.findIndex(
    ({ id, takenOn: on, dialHours: dial }) => id === SEEN_DIAL_ID && on === takenOn && dial === dialHours,
  );
  const beforeChange =
    place >= 0 && events.slice(place).some((later) => later.takenOn === takenOn && later.kind === 'new-meter');
  return {
    asked,
    reading: {
      machineId,
      takenOn,
      kind: 'reading',
      dialHours,
      newDialHours: null,
      errorHours: null,
      parked: asked.cannotBe,
      question: asked.question?.code ?? null,
      inDay: beforeChange ? -1 : 0,
    },
  };
}

/** @returns first row of the reading's chain, for a strip-down or a move to refer to; null: no dial was read */
export function writeNotedDial(w: WritableRecord, entryId: number, noted: NotedDial, saidBy: string): number | null {
  if (!noted) return null;
  return 'known' in noted ? noted.known : insertDialReading(w, entryId, { ...noted.reading, saidBy });
}

/** A plain reading not on record yet; it comes after the rows of its day. */
export const dialReadingEvent = (takenOn: Day, dialHours: number): DialEvent => ({
  id: Number.MAX_SAFE_INTEGER,
  takenOn,
  kind: 'reading',
  dialHours,
  newDialHours: null,
  errorHours: null,
  parked: false,
});
