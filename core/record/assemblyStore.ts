import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { chainOf, counting, NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import { everIn, presentAssemblyOf } from './positionSittings.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { assemblies, positionSittings, positions, sittings } from './schema.ts';

export type AssemblyOnRecord = { id: number; name: string; serial: string; kindId: number | null; kind: string | null };
export type PositionOnRecord = {
  id: number;
  /** where it is now, or was last when it lies on the shelf */
  assemblyId: number;
  laidOutIn: number;
  item: number;
  name: string;
  safety: boolean;
  mustStayStandard: boolean;
};

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

/** Where assemblies sit now: the last of their counting sittings. @param among SQL that tells which */
const sitsNow = (
  among: string,
) => `SELECT s.assembly_id, s.machine_id, max(COALESCE(s.from_on, '') || printf('%012d', ${chainOf('s')}))
  FROM sittings s WHERE ${among} AND ${counting('sittings', 's')} GROUP BY s.assembly_id`;

/** Assemblies that sit on a machine now. */
export const assembliesOnMachine = (db: ReadableRecord, machineId: number): AssemblyOnRecord[] =>
  bulk<AssemblyRow>(
    db,
    `WITH now(assembly_id, machine_id, last) AS (${sitsNow('s.assembly_id IN (SELECT assembly_id FROM sittings WHERE machine_id = @machineId)')})
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

type PositionRow = [number, number, number, string, number, number, number];
const position = ([
  id,
  assemblyId,
  item,
  name,
  safety,
  mustStayStandard,
  laidOutIn,
]: PositionRow): PositionOnRecord => ({
  id,
  assemblyId,
  laidOutIn,
  item,
  name,
  safety: safety === 1,
  mustStayStandard: mustStayStandard === 1,
});

/** Positions now in an assembly (or in it last, where they lie on the shelf) by item; of all assemblies when none is named. */
export const positionsOf = (db: ReadableRecord, assemblyId: number | null = null): PositionOnRecord[] =>
  bulk<PositionRow>(
    db,
    `WITH placed AS (SELECT p.id, ${presentAssemblyOf('p')} AS assembly_id, p.item, p.name, p.safety, p.must_stay_standard,
       p.assembly_id AS laid_out_in
       FROM positions p WHERE ${assemblyId === null ? '' : `${everIn('p', '@assemblyId')} AND`} ${standing('p')})
     SELECT * FROM placed ${assemblyId === null ? '' : 'WHERE assembly_id = @assemblyId'} ORDER BY assembly_id, item, id`,
    { assemblyId, knownAt: NOW_KNOWN },
  ).map(position);

export type HomeOnRecord = { positionId: number; assemblyId: number | null; fromOn: Day };

/** Where positions went by themselves, in order. */
export const homesOf = (db: ReadableRecord): HomeOnRecord[] =>
  bulk<[number, number | null, Day]>(
    db,
    `SELECT h.position_id, h.assembly_id, h.from_on FROM position_sittings h
     WHERE ${counting('position_sittings', 'h')} ORDER BY h.position_id, h.from_on, h.entry_id`,
    { knownAt: NOW_KNOWN },
  ).map(([positionId, assemblyId, fromOn]) => ({ positionId, assemblyId, fromOn }));

export const insertAssembly = (
  w: WritableRecord,
  entryId: number,
  row: { kindId: number | null; name: string; serial: string },
): number => insertInto(w, assemblies, { ...row, entryId });

export const insertPosition = (
  w: WritableRecord,
  entryId: number,
  row: { assemblyId: number; item: number; name: string; safety: boolean; mustStayStandard?: boolean },
): number => insertInto(w, positions, { ...row, entryId });

export type SittingOnRecord = { id: number; assemblyId: number; machineId: number | null; fromOn: Day | null };

/** Where assemblies sat, in order; of all assemblies when none is named. */
export const sittingsOf = (db: ReadableRecord, assemblyId: number | null = null): SittingOnRecord[] =>
  bulk<[number, number, number | null, Day | null]>(
    db,
    `SELECT s.id, s.assembly_id, s.machine_id, s.from_on FROM sittings s
     WHERE ${assemblyId === null ? '' : 's.assembly_id = @assemblyId AND'} ${counting('sittings', 's')}
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

/** A position goes by itself, from a day on. @param row.assemblyId null: to the shelf */
export const insertPositionSitting = (
  w: WritableRecord,
  entryId: number,
  row: {
    positionId: number;
    assemblyId: number | null;
    fromOn: Day;
    offDialReadingId: number | null;
    onDialReadingId: number | null;
  },
): number => insertInto(w, positionSittings, { ...row, entryId });
