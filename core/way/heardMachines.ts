import type { DrawnMachine } from '../shop/drawnMachine.ts';
import type { PointOnRecord, ShopLife } from '../shop/shopLife.ts';
import { fingerprint } from './fingerprint.ts';
import { pointsOfShop } from './pointsOfShop.ts';

/**
 * The machines a class is learned from: all that have a measured part of it, or a fixed draw of so many. With more
 * machines than that a class's figures are as sharp as they are wanted: its mean rate is known to the machines' scatter
 * divided by the root of their number: 2 % at 200 machines that scatter by 0.3, less where other classes tell of them. What is not heard is said so by a
 * posterior that much wider.
 *
 * Machines are taken in the order of a hash of their names, so that a new one moves at most one other out.
 * @returns machine ids, in the order drawn; a machine drawn for one class is heard in all
 * @source bottom-k draw: E. Cohen and H. Kaplan, "Summarizing data using bottom-k sketches", PODC 2007
 */
export function drawMachines(machines: readonly DrawnMachine[], most: number): number[] {
  const drawn = machines
    .map(({ machineId, name, serial, measuredClasses }) => ({
      machineId,
      measuredClasses,
      text: `${name}\n${serial}`,
      place: fingerprint(`${name}\n${serial}`),
    }))
    .sort((a, b) => order(a.place, b.place) || order(a.text, b.text) || a.machineId - b.machineId);
  const heard = new Map<string, number>();
  return drawn.flatMap(({ machineId, measuredClasses }) => {
    const wanted = [...measuredClasses].filter((name) => (heard.get(name) ?? 0) < most);
    for (const name of wanted) heard.set(name, (heard.get(name) ?? 0) + 1);
    return wanted.length > 0 ? [machineId] : [];
  });
}

const order = (a: string, b: string): number => (a < b ? -1 : a > b ? 1 : 0);

/** The machines of a shop's life, as they are drawn. */
export function drawnFrom({ machines, points }: Pick<ShopLife, 'machines' | 'points'>): DrawnMachine[] {
  const measured = Map.groupBy(
    points.filter((point) => point.sizes.some(({ parked }) => !parked)),
    (point) => point.machineId,
  );
  return machines.map(({ machineId, name, serial }) => ({
    machineId,
    name,
    serial,
    measuredClasses: new Set((measured.get(machineId) ?? []).map((point) => point.partClass)),
  }));
}

/**
 * The part of a shop's life that some machines rest on: with all they are bound to by assemblies that moved and by what
 * pulls what. As record/boundMachines.ts.
 */
export function lifeOfMachines(life: ShopLife, machineIds: readonly number[]): ShopLife {
  const index = pointsOfShop(life.points);
  const pulls = pullsOf(life);
  const bound = new Set<number>();
  const points = new Set<PointOnRecord>();
  const toLook = [...machineIds];
  for (let machineId = toLook.pop(); machineId !== undefined; machineId = toLook.pop()) {
    if (bound.has(machineId)) continue;
    bound.add(machineId);
    toLook.push(...(pulls.get(machineId) ?? []));
    for (const point of index.everOn(machineId)) {
      if (points.has(point)) continue;
      for (const one of index.ofAssembly(point.assemblyId)) {
        points.add(one);
        toLook.push(...one.sittings.flatMap((sitting) => sitting.machineId ?? []));
      }
    }
  }
  return {
    ...life,
    machines: life.machines.filter((machine) => bound.has(machine.machineId)),
    points: life.points.filter((point) => points.has(point)),
    findings: life.findings.filter((finding) => bound.has(finding.machineId)),
  };
}

/** Who pulls and who is pulled, either way. */
function pullsOf(life: ShopLife): Map<number, number[]> {
  const pulls = new Map<number, number[]>();
  const note = (one: number, other: number) => pulls.set(one, [...(pulls.get(one) ?? []), other]);
  for (const { machineId, hoursSources = [] } of life.machines)
    for (const source of hoursSources) {
      if (source.kind !== 'pulled') continue;
      note(machineId, source.pullerId);
      note(source.pullerId, machineId);
    }
  return pulls;
}
