import type { pointAdd } from '../contract/oldSheets.ts';
import type { Handler, RequestOf } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import {
  assembliesOnMachine,
  insertAssembly,
  insertPosition,
  insertSitting,
  positionsOf,
} from '../record/assemblyStore.ts';
import { ensureClass } from '../record/classStore.ts';
import { writeEntry } from '../record/entry.ts';
import { machineOrRefuse } from '../record/machineStore.ts';
import { insertLimits, insertPoint, pointsOfAssemblies } from '../record/pointStore.ts';
import type { ReadableRecord, WritableRecord } from '../record/recordFile.ts';
import { refuseField } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { refuseOddLimits } from './soundLimits.ts';

type Asked = RequestOf<typeof pointAdd>;

/**
 * Lays out one more measuring point: at a position that is there, at a new one, or on a new assembly. Its part is taken to
 * be as old as the others of its assembly.
 *
 * @throws RefusedError unknown-machine, unknown-assembly, unknown-position, position-twice, point-twice, and as refuseOddLimits
 */
export const pointAddHandler: Handler<typeof pointAdd, Context> = (context, request) => {
  const record = recordOf(context);
  machineOrRefuse(record, request.machineId);
  refuseOdd(record, request);
  return writeEntry(record, entryNow(context, 'point/add', request.by), (w, entryId) => {
    const assemblyId = request.assemblyId ?? layNewAssembly(w, entryId, request);
    const positionId = request.positionId ?? insertPosition(w, entryId, { assemblyId, ...request.position! });
    return { assemblyId, positionId, pointId: layPoint(w, entryId, request, assemblyId, positionId) };
  });
};

function refuseOdd(record: ReadableRecord, request: Asked): void {
  const { machineId, assemblyId, assemblyName, positionId, position, point } = request;
  if ((assemblyId === null) === (assemblyName === null))
    refuseField('assemblyId', 'an assembly on the machine, or the name of a new one');
  if ((positionId === null) === (position === null))
    refuseField('positionId', 'a position of the assembly, or a new one');
  if (assemblyId === null) {
    if (positionId !== null) refuseField('positionId', 'a new position, on a new assembly');
  } else if (!assembliesOnMachine(record, machineId).some(({ id }) => id === assemblyId)) {
    throw new RefusedError({ code: 'unknown-assembly', facts: { path: 'assemblyId', assemblyId } });
  } else refuseOddPlace(record, request, assemblyId);
  refuseOddLimits(point.wears, point, 'point.');
}

function refuseOddPlace(record: ReadableRecord, { positionId, position, point }: Asked, assemblyId: number): void {
  const positions = positionsOf(record, assemblyId);
  if (position && positions.some(({ name }) => same(name, position.name)))
    throw new RefusedError({ code: 'position-twice', facts: { path: 'position.name', name: position.name } });
  if (positionId === null) return;
  if (!positions.some(({ id }) => id === positionId))
    throw new RefusedError({ code: 'unknown-position', facts: { path: 'positionId', positionId } });
  const there = pointsOfAssemblies(record, [assemblyId]).filter((other) => other.positionId === positionId);
  if (there.some(({ name }) => same(name, point.name)))
    throw new RefusedError({ code: 'point-twice', facts: { path: 'point.name', name: point.name } });
}

const same = (a: string, b: string): boolean => a.toLowerCase() === b.toLowerCase();

function layNewAssembly(w: WritableRecord, entryId: number, { machineId, assemblyName }: Asked): number {
  const assemblyId = insertAssembly(w, entryId, { kindId: null, name: assemblyName!, serial: '' });
  insertSitting(w, entryId, { assemblyId, machineId, fromOn: null, offDialReadingId: null, onDialReadingId: null });
  return assemblyId;
}

function layPoint(
  w: WritableRecord,
  entryId: number,
  { point, by }: Asked,
  assemblyId: number,
  positionId: number,
): number {
  const [sibling] = pointsOfAssemblies(w, [assemblyId]);
  const pointId = insertPoint(w, entryId, {
    positionId,
    name: point.name,
    measures: point.measures,
    wears: point.wears,
    partClassId: ensureClass(w, entryId, point.partClass),
    gaugeErrorMm: point.gaugeErrorMm,
    fittedMachineHours: sibling?.fittedMachineHours ?? null,
    stations: point.stations,
  });
  const { newSizeMm, newSizeTolMm, renewAtMm, rejectAtMm, limitSource: source } = point;
  insertLimits(w, entryId, {
    pointId,
    fromOn: null,
    newSizeMm,
    newSizeTolMm,
    renewAtMm,
    rejectAtMm,
    source,
    enteredBy: by,
  });
  return pointId;
}
