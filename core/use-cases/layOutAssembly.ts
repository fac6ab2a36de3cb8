import type { z } from 'zod';
import type { zNewAssembly } from '../contract/machine.ts';
import { RefusedError } from '../outcome.ts';
import { insertAssembly, insertPosition, insertSitting } from '../record/assemblyStore.ts';
import { ensureClass } from '../record/classStore.ts';
import { insertJoint } from '../record/jointStore.ts';
import { listKinds } from '../record/kindStore.ts';
import { insertLimits, insertPoint } from '../record/pointStore.ts';
import type { WritableRecord } from '../record/recordFile.ts';
import type { Day } from '../units/day.ts';
import { keyOfPoint, refuseOddJoints } from './soundJoints.ts';
import { refuseOddLimits } from './soundLimits.ts';

type NewAssembly = z.output<typeof zNewAssembly>;

/** Refuses an assembly that cannot be laid out as asked. @param path "assembly" or "assemblies.0" */
export function refuseOddAssembly({ positions, joints }: NewAssembly, path: string): void {
  const names = new Set<string>();
  for (const [place, position] of positions.entries()) {
    const at = `${path}.positions.${place}`;
    const name = position.name.toLowerCase();
    if (names.has(name))
      throw new RefusedError({ code: 'position-twice', facts: { path: `${at}.name`, name: position.name } });
    names.add(name);
    const points = new Set<string>();
    for (const [number, point] of position.points.entries()) {
      const called = point.name.toLowerCase();
      const pointAt = `${at}.points.${number}`;
      if (points.has(called)) {
        throw new RefusedError({ code: 'point-twice', facts: { path: `${pointAt}.name`, name: point.name } });
      }
      points.add(called);
      refuseOddLimits(point.wears, point, `${pointAt}.`);
    }
  }
  refuseOddJoints(positions, joints, path);
}

/** Lays an assembly out on a machine: its positions, points and first limits. @param from null: since the beginning */
export function layOutAssembly(
  w: WritableRecord,
  entryId: number,
  on: { machineId: number; from: Day | null; enteredBy: string },
  assembly: NewAssembly,
): number {
  const kindId = listKinds(w).find(({ name }) => name === assembly.kind)?.id ?? null;
  const assemblyId = insertAssembly(w, entryId, { kindId, name: assembly.name, serial: assembly.serial });
  insertSitting(w, entryId, {
    assemblyId,
    machineId: on.machineId,
    fromOn: on.from,
    offDialReadingId: null,
    onDialReadingId: null,
  });
  const pointIds = new Map<string, number>();
  for (const { item, name, safety, mustStayStandard, points } of assembly.positions) {
    const positionId = insertPosition(w, entryId, { assemblyId, item, name, safety, mustStayStandard });
    for (const point of points) {
      const pointId = insertPoint(w, entryId, {
        positionId,
        name: point.name,
        measures: point.measures,
        wears: point.wears,
        partClassId: ensureClass(w, entryId, point.partClass),
        gaugeErrorMm: point.gaugeErrorMm,
        fittedMachineHours: assembly.fittedMachineHours,
        stations: point.stations,
      });
      pointIds.set(keyOfPoint({ item, point: point.name }), pointId);
      const { newSizeMm, newSizeTolMm, renewAtMm, rejectAtMm, limitSource: source } = point;
      const { enteredBy } = on;
      insertLimits(w, entryId, {
        pointId,
        fromOn: null,
        newSizeMm,
        newSizeTolMm,
        renewAtMm,
        rejectAtMm,
        source,
        enteredBy,
      });
    }
  }
  const idOf = (named: { item: number; point: string }): number => pointIds.get(keyOfPoint(named))!;
  for (const { slack, pin, bores } of assembly.joints)
    insertJoint(w, entryId, { slackPointId: idOf(slack), pinPointId: idOf(pin), borePointIds: bores.map(idOf) });
  return assemblyId;
}
