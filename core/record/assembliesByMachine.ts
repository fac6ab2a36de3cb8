import { listAssemblies } from './assemblyStore.ts';
import { NOW_KNOWN } from './counting.ts';
import { loadSittings, machineOf } from './loadPoints.ts';
import type { ReadableRecord } from './recordFile.ts';

/** Names of the assemblies each machine has on a day, or had last, by machine. */
export function assembliesByMachine(db: ReadableRecord, asOf: string): Map<number, string[]> {
  const { ofAssembly } = loadSittings(db, { asOf, knownAt: NOW_KNOWN, within: null }, new Map());
  const named = new Map<number, string[]>();
  for (const { id, name } of listAssemblies(db)) {
    const machineId = machineOf(ofAssembly.get(id) ?? []);
    if (machineId !== null) named.set(machineId, [...(named.get(machineId) ?? []), name]);
  }
  return named;
}
