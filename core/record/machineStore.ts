import { eq } from 'drizzle-orm';
import { assertInvariant, RefusedError } from '../outcome.ts';
import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { machines, ownerships } from './schema.ts';

export type MachineDetails = {
  name: string;
  make: string;
  model: string;
  serial: string;
  builtYear: number | null;
  note: string;
};
export type MachineDetailsOnRecord = MachineDetails & { id: number };

type Row = [number, string, string, string, string, number | null, string];
const SELECT = 'SELECT m.id, m.name, m.make, m.model, m.serial, m.built_year, m.note FROM machines m';
const details = ([id, name, make, model, serial, builtYear, note]: Row): MachineDetailsOnRecord => ({
  id,
  name,
  make,
  model,
  serial,
  builtYear,
  note,
});

/** All machines, by name. */
export const listMachines = (db: ReadableRecord): MachineDetailsOnRecord[] =>
  bulk<Row>(db, `${SELECT} WHERE ${standing('m')} ORDER BY m.name COLLATE NOCASE, m.id`, { knownAt: NOW_KNOWN }).map(
    details,
  );

/** Names of all machines, also of those whose entry was undone: history speaks of them too. */
export const machineNames = (db: ReadableRecord): Map<number, string> =>
  new Map(bulk<[number, string]>(db, 'SELECT id, name FROM machines', {}));

const readMachine = (db: ReadableRecord, machineId: number): MachineDetailsOnRecord | null =>
  bulk<Row>(db, `${SELECT} WHERE m.id = @machineId AND ${standing('m')}`, { machineId, knownAt: NOW_KNOWN }).map(
    details,
  )[0] ?? null;

/** @throws RefusedError unknown-machine */
export function machineOrRefuse(db: ReadableRecord, machineId: number, path = 'machineId'): MachineDetailsOnRecord {
  const machine = readMachine(db, machineId);
  if (!machine) throw new RefusedError({ code: 'unknown-machine', facts: { path, machineId } });
  return machine;
}

/** A machine of that name, written large or small. */
export const machineNamed = (db: ReadableRecord, name: string): MachineDetailsOnRecord | null =>
  bulk<Row>(db, `${SELECT} WHERE m.name = @name COLLATE NOCASE AND ${standing('m')} ORDER BY m.id`, {
    name,
    knownAt: NOW_KNOWN,
  }).map(details)[0] ?? null;

/** @throws RefusedError machine-name-taken */
export function insertMachine(w: WritableRecord, entryId: number, machine: MachineDetails): number {
  refuseTakenName(w, machine.name, null);
  return insertInto(w, machines, { ...machine, entryId });
}

/** Changes what a machine is called and what is noted of it; nothing a forecast rests on. */
export function changeMachine(w: WritableRecord, machineId: number, changed: MachineDetails): void {
  refuseTakenName(w, changed.name, machineId);
  const done = w.write.update(machines).set(changed).where(eq(machines.id, machineId)).run();
  assertInvariant(done.changes === 1, 'the machine to be changed is in the record');
}

function refuseTakenName(w: WritableRecord, name: string, except: number | null): void {
  const taken = machineNamed(w, name);
  if (taken && taken.id !== except)
    throw new RefusedError({ code: 'machine-name-taken', facts: { path: 'machine.name', name: taken.name } });
}

export const insertOwnership = (
  w: WritableRecord,
  entryId: number,
  owner: { machineId: number; customerId: number; fromOn: Day | null },
): number => insertInto(w, ownerships, { ...owner, entryId });
