import type { PointLife } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';
import { measuresOf } from './measuresOf.ts';
import { isMisread } from './misreadNames.ts';
import {
  type KnownKind,
  type PlannedAssembly,
  type PlannedMachine,
  type PlannedPoint,
  type PlannedPosition,
  type Planning,
  sameName,
} from './plan.ts';
import { machineOfRow } from './planMachines.ts';
import type { RowOf } from './readFolder.ts';
import { type Line, remarkAt } from './remark.ts';

/** The record's assemblies with their points. */
export function planKnownAssemblies({ known, plan }: Planning): void {
  const machines = new Map(plan.machines.map((machine) => [machine.id, machine]));
  const points = new Map<number, PlannedPoint[]>();
  for (const life of known.life.points) {
    const point: PlannedPoint = {
      id: life.pointId,
      name: life.point,
      measures: 'thickness', // of a point on record it is not asked
      stations: [],
      row: null,
      life: { ...life, sizes: [...life.sizes], renewals: [...life.renewals], shims: [...(life.shims ?? [])] },
    };
    const there = points.get(life.positionId);
    if (there) there.push(point);
    else points.set(life.positionId, [point]);
  }
  const sittings = Map.groupBy(known.sittings, ({ assemblyId }) => assemblyId);
  const positions = knownPositions(known, points);
  for (const { id, name } of known.assemblies) {
    const assembly: PlannedAssembly = {
      id,
      key: id,
      name,
      kind: null,
      sittings: (sittings.get(id) ?? []).map(({ machineId, fromOn }, index) => ({
        machineId,
        from: index === 0 ? null : fromOn,
        dialHours: null,
        toDialHours: null,
        machine: machines.get(machineId) ?? null,
        move: null,
        isNew: false,
      })),
      positions: positions.get(id) ?? [],
    };
    plan.assemblies.push(assembly);
    for (const { machine } of assembly.sittings) machine?.assemblies.add(assembly);
  }
}

/** The record's positions by assembly; one that went by itself stands in every assembly it was in. */
function knownPositions(
  { positions, homes }: Planning['known'],
  points: ReadonlyMap<number, PlannedPoint[]>,
): Map<number, PlannedPosition[]> {
  const moves = Map.groupBy(homes, ({ positionId }) => positionId);
  const inAssembly = new Map<number, PlannedPosition[]>();
  for (const { id, laidOutIn, name, item, safety } of positions) {
    const moved = moves.get(id)?.map(({ assemblyId, fromOn }) => ({ assembly: assemblyId, from: fromOn }));
    const stays = moved && [{ assembly: laidOutIn, from: null }, ...moved];
    const planned = { id, name, item, safety, points: points.get(id) ?? [], ...(stays && { stays }) };
    for (const assembly of new Set(stays ? stays.map((stay) => stay.assembly) : [laidOutIn])) {
      const there = assembly === null ? undefined : inAssembly.get(assembly);
      if (there) there.push(planned);
      else if (assembly !== null) inAssembly.set(assembly, [planned]);
    }
  }
  return inAssembly;
}

/** The assemblies, positions and points of points.csv. */
export function planPoints(planning: Planning, rows: readonly RowOf<'points.csv'>[]): void {
  const inFile = new Set<string>();
  const positionsOf = Map.groupBy(rows, ({ machine, assembly }) => `${machine}\n${assembly}`.toLowerCase());
  for (const row of rows) {
    const machine = machineOfRow(planning, row.line, 'machine', row.machine);
    if (!machine) continue;
    const name = [row.machine, row.assembly, row.position, row.point].join('\n').toLowerCase();
    if (inFile.has(name)) planning.faults.push(remarkAt(row.line, 'point', 'point-twice', 'each point once'));
    else {
      checkLimits(planning, row);
      planPoint(planning, machine, row, positionsOf.get(`${row.machine}\n${row.assembly}`.toLowerCase()) ?? []);
    }
    inFile.add(name);
  }
}

function planPoint(
  planning: Planning,
  machine: PlannedMachine,
  row: RowOf<'points.csv'>,
  laidOut: readonly RowOf<'points.csv'>[],
): void {
  const assembly = assemblyStartedOn(machine, row.assembly) ?? newAssembly(planning, machine, row.assembly, laidOut);
  const safety = row.safety === 'yes';
  const position = positionCalled(assembly, row.position) ?? newPosition(assembly, row.position, safety);
  const known = position.points.find(({ name }) => sameName(name, row.point));
  if (known) noteDifferences(planning, row, known.life);
  else position.points.push(newPoint(planning, assembly, position, row));
  if (safety && !position.safety) {
    // one point of a position that lifts or tows makes the position one
    if (position.id === null) position.safety = true;
    else planning.notes.push(remarkAt(row.line, 'safety', 'kept-as-in-record', 'no'));
  }
}

function assemblyStartedOn(machine: PlannedMachine, name: string): PlannedAssembly | undefined {
  const called = [...machine.assemblies].filter((one) => sameName(one.name, name));
  return (
    called.find((one) => one.sittings[0]?.machine === machine) ??
    called.find((one) => one.sittings.at(-1)?.machine === machine)
  );
}

/**
 * The kind an assembly of a file is of: the one of its name, else the one that has every position it was given, if there
 * is just one. The file names no kind; a "Pick-up hitch" with all the positions of one is drawn like one.
 */
function kindOf({ known }: Planning, name: string, laidOut: readonly RowOf<'points.csv'>[]): KnownKind | null {
  const called = known.kinds.find((kind) => sameName(kind.name, name));
  if (called) return called;
  const fitting = known.kinds.filter((kind) =>
    laidOut.every(({ position }) => kind.positions.some((its) => sameName(its.name, position))),
  );
  return fitting.length === 1 ? fitting[0]! : null;
}

function newAssembly(
  planning: Planning,
  machine: PlannedMachine,
  name: string,
  laidOut: readonly RowOf<'points.csv'>[],
): PlannedAssembly {
  const assembly: PlannedAssembly = {
    id: null,
    key: planning.nextKey(),
    name,
    kind: kindOf(planning, name, laidOut),
    sittings: [
      { machineId: machine.key, from: null, dialHours: null, toDialHours: null, machine, move: null, isNew: true },
    ],
    positions: [],
  };
  planning.plan.assemblies.push(assembly);
  machine.assemblies.add(assembly);
  return assembly;
}

/**
 * The position of that name in an assembly. Of two halves that changed places each has one: the one that was in it on the
 * day is meant, without a day the one laid out in it.
 */
export function positionCalled(
  assembly: PlannedAssembly,
  name: string,
  on: Day | null = null,
): PlannedPosition | undefined {
  const called = assembly.positions.filter((position) => sameName(position.name, name));
  const wasIn = ({ stays }: PlannedPosition) =>
    !stays || stays.findLast(({ from }) => from === null || (on !== null && from <= on))?.assembly === assembly.key;
  return called.find(wasIn) ?? (on === null ? called[0] : undefined);
}

/** A position gets the ring number it has in its kind, else the next one free. */
export function newPosition(assembly: PlannedAssembly, name: string, safety: boolean): PlannedPosition {
  const ofKind = assembly.kind?.positions.find((position) => sameName(position.name, name))?.item;
  const taken = new Set([...itemsOf(assembly.kind), ...assembly.positions.map(({ item }) => item)]);
  let free = 1;
  while (taken.has(free)) free++;
  const position: PlannedPosition = { id: null, name, item: ofKind ?? free, safety, points: [] };
  assembly.positions.push(position);
  return position;
}

const itemsOf = (kind: KnownKind | null): number[] => kind?.positions.map(({ item }) => item) ?? [];

function newPoint(
  planning: Planning,
  assembly: PlannedAssembly,
  position: PlannedPosition,
  row: RowOf<'points.csv'>,
): PlannedPoint {
  const ofKind = assembly.kind?.positions
    .find(({ name }) => sameName(name, position.name))
    ?.points.find(({ name }) => sameName(name, row.point));
  planClassNamed(planning, row.part_class);
  return {
    id: null,
    name: row.point,
    measures: ofKind?.measures ?? measuresOf(row.wears, row.point, row.part_class),
    stations: [...(ofKind?.stations ?? [])],
    row,
    life: {
      pointId: planning.nextKey(),
      partClass: row.part_class,
      wears: row.wears,
      safety: position.safety,
      gaugeErrorMm: row.gauge_error_mm,
      fittedMachineHours: row.fitted_machine_hours,
      limits: [
        {
          from: null,
          newSizeMm: row.new_size_mm,
          newSizeTolMm: row.new_size_tol_mm,
          renewAtMm: row.renew_at_mm,
          rejectAtMm: row.reject_at_mm,
          source: row.limit_source,
        },
      ],
      sizes: [],
      renewals: [],
      shims: [],
      sittings: assembly.sittings,
    },
  };
}

function planClassNamed({ plan }: Planning, name: string): void {
  if (!plan.classes.some((one) => sameName(one.name, name))) plan.classes.push({ name, row: null });
}

/** A limit lies on the worn side of the new size, and reject-at not before renew-at. */
function checkLimits({ faults }: Planning, row: RowOf<'points.csv'>): void {
  const worn = (from: number, to: number) => (row.wears === 'down' ? to < from : to > from);
  const side = row.wears === 'down' ? 'below' : 'above';
  const before = faults.length;
  for (const column of ['renew_at_mm', 'reject_at_mm'] as const) {
    const limitMm = row[column];
    if (limitMm !== null && !worn(row.new_size_mm, limitMm)) {
      const expected = `${side} the new size ${row.new_size_mm} mm, as the point wears ${row.wears}`;
      faults.push(remarkAt(row.line, column, 'limit-better-than-new', expected));
    }
  }
  const { renew_at_mm: renewAtMm, reject_at_mm: rejectAtMm } = row;
  if (faults.length === before && renewAtMm !== null && rejectAtMm !== null && worn(rejectAtMm, renewAtMm)) {
    const expected = `not before renew-at ${renewAtMm} mm`;
    faults.push(remarkAt(row.line, 'reject_at_mm', 'reject-before-renew', expected));
  }
}

function noteDifferences({ notes }: Planning, row: RowOf<'points.csv'>, life: PointLife): void {
  const now = life.limits.at(-1);
  const onRecord: Record<string, [unknown, unknown]> = {
    part_class: [row.part_class.toLowerCase(), life.partClass.toLowerCase()],
    wears: [row.wears, life.wears],
    new_size_mm: [row.new_size_mm, now?.newSizeMm],
    new_size_tol_mm: [row.new_size_tol_mm, now?.newSizeTolMm],
    renew_at_mm: [row.renew_at_mm, now?.renewAtMm],
    reject_at_mm: [row.reject_at_mm, now?.rejectAtMm],
    gauge_error_mm: [row.gauge_error_mm, life.gaugeErrorMm],
    fitted_machine_hours: [row.fitted_machine_hours, life.fittedMachineHours],
  };
  for (const [column, [inFile, there]] of Object.entries(onRecord)) {
    if (inFile !== there) notes.push(remarkAt(row.line, column, 'kept-as-in-record', String(there ?? 'nothing')));
  }
}

/**
 * The assembly a row means: the one of that name that sits on the machine on that day, else the one that started there.
 * A move is made from where the assembly sat before its day.
 *
 * @returns null, with a fault, when there is none (with its own, when its row was misread)
 */
export function assemblyOfRow(
  planning: Planning,
  line: Line,
  machine: PlannedMachine,
  name: string,
  on: Day,
  isMove = false,
): PlannedAssembly | null {
  const called = [...machine.assemblies].filter((assembly) => sameName(assembly.name, name));
  const before = isMove ? called.filter((assembly) => sittingBefore(assembly, on)?.machine === machine) : [];
  const sitting = called.filter((assembly) => sittingOn(assembly, on)?.machine === machine);
  const started = called.filter((assembly) => assembly.sittings[0]?.machine === machine);
  const found = [before, sitting, started].find((some) => some.length > 0) ?? [];
  const [assembly] = found;
  if (assembly && found.length === 1) {
    if (started.some((other) => other !== assembly)) {
      const expected = 'the one that sits on the machine that day is taken; another of that name started there';
      planning.notes.push(remarkAt(line, 'assembly', 'two-of-that-name', expected));
    }
    return assembly;
  }
  if (!assembly && isMisread(planning.misread, machine.name, name)) return null;
  const expected = assembly ? 'a name only one assembly of the machine has' : 'an assembly of points.csv';
  planning.faults.push(remarkAt(line, 'assembly', assembly ? 'assembly-unclear' : 'unknown-assembly', expected));
  return null;
}

export const sittingOn = (assembly: PlannedAssembly, on: Day) =>
  assembly.sittings.findLast(({ from }) => from === null || from <= on);

const sittingBefore = (assembly: PlannedAssembly, on: Day) =>
  assembly.sittings.findLast(({ from }) => from === null || from < on);
