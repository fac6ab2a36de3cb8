import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { chainOf, counting, NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { assemblies, positions, sittings } from './schema.ts';

export type AssemblyOnRecord = { id: number; name: string; serial: string; kindId: number | null; kind: string | null };
export type PositionOnRecord = { id: number; assemblyId: number; item: number; name: string; safety: boolean };

type AssemblyRow = [number, string, string, number | null, string | null];
const assembly = ([id, name, serial, kindId, kind]: AssemblyRow): AssemblyOnRecord => ({
  id,
  name,
  serial,
  kindId,
  kind,
});
const SELECT =
  'SELECT a.id, a.name, a.serial, a.kind_id, k.name FROM assemblies a LEFT JOIN assembly_kinds k ON k.id = a.kind_id';

/** Where every assembly sits now: the last of its counting sittings. */
const SITS_NOW = `SELECT s.assembly_id, s.machine_id, max(COALESCE(s.from_on, '') || printf('%012d', ${chainOf('s')}))
  FROM sittings s WHERE ${counting('sittings', 's')} GROUP BY s.assembly_id`;

/** Assemblies that sit on a machine now. */
export const assembliesOnMachine = (db: ReadableRecord, machineId: number): AssemblyOnRecord[] =>
  bulk<AssemblyRow>(
    db,
    `WITH now(assembly_id, machine_id, last) AS (${SITS_NOW})
     ${SELECT} JOIN now ON now.assembly_id = a.id WHERE now.machine_id = @machineId AND ${standing('a')} ORDER BY a.id`,
    { machineId, knownAt: NOW_KNOWN },
  ).map(assembly);

export const readAssembly = (db: ReadableRecord, assemblyId: number): AssemblyOnRecord | null =>
  bulk<AssemblyRow>(db, `${SELECT} WHERE a.id = @assemblyId AND ${standing('a')}`, {
    assemblyId,
    knownAt: NOW_KNOWN,
  }).map(assembly)[0] ?? null;

export const listAssemblies = (db: ReadableRecord): AssemblyOnRecord[] =>
  bulk<AssemblyRow>(db, `${SELECT} WHERE ${standing('a')} ORDER BY a.id`, { knownAt: NOW_KNOWN }).map(assembly);

type PositionRow = [number, number, number, string, number];
const position = ([id, assemblyId, item, name, safety]: PositionRow): PositionOnRecord => ({
  id,
  assemblyId,
  item,
  name,
  safety: safety === 1,
});

/** Positions of an assembly by item; of all assemblies when none is named. */
export const positionsOf = (db: ReadableRecord, assemblyId: number | null = null): PositionOnRecord[] =>
  bulk<PositionRow>(
    db,
    `SELECT p.id, p.assembly_id, p.item, p.name, p.safety FROM positions p
     WHERE (@assemblyId IS NULL OR p.assembly_id = @assemblyId) AND ${standing('p')} ORDER BY p.assembly_id, p.item, p.id`,
    { assemblyId, knownAt: NOW_KNOWN },
  ).map(position);

export const insertAssembly = (
  w: WritableRecord,
  entryId: number,
  row: { kindId: number | null; name: string; serial: string },
): number => insertInto(w, assemblies, { ...row, entryId });

export const insertPosition = (
  w: WritableRecord,
  entryId: number,
  row: { assemblyId: number; item: number; name: string; safety: boolean },
): number => insertInto(w, positions, { ...row, entryId });

export type SittingOnRecord = { id: number; assemblyId: number; machineId: number | null; fromOn: Day | null };

/** Where assemblies sat, in order; of all assemblies when none is named. */
export const sittingsOf = (db: ReadableRecord, assemblyId: number | null = null): SittingOnRecord[] =>
  bulk<[number, number, number | null, Day | null]>(
    db,
    `SELECT s.id, s.assembly_id, s.machine_id, s.from_on FROM sittings s
     WHERE (@assemblyId IS NULL OR s.assembly_id = @assemblyId) AND ${counting('sittings', 's')}
     ORDER BY s.assembly_id, s.from_on, ${chainOf('s')}`,
    { assemblyId, knownAt: NOW_KNOWN },
  ).map(([id, ofAssembly, machineId, fromOn]) => ({ id, assemblyId: ofAssembly, machineId, fromOn }));

export const insertSitting = (
  w: WritableRecord,
  entryId: number,
  row: {
    assemblyId: number;
    machineId: number | null;
    fromOn: Day | null;
    offDialReadingId: number | null;
    onDialReadingId: number | null;
  },
): number => insertInto(w, sittings, { ...row, entryId });
