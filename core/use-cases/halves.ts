import type { Half } from '../contract/machine.ts';
import {
  type AssemblyOnRecord,
  homesOf,
  listAssemblies,
  type PositionOnRecord,
  positionsOf,
  type SittingOnRecord,
  sittingsOf,
} from '../record/assemblyStore.ts';
import { listMachines } from '../record/machineStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import type { Day } from '../units/day.ts';
import { kindsOnRecord } from './kindsOnRecord.ts';

/** A position with what it goes with, and where it is now. */
export type PlacedPosition = PositionOnRecord & {
  group: string;
  /** it lies apart on the shelf; `assemblyId` is then the assembly it was in last */
  onShelf: boolean;
  /** since when it is where it is; null: it never went by itself */
  since: Day | null;
};

type KindOnRecord = ReturnType<typeof kindsOnRecord>[number];
/** Assemblies of one kind, and which of their positions go together. */
export type KindInHalves = { assemblies: AssemblyOnRecord[]; positions: PlacedPosition[] };

/** Everything of an assembly's kind that can go by itself; an assembly of no kind moves as one whole. */
export function kindInHalves(record: ReadableRecord, kindId: number | null): KindInHalves {
  const kind = kindsOnRecord(record).find((one) => one.kindId === kindId);
  if (!kind) return { assemblies: [], positions: [] };
  const assemblies = listAssemblies(record).filter((assembly) => assembly.kindId === kindId);
  const ids = new Set(assemblies.map(({ id }) => id));
  const homes = Map.groupBy(homesOf(record), ({ positionId }) => positionId);
  const positions = positionsOf(record).flatMap((position) => {
    const group = groupOf(kind, position);
    if (!ids.has(position.assemblyId) || group === null) return [];
    const last = homes.get(position.id)?.at(-1);
    return [{ ...position, group, onShelf: last?.assemblyId === null, since: last?.fromOn ?? null }];
  });
  return { assemblies, positions };
}

/** By the name the kind has for it, else by its ring number: a shop may have named its strip otherwise. */
function groupOf({ positions }: KindOnRecord, { name, item }: PositionOnRecord): string | null {
  const called = positions.find((position) => position.name.toLowerCase() === name.toLowerCase());
  return (called ?? positions.find((position) => position.item === item))?.group ?? null;
}

/** Positions as halves: what goes together, in the order of their items. */
export const halvesOf = (positions: readonly PlacedPosition[]): Half[] =>
  [...Map.groupBy(positions, ({ group }) => group)].map(([group, own]) => ({
    group,
    positions: own.map(({ id, item, name }) => ({ positionId: id, item, name })),
  }));

/** Where assemblies sit now, by name. */
export function whereabouts(record: ReadableRecord): (assembly: AssemblyOnRecord) => {
  assemblyId: number;
  assembly: string;
  machineId: number | null;
  machine: string | null;
} {
  const names = new Map(listMachines(record).map(({ id, name }) => [id, name]));
  const last = new Map<number, SittingOnRecord>(sittingsOf(record).map((sitting) => [sitting.assemblyId, sitting]));
  return ({ id, name }) => {
    const machineId = last.get(id)?.machineId ?? null;
    return {
      assemblyId: id,
      assembly: name,
      machineId,
      machine: machineId === null ? null : (names.get(machineId) ?? null),
    };
  };
}
