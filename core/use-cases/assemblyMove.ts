import type { assemblyMove } from '../contract/machine.ts';
import type { Handler } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import { insertSitting, readAssembly, sittingsOf } from '../record/assemblyStore.ts';
import { writeEntry } from '../record/entry.ts';
import { pastDay, refuseField } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { notedDial, writeNotedDial } from './notedDial.ts';
import { hoursOfMachine } from './seriesNow.ts';

/** Moves an assembly, its parts and their wear with it; the dials read then are readings of their machines too. */
export const assemblyMoveHandler: Handler<typeof assemblyMove, Context> = (context, request) => {
  const record = recordOf(context);
  const { assemblyId, toMachineId } = request;
  const takenOn = pastDay(context, request.takenOn, 'takenOn');
  if (!readAssembly(record, assemblyId))
    throw new RefusedError({ code: 'unknown-assembly', facts: { path: 'assemblyId', assemblyId } });
  if (toMachineId !== null) hoursOfMachine(context, toMachineId, 'toMachineId');
  const left = sittingsOf(record, assemblyId).at(-1);
  if (left && left.machineId === toMachineId)
    throw new RefusedError({ code: 'already-there', facts: { path: 'toMachineId', toMachineId } });
  if (left?.fromOn && left.fromOn > takenOn) refuseField('takenOn', `a day from its last move on, ${left.fromOn}`);
  const fromMachineId = left?.machineId ?? null;
  if (request.dialHours !== null && fromMachineId === null) refuseField('dialHours', 'nothing: it lies on the shelf');
  if (request.toDialHours !== null && toMachineId === null) refuseField('toDialHours', 'nothing: it goes to the shelf');

  const off = notedDial(context, fromMachineId, takenOn, request.dialHours, 'dialHours');
  const on = notedDial(context, toMachineId, takenOn, request.toDialHours, 'toDialHours');
  writeEntry(record, entryNow(context, 'assembly/move', ''), (w, entryId) =>
    insertSitting(w, entryId, {
      assemblyId,
      machineId: toMachineId,
      fromOn: takenOn,
      offDialReadingId: writeNotedDial(w, entryId, off, ''),
      onDialReadingId: writeNotedDial(w, entryId, on, ''),
    }),
  );
  return { assemblyId };
};
