import { limitsOn } from '../shop/limitsOn.ts';
import { mayBePutIn } from '../shop/mayBePutIn.ts';
import type { PointLife } from '../shop/measuringPoint.ts';
import { rowKey, takeKnown } from './knownRows.ts';
import { isMisread } from './misreadNames.ts';
import {
  type PlannedAssembly,
  type PlannedMachine,
  type PlannedPoint,
  type PlannedVisit,
  type Planning,
  sameName,
} from './plan.ts';
import { assemblyOfRow, positionCalled, sittingOn } from './planAssemblies.ts';
import type { NotedDial } from './planHours.ts';
import { machineOfRow } from './planMachines.ts';
import type { RowOf } from './readFolder.ts';
import { remarkAt } from './remark.ts';
import { sizeExpected } from './sizeExpected.ts';

type SizeRow = RowOf<'sizes.csv'>;

/** The rows of sizes.csv, each at its point and in its visit. @returns dial figures that stand beside them */
export function planSizes(planning: Planning, rows: readonly SizeRow[]): NotedDial[] {
  const placeRow = placing(planning);
  const placed = rows.flatMap((row) => placeRow(row) ?? []);
  const measured = new Set(placed.filter(({ row }) => isMeasured(row)).map(dayOfPoint));
  const visits = new Map<string, PlannedVisit>();
  const noted: NotedDial[] = [];
  for (const one of placed) {
    const { row, point, machine, onMoveDay } = one;
    if (isKnown(planning, point, row)) continue;
    const visit = visitOf(visits, machine, row);
    if (row.event === 'renewed')
      addRenewal(planning, visit, one, measured.has(dayOfPoint(one)) || measuredBefore(point, row));
    else if (row.event === 'shimmed') addShim(planning, visit, point, row);
    else addSize(planning, visit, point, row, row.event);
    // on the day of a move the dial may be either machine's: the move's own figures tell
    if (machine && row.dial_hours !== null && !onMoveDay)
      noted.push({ machine, takenOn: row.date, dialHours: row.dial_hours, line: row.line, column: 'dial_hours' });
  }
  for (const visit of visits.values()) planning.plan.visits.push(visit);
  return noted;
}

type Placed = { row: SizeRow; point: PlannedPoint; machine: PlannedMachine | null; onMoveDay: boolean };

const isMeasured = ({ event }: SizeRow): boolean => event === 'as-found' || event === 'as-left';

const dayOfPoint = ({ row, point }: Placed): string => `${point.life.pointId} ${row.date}`;

const measuredBefore = (point: PlannedPoint, row: SizeRow): boolean =>
  point.life.sizes.some(({ takenOn }) => takenOn === row.date);

/** Rows of one visit stand together and mean the same assembly: it is looked up once, and told of once. */
function placing(planning: Planning): (row: SizeRow) => Placed | null {
  const found = new Map<string, PlannedAssembly | null>();
  return (row) => {
    const key = rowKey(row.machine, row.assembly, row.date);
    let assembly = found.get(key);
    if (assembly === undefined) {
      const named = machineOfRow(planning, row.line, 'machine', row.machine);
      assembly = named && assemblyOfRow(planning, row.line, named, row.assembly, row.date);
      if (assembly) found.set(key, assembly);
      if (named && assembly) tellWhereItSat(planning, row, assembly, named);
    }
    return place(planning, row, assembly);
  };
}

/** Rows may go by the machine the assembly started on, also once it has left; whose dial they then give is told. */
function tellWhereItSat({ notes }: Planning, row: SizeRow, assembly: PlannedAssembly, named: PlannedMachine): void {
  const sitting = sittingOn(assembly, row.date);
  if (!sitting?.machine || sitting.machine === named || sitting.from === row.date) return;
  const expected = `${sitting.machine.name}, where it sat that day; sizes and dials are taken for those of that machine`;
  notes.push(remarkAt(row.line, 'machine', 'had-left-machine', expected));
}

function place(planning: Planning, row: SizeRow, assembly: PlannedAssembly | null): Placed | null {
  const { faults, notes, misread } = planning;
  if (!assembly || isMisread(misread, row.machine, row.assembly, row.position, row.point)) return null;
  const position = positionCalled(assembly, row.position, row.date);
  if (!position) {
    if (isMisread(misread, row.machine, row.assembly, row.position)) return null;
    faults.push(remarkAt(row.line, 'position', 'unknown-position', `a position of ${assembly.name} in points.csv`));
    return null;
  }
  const point = position.points.find(({ name }) => sameName(name, row.point));
  if (!point) {
    faults.push(remarkAt(row.line, 'point', 'unknown-point', `a point of ${position.name} in points.csv`));
    return null;
  }
  if (isMeasured(row) && row.size_mm === null) {
    faults.push(remarkAt(row.line, 'size_mm', 'cell-empty', 'a size in mm, unless the event is renewed or shimmed'));
    return null;
  }
  if (row.event === 'shimmed' && !row.shim_mm) {
    faults.push(
      remarkAt(row.line, 'shim_mm', 'cell-empty', 'how thick the packing is, in mm; below 0 where it was taken out'),
    );
    return null;
  }
  const sitting = sittingOn(assembly, row.date);
  const machine = sitting?.machine ?? null;
  if (!machine && row.dial_hours !== null) {
    notes.push(remarkAt(row.line, 'dial_hours', 'dial-on-shelf', 'nothing: the assembly lay on the shelf that day'));
  }
  return { row, point, machine, onMoveDay: sitting?.from === row.date };
}

function isKnown({ known }: Planning, point: PlannedPoint, row: SizeRow): boolean {
  if (point.id === null) return false;
  if (row.event === 'shimmed')
    return takeKnown(known.rows.shims, rowKey(point.id, row.date, row.dial_hours, row.shim_mm)) !== undefined;
  return row.event === 'renewed'
    ? takeKnown(known.rows.renewals, rowKey(point.id, row.date, row.dial_hours, row.size_mm)) !== undefined
    : takeKnown(
        known.rows.sizes,
        rowKey(point.id, row.date, row.dial_hours, row.station, row.event, row.size_mm, row.gauge_error_mm),
      ) !== undefined;
}

function visitOf(visits: Map<string, PlannedVisit>, machine: PlannedMachine | null, row: SizeRow): PlannedVisit {
  const key = rowKey(machine?.key ?? null, row.date, row.dial_hours);
  const known = visits.get(key);
  if (known) return known;
  const visit: PlannedVisit = {
    machine,
    takenOn: row.date,
    dialHours: row.dial_hours,
    sizes: [],
    renewals: [],
    shims: [],
  };
  visits.set(key, visit);
  return visit;
}

/** Without a dial, and with nothing measured that day, a renewal is some time since the previous size. */
function addRenewal(planning: Planning, visit: PlannedVisit, { row, point }: Placed, measuredThatDay: boolean): void {
  const hoursKnown = row.dial_hours !== null || measuredThatDay;
  visit.renewals.push({ point, row, hoursKnown });
  const { date: takenOn, dial_hours: dialHours, size_mm: sizeMm, renewal: kind, station } = row;
  point.life.renewals.push({ id: planning.nextKey(), takenOn, dialHours, hoursKnown, sizeMm, kind, station });
}

function addShim(planning: Planning, visit: PlannedVisit, point: PlannedPoint, row: SizeRow): void {
  const { date: takenOn, dial_hours: dialHours, shim_mm: shimMm } = row;
  if (shimMm === null) return;
  visit.shims.push({ point, shimMm });
  point.life.shims.push({ id: planning.nextKey(), takenOn, dialHours, shimMm });
}

function addSize(
  planning: Planning,
  visit: PlannedVisit,
  point: PlannedPoint,
  row: SizeRow,
  event: 'as-found' | 'as-left',
): void {
  const { size_mm: sizeMm } = row;
  if (sizeMm === null) return;
  const key = planning.nextKey();
  visit.sizes.push({ key, point, row: { ...row, size_mm: sizeMm }, event, parked: false, question: null });
  if (row.station !== '' && !point.stations.includes(row.station)) point.stations.push(row.station);
  point.life.sizes.push({
    id: key,
    takenOn: row.date,
    dialHours: row.dial_hours,
    station: row.station,
    sizeMm,
    event,
    gaugeErrorMm: row.gauge_error_mm,
    gaugeStepMm: 0,
    parked: false,
  });
}

export type JudgePoint = (
  point: PointLife,
  partClass: string,
) => ReadonlyMap<
  number,
  { cautions: { code: string; facts?: Record<string, string | number | boolean | null> }[]; parked: boolean }
>;

/** Judges the sizes of every point that got new ones: what is questioned is a caution and parked, what is only told a note. */
export function judgeSizes(planning: Planning, judgePoint: JudgePoint): void {
  const { plan, cautions, notes } = planning;
  judgePutIn(planning);
  const byPoint = new Map<PlannedPoint, PlannedVisit['sizes']>();
  for (const size of plan.visits.flatMap(({ sizes }) => sizes)) {
    byPoint.set(size.point, [...(byPoint.get(size.point) ?? []), size]);
  }
  for (const [{ life }, sizes] of byPoint) {
    const byDay = <T extends { takenOn: string }>(rows: readonly T[]) =>
      [...rows].sort((a, b) => (a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0));
    const judged = judgePoint({ ...life, sizes: byDay(life.sizes), renewals: byDay(life.renewals) }, life.partClass);
    for (const size of sizes) {
      const judgement = judged.get(size.key);
      if (!judgement) continue;
      for (const { code, facts = {} } of judgement.cautions) {
        const list = judgement.parked ? cautions : notes;
        list.push(remarkAt(size.row.line, 'size_mm', code, sizeExpected(code, facts), facts));
      }
      size.parked = judgement.parked;
      size.question = judgement.parked ? (judgement.cautions[0]?.code ?? null) : null;
    }
  }
}

/** A size put in that no part has is left out of the forecast (shop/mayBePutIn.ts). */
function judgePutIn({ plan, cautions }: Planning): void {
  for (const { point, row } of plan.visits.flatMap(({ renewals }) => renewals)) {
    const { newSizeMm } = limitsOn(point.life, row.date);
    if (row.size_mm === null || mayBePutIn(newSizeMm, row.size_mm)) continue;
    const facts = { sizeMm: row.size_mm, newSizeMm };
    cautions.push(remarkAt(row.line, 'size_mm', 'odd-new-size', sizeExpected('odd-new-size', facts), facts));
  }
}
