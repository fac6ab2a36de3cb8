import type { ReadableRecord } from './recordFile.ts';

/** Machines that must be looked at together, and the assemblies that ever sat on them. */
export type BoundMachines = { machineIds: readonly number[]; assemblyIds: readonly number[] };

/**
 * What one machine's hours and parts rest on, step by step until nothing is added: assemblies that ever sat on it, positions
 * that ever went by themselves, the machines those sat on, and machines that pull or are pulled. Rows that were put right or
 * undone count too: a machine too many changes no figure.
 */
export function boundMachines(db: ReadableRecord, machineIds: readonly number[]): BoundMachines {
  const step = stepsOf(db);
  const machines = new Set<number>();
  const assemblies = new Set<number>();
  const toLook: { machine: boolean; id: number }[] = machineIds.map((id) => ({ machine: true, id }));
  for (let at = toLook.pop(); at; at = toLook.pop()) {
    const seen = at.machine ? machines : assemblies;
    if (seen.has(at.id)) continue;
    seen.add(at.id);
    for (const id of at.machine ? step.assembliesOn(at.id) : step.nextAssemblies(at.id))
      if (!assemblies.has(id)) toLook.push({ machine: false, id });
    for (const id of at.machine ? step.nextMachines(at.id) : step.machinesUnder(at.id))
      if (!machines.has(id)) toLook.push({ machine: true, id });
  }
  const inOrder = (ids: Set<number>) => [...ids].sort((a, b) => a - b);
  return { machineIds: inOrder(machines), assemblyIds: inOrder(assemblies) };
}

/** Every machine a point's assembly, or the one its position went to, ever sat on. */
export const machinesOfPoint = (db: ReadableRecord, pointId: number): number[] => {
  const of = db.sqlite
    .prepare(
      `SELECT p.assembly_id FROM measuring_points m JOIN positions p ON p.id = m.position_id WHERE m.id = @pointId
       UNION SELECT h.assembly_id FROM measuring_points m JOIN position_sittings h ON h.position_id = m.position_id
         WHERE m.id = @pointId AND h.assembly_id IS NOT NULL`,
    )
    .pluck()
    .all({ pointId }) as number[];
  return [...new Set(of.flatMap((assemblyId) => stepsOf(db).machinesUnder(assemblyId)))];
};

type Steps = Record<
  'assembliesOn' | 'nextMachines' | 'machinesUnder' | 'nextAssemblies',
  (id: number) => readonly number[]
>;
const prepared = new WeakMap<ReadableRecord['sqlite'], Steps>();

function stepsOf({ sqlite }: ReadableRecord): Steps {
  const known = prepared.get(sqlite);
  if (known) return known;
  const ids = (sql: string) => {
    const statement = sqlite.prepare(sql).pluck();
    return (id: number) => statement.all({ id }) as number[];
  };
  const steps: Steps = {
    assembliesOn: ids('SELECT DISTINCT assembly_id FROM sittings WHERE machine_id = @id'),
    nextMachines: ids(
      `SELECT puller_id FROM hours_sources WHERE machine_id = @id AND puller_id IS NOT NULL
       UNION SELECT machine_id FROM hours_sources WHERE puller_id = @id`,
    ),
    machinesUnder: ids('SELECT DISTINCT machine_id FROM sittings WHERE assembly_id = @id AND machine_id IS NOT NULL'),
    nextAssemblies: ids(
      `SELECT h.assembly_id FROM position_sittings h JOIN positions p ON p.id = h.position_id
         WHERE p.assembly_id = @id AND h.assembly_id IS NOT NULL
       UNION SELECT p.assembly_id FROM position_sittings h JOIN positions p ON p.id = h.position_id
         WHERE h.assembly_id = @id`,
    ),
  };
  prepared.set(sqlite, steps);
  return steps;
}

/** Every machine an assembly ever sat on. */
export const machinesOfAssembly = (db: ReadableRecord, assemblyId: number): readonly number[] =>
  stepsOf(db).machinesUnder(assemblyId);

/** Every machine a position ever sat on, with its assembly or by itself. */
export function machinesOfPosition(db: ReadableRecord, positionId: number): number[] {
  const of = db.sqlite
    .prepare(
      `SELECT assembly_id FROM positions WHERE id = @positionId
       UNION SELECT assembly_id FROM position_sittings WHERE position_id = @positionId AND assembly_id IS NOT NULL`,
    )
    .pluck()
    .all({ positionId }) as number[];
  return [...new Set(of.flatMap((assemblyId) => stepsOf(db).machinesUnder(assemblyId)))];
}

/** What a query is narrowed to, as it is bound; null: everything. */
export type Within = { machines: string; assemblies: string } | null;

export const withinOf = ({ machineIds, assemblyIds }: BoundMachines): Within => ({
  machines: JSON.stringify(machineIds),
  assemblies: JSON.stringify(assemblyIds),
});

/** In SQL, to follow a WHERE: rows of these machines only. Nothing where all are asked for. */
export const ofMachines = (within: Within, machineId: string): string =>
  within ? `AND ${machineId} IN (SELECT value FROM json_each(@machines))` : '';

export const ofAssemblies = (within: Within, assemblyId: string): string =>
  within ? `AND ${assemblyId} IN (SELECT value FROM json_each(@assemblies))` : '';

const POINTS = `SELECT point.id FROM measuring_points point JOIN positions place ON place.id = point.position_id
  WHERE place.assembly_id IN (SELECT value FROM json_each(@assemblies))`;

/** Rows of positions that were laid out in these assemblies. */
export const ofPositions = (within: Within, positionId: string): string =>
  within
    ? `AND ${positionId} IN (SELECT place.id FROM positions place
         WHERE place.assembly_id IN (SELECT value FROM json_each(@assemblies)))`
    : '';

/** Rows of the points that were laid out on these assemblies. */
export const ofPoints = (within: Within, pointId: string): string => (within ? `AND ${pointId} IN (${POINTS})` : '');

/** The strip-downs bound as `@visits`, with the later rows of their chains. */
export const ofVisits = (within: Within, visit: string): string =>
  within
    ? `AND ${visit}.id IN (WITH noted (id) AS MATERIALIZED (SELECT value FROM json_each(@visits))
    SELECT id FROM noted UNION ALL SELECT chained.id FROM noted CROSS JOIN strip_downs chained WHERE chained.chain_id = noted.id)`
    : '';
