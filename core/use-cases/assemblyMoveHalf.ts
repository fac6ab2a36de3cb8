import type { assemblyMoveHalf } from '../contract/machine.ts';
import type { Handler, RequestOf } from '../contract/operation.ts';
import { RefusedError } from '../outcome.ts';
import {
  type AssemblyOnRecord,
  insertPositionSitting,
  positionsOf,
  readAssembly,
  sittingsOf,
} from '../record/assemblyStore.ts';
import { writeEntry } from '../record/entry.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import type { Day } from '../units/day.ts';
import { pastDay, refuseField } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { kindInHalves, type PlacedPosition } from './halves.ts';
import { notedDial, writeNotedDial } from './notedDial.ts';

type Asked = RequestOf<typeof assemblyMoveHalf>;

/**
 * Moves half of an assembly by itself. The parts at its positions, their sizes, findings and hours go with it; the dials read
 * then are readings of their machines too.
 *
 * @throws RefusedError unknown-position, unknown-assembly, already-there, other-kind, half-is-there, and as notedDial
 */
export const assemblyMoveHalfHandler: Handler<typeof assemblyMoveHalf, Context> = (context, request) => {
  const record = recordOf(context);
  const takenOn = pastDay(context, request.takenOn, 'takenOn');
  const { moving, positions } = halfAsked(record, request);
  const { assemblyId: leftId, onShelf, group } = moving[0]!;
  const left = readAssembly(record, leftId)!;
  const to = request.toAssemblyId === null ? null : targetOf(record, request.toAssemblyId, left, onShelf);
  if (to === null && onShelf)
    throw new RefusedError({ code: 'already-there', facts: { path: 'toAssemblyId', toMachineId: null } });
  const there = to ? positions.filter((one) => one.assemblyId === to.id && one.group === group && !one.onShelf) : [];
  if (there.length > 0 && request.theirs === null)
    throw new RefusedError({ code: 'half-is-there', facts: { path: 'theirs', group, assembly: to?.name ?? '' } });
  refuseEarlierDay(record, [...moving, ...there], [leftId, ...(to ? [to.id] : [])], takenOn);

  const fromMachineId = onShelf ? null : machineOf(record, leftId);
  const toMachineId = to ? machineOf(record, to.id) : null;
  if (request.dialHours !== null && fromMachineId === null) refuseField('dialHours', 'nothing: it lies on the shelf');
  if (request.toDialHours !== null && toMachineId === null) refuseField('toDialHours', 'nothing: it goes to the shelf');
  const off = notedDial(context, fromMachineId, takenOn, request.dialHours, 'dialHours');
  const on = notedDial(context, toMachineId, takenOn, request.toDialHours, 'toDialHours');
  writeEntry(record, entryNow(context, 'assembly/moveHalf', ''), (w, entryId) => {
    const [offDialReadingId, onDialReadingId] = [
      writeNotedDial(w, entryId, off, ''),
      writeNotedDial(w, entryId, on, ''),
    ];
    for (const { id: positionId } of moving)
      insertPositionSitting(w, entryId, {
        positionId,
        assemblyId: to?.id ?? null,
        fromOn: takenOn,
        offDialReadingId,
        onDialReadingId,
      });
    const theirAssemblyId = request.theirs === 'in-exchange' && !onShelf ? leftId : null;
    for (const { id: positionId } of there)
      insertPositionSitting(w, entryId, {
        positionId,
        assemblyId: theirAssemblyId,
        fromOn: takenOn,
        offDialReadingId: onDialReadingId,
        onDialReadingId: theirAssemblyId === null ? null : offDialReadingId,
      });
  });
  return { positionIds: request.positionIds };
};

/** The half asked to be moved: whole, together, and of a kind that comes apart. */
function halfAsked(
  record: ReadableRecord,
  { positionIds }: Asked,
): { moving: PlacedPosition[]; positions: PlacedPosition[] } {
  const onRecord = new Map(positionsOf(record).map((position) => [position.id, position]));
  for (const [place, positionId] of positionIds.entries())
    if (!onRecord.has(positionId))
      throw new RefusedError({ code: 'unknown-position', facts: { path: `positionIds.${place}`, positionId } });
  const first = onRecord.get(positionIds[0]!)!;
  const { positions } = kindInHalves(record, readAssembly(record, first.assemblyId)?.kindId ?? null);
  const one = positions.find(({ id }) => id === first.id);
  if (!one) return refuseField('positionIds', 'positions the assembly’s kind says go together');
  const moving = positions.filter(
    ({ assemblyId, group, onShelf, since }) =>
      assemblyId === one.assemblyId &&
      group === one.group &&
      onShelf === one.onShelf &&
      (!onShelf || since === one.since),
  );
  const asked = new Set(positionIds);
  if (moving.length !== asked.size || moving.some(({ id }) => !asked.has(id)))
    refuseField('positionIds', `every position of the ${one.group}, and no other`);
  return { moving, positions };
}

function targetOf(
  record: ReadableRecord,
  assemblyId: number,
  left: AssemblyOnRecord,
  onShelf: boolean,
): AssemblyOnRecord {
  const to = readAssembly(record, assemblyId);
  if (!to) throw new RefusedError({ code: 'unknown-assembly', facts: { path: 'toAssemblyId', assemblyId } });
  if (to.id === left.id && !onShelf)
    throw new RefusedError({ code: 'already-there', facts: { path: 'toAssemblyId', toMachineId: null } });
  if (to.kindId !== left.kindId)
    throw new RefusedError({
      code: 'other-kind',
      facts: { path: 'toAssemblyId', kind: left.kind ?? '', other: to.kind ?? '' },
    });
  return to;
}

/** Moves come in order of day: neither a half nor the assemblies it goes between may have moved later. */
function refuseEarlierDay(
  record: ReadableRecord,
  halves: readonly PlacedPosition[],
  assemblyIds: readonly number[],
  takenOn: Day,
): void {
  const moves = [
    ...halves.map(({ since }) => since),
    ...assemblyIds.map((assemblyId) => sittingsOf(record, assemblyId).at(-1)?.fromOn ?? null),
  ].filter((on) => on !== null);
  const last = moves.sort().at(-1);
  if (last !== undefined && last > takenOn) refuseField('takenOn', `a day from their last move on, ${last}`);
}

const machineOf = (record: ReadableRecord, assemblyId: number): number | null =>
  sittingsOf(record, assemblyId).at(-1)?.machineId ?? null;
