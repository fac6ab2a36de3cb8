import type { hoursAdd } from '../contract/hours.ts';
import type { Handler, RequestOf } from '../contract/operation.ts';
import { machineHoursOn } from '../reading/machineHours.ts';
import { insertDialReading } from '../record/dialStore.ts';
import { writeEntry } from '../record/entry.ts';
import type { DialEvent } from '../shop/machineLife.ts';
import type { Day } from '../units/day.ts';
import { pastDay, refuseField } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { askAboutDial } from './dialQuestion.ts';
import { hoursOfMachine } from './seriesNow.ts';

/**
 * Keeps what a meter shows. What is odd comes back as a question first; sent again with `sure` it is kept, and a figure
 * that cannot be (a dial that fell) is then kept aside, out of the machine's hours.
 */
export const hoursAddHandler: Handler<typeof hoursAdd, Context> = (context, request) => {
  const takenOn = pastDay(context, request.takenOn, 'takenOn');
  refuseOddShape(request);
  const { line } = hoursOfMachine(context, request.machineId);
  const { question, cannotBe } = askAboutDial(line, dialEvent(request, takenOn));
  if (question && !request.sure) {
    return { kept: false, question, machineHours: hoursOn(context, request.machineId, takenOn), dialReadingId: null };
  }
  const { machineId, kind, dialHours, newDialHours, errorHours, clock, saidBy } = request;
  const dialReadingId = writeEntry(recordOf(context), entryNow(context, 'hours/add', saidBy), (w, entryId) =>
    insertDialReading(w, entryId, {
      machineId,
      takenOn,
      kind,
      dialHours,
      newDialHours: kind === 'new-meter' ? newDialHours : null,
      errorHours,
      hoursPerDialHour: clock?.hoursPerDialHour ?? null,
      reason: clock?.reason ?? '',
      saidBy,
      parked: cannotBe,
      question: question?.code ?? null,
      inDay: 0,
    }),
  );
  return {
    kept: true,
    question: cannotBe ? question : null,
    machineHours: hoursOn(context, machineId, takenOn),
    dialReadingId,
  };
};

function refuseOddShape({ kind, dialHours, newDialHours, clock }: RequestOf<typeof hoursAdd>): void {
  if (kind !== 'new-meter' && clock !== null) refuseField('clock', 'no pace of a clock but of a new meter');
  if (kind !== 'new-meter' && dialHours === null) refuseField('dialHours', 'what the dial shows, in hours');
  if (kind === 'new-meter' && newDialHours === null) refuseField('newDialHours', 'what the new meter shows, in hours');
}

const dialEvent = (request: RequestOf<typeof hoursAdd>, takenOn: Day): DialEvent => ({
  id: Number.MAX_SAFE_INTEGER, // not in the record yet: comes after the rows of its day
  takenOn,
  kind: request.kind,
  dialHours: request.dialHours,
  newDialHours: request.newDialHours,
  errorHours: request.errorHours,
  ...(request.clock && { hoursPerDialHour: request.clock.hoursPerDialHour }),
  parked: false,
});

const hoursOn = (context: Context, machineId: number, on: Day): number | null =>
  machineHoursOn(hoursOfMachine(context, machineId).line, on)?.hours ?? null;
