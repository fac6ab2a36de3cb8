import type { hoursPutRight } from '../contract/hours.ts';
import type { Handler } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { hoursLine } from '../reading/hoursLine.ts';
import { putDialRight, readDialRow } from '../record/dialStore.ts';
import { writeEntry } from '../record/entry.ts';
import { pastDay } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { askAboutDial } from './dialQuestion.ts';
import { hoursOfMachine } from './seriesNow.ts';

/** Puts a reading right; a figure that cannot be is refused, the old one then stays as it was. */
export const hoursPutRightHandler: Handler<typeof hoursPutRight, Context> = (context, request) => {
  const takenOn = pastDay(context, request.takenOn, 'takenOn');
  const row = readDialRow(recordOf(context), request.dialReadingId);
  if (!row) {
    const facts = { path: 'dialReadingId', dialReadingId: request.dialReadingId };
    throw new RefusedError({ code: 'unknown-dial-reading', facts });
  }
  const { life, use, gathered } = hoursOfMachine(context, row.machineId);
  // what was noted beside a size goes with the row it came from: without either the machine's other rows are judged against
  const others = life.dialEvents.filter(
    (event) => event.id !== row.id && !(event.takenOn === row.takenOn && event.dialHours === row.dialHours),
  );
  const without = hoursLine({ ...life, dialEvents: others }, context.today(), use.rate, gathered);
  const { dialHours } = request;
  const { kind, newDialHours, errorHours, hoursPerDialHour } = row;
  const clock = hoursPerDialHour === null ? {} : { hoursPerDialHour };
  const event = { id: row.id, takenOn, kind, dialHours, newDialHours, errorHours, ...clock, parked: false };
  const { question, cannotBe } = askAboutDial(without, event);
  if (question && cannotBe)
    throw new RefusedError({ code: question.code, facts: { ...question.facts, path: 'dialHours' } });
  const dialReadingId = writeEntry(recordOf(context), entryNow(context, 'hours/putRight', request.by), (w, entryId) =>
    putDialRight(w, entryId, row.id, {
      takenOn,
      dialHours,
      saidBy: request.by || row.saidBy,
      reason: request.reason,
      parked: false,
      question: null,
    }),
  );
  return { dialReadingId };
};
