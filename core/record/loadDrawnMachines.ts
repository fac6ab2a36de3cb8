import type { DrawnMachine } from '../shop/drawnMachine.ts';
import { bound, bulk, type Horizon } from './bulk.ts';
import { chainOf, counting, standing } from './counting.ts';
import { loadSittings, machineOf } from './loadPoints.ts';
import type { ReadableRecord } from './recordFile.ts';

/** How many machines are on record. */
export const countMachines = (db: ReadableRecord): number =>
  bulk<[number]>(db, 'SELECT count(*) FROM machines', {})[0]![0];

/** Every machine with the classes of its measured points: what those a shop is learned from are drawn by. No size is read. */
export function loadDrawnMachines(db: ReadableRecord, asked: Pick<Horizon, 'asOf' | 'knownAt'>): DrawnMachine[] {
  const horizon: Horizon = { ...asked, within: null };
  const sittings = loadSittings(db, horizon, new Map());
  const measured = bulk<[assemblyId: number, positionId: number, partClass: string]>(
    db,
    `SELECT DISTINCT o.assembly_id, o.id, c.name FROM measuring_points p
     JOIN positions o ON o.id = p.position_id JOIN part_classes c ON c.id = p.part_class_id
     WHERE ${standing('p')} AND EXISTS (SELECT 1 FROM sizes s WHERE s.point_id = p.id AND s.parked = 0
       AND ${counting('sizes', 's')} AND EXISTS (SELECT 1 FROM strip_downs v WHERE (v.id = s.strip_down_id OR v.chain_id = s.strip_down_id)
         AND v.taken_on <= @asOf AND ${chainOf('v')} = s.strip_down_id AND ${counting('strip_downs', 'v')}))`,
    bound(horizon),
  );
  const classes = new Map<number, Set<string>>();
  for (const [laidOutIn, positionId, partClass] of measured) {
    const own = sittings.ofPosition.get(positionId)?.sittings ?? sittings.ofAssembly.get(laidOutIn) ?? [];
    const machineId = machineOf(own);
    if (machineId === null) continue;
    const known = classes.get(machineId) ?? new Set<string>();
    classes.set(machineId, known.add(partClass));
  }
  const machines = bulk<[machineId: number, name: string, serial: string]>(
    db,
    `SELECT m.id, m.name, m.serial FROM machines m WHERE ${standing('m')} ORDER BY m.id`,
    bound(horizon),
  );
  return machines.map(([machineId, name, serial]) => ({
    ...{ machineId, name, serial },
    measuredClasses: classes.get(machineId) ?? new Set<string>(),
  }));
}
