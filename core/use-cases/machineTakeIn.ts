import type { machineTakeIn } from '../contract/machine.ts';
import type { Handler, RequestOf } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { insertDialReading } from '../record/dialStore.ts';
import { writeEntry } from '../record/entry.ts';
import { insertHoursSource } from '../record/hoursSourceStore.ts';
import { insertMachine, insertOwnership, machineOrRefuse } from '../record/machineStore.ts';
import { insertMeter } from '../record/meterStore.ts';
import type { WritableRecord } from '../record/recordFile.ts';
import { insertWorkShare } from '../record/workShareStore.ts';
import { pastDay, refuseField } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { columnsOf } from './hoursSource.ts';
import { layOutAssembly, refuseOddAssembly } from './layOutAssembly.ts';
import { customerAsked, refuseOddCustomer } from './whoseMachine.ts';

type Asked = RequestOf<typeof machineTakeIn>;

/** Takes a machine in, whole: customer, machine, meter, first hours and assemblies, or nothing. */
export const machineTakeInHandler: Handler<typeof machineTakeIn, Context> = (context, request) => {
  const record = recordOf(context);
  refuseOddCustomer(record, request);
  for (const [place, assembly] of request.assemblies.entries()) refuseOddAssembly(assembly, `assemblies.${place}`);
  if (request.dial) pastDay(context, request.dial.takenOn, 'dial.takenOn');
  refuseOddDial(request);
  refuseOddSource(context, request);
  const madeBy = request.dial?.saidBy ?? '';
  return writeEntry(record, entryNow(context, 'machine/takeIn', madeBy), (w, entryId) => {
    const customerId = customerAsked(w, request);
    const machineId = writeMachine(w, entryId, request, customerId);
    for (const assembly of request.assemblies)
      layOutAssembly(w, entryId, { machineId, from: null, enteredBy: madeBy }, assembly);
    return { machineId, customerId };
  });
};

function refuseOddDial({ dial, machine }: Asked): void {
  const fullScaleHours = machine.meterDigits === null ? null : 10 ** machine.meterDigits;
  if (dial && fullScaleHours !== null && dial.dialHours >= fullScaleHours) {
    const facts = { path: 'dial.dialHours', dialHours: dial.dialHours, fullScaleHours };
    throw new RefusedError({ code: 'dial-over-full-scale', facts });
  }
}

function refuseOddSource(context: Context, { machine, dial }: Asked): void {
  const { hoursSource, clock } = machine;
  if (clock && !dial) refuseField('machine.clock', 'what the dial shows, where its clock is told of');
  if (!hoursSource) return;
  pastDay(context, hoursSource.from, 'machine.hoursSource.from');
  if (hoursSource.kind === 'pulled')
    machineOrRefuse(recordOf(context), hoursSource.pullerId, 'machine.hoursSource.pullerId');
}

function writeMachine(w: WritableRecord, entryId: number, { machine, dial }: Asked, customerId: number): number {
  const { name, make, model, serial, builtYear, note, meterDigits: digits, hoursBefore } = machine;
  const { workShare, workType, hoursSource, clock } = machine;
  const machineId = insertMachine(w, entryId, { name, make, model, serial, builtYear, note });
  insertOwnership(w, entryId, { machineId, customerId, fromOn: null });
  insertMeter(w, entryId, { machineId, digits, hoursBefore });
  if (workShare !== 1 || workType !== '')
    insertWorkShare(w, entryId, { machineId, fromOn: null, share: workShare, workType: workType || null });
  if (hoursSource) insertHoursSource(w, entryId, { machineId, ...columnsOf(hoursSource), saidBy: dial?.saidBy ?? '' });
  if (dial) {
    insertDialReading(w, entryId, {
      machineId,
      takenOn: dial.takenOn,
      kind: dial.estimate ? 'estimate' : 'reading',
      dialHours: dial.dialHours,
      newDialHours: null,
      errorHours: null,
      hoursPerDialHour: clock?.hoursPerDialHour ?? null,
      reason: clock?.reason ?? '',
      saidBy: dial.saidBy,
      parked: false,
      question: null,
      inDay: 0,
    });
  }
  return machineId;
}
