import type { Plan, PlannedAssembly, PlannedMachine, PlannedPoint, PlannedVisit } from '../../exchange/plan.ts';
import type { Line } from '../../exchange/remark.ts';
import { assertInvariant } from '../../outcome.ts';
import { insertAssembly, insertPosition, insertSitting } from '../../record/assemblyStore.ts';
import { addKnowledge, ensureClass } from '../../record/classStore.ts';
import { insertCustomer } from '../../record/customerStore.ts';
import { insertDialReading } from '../../record/dialStore.ts';
import { insertClosing, insertFinding } from '../../record/findingStore.ts';
import { insertMachine, insertOwnership } from '../../record/machineStore.ts';
import { insertMeter } from '../../record/meterStore.ts';
import { insertLimits, insertPoint } from '../../record/pointStore.ts';
import type { WritableRecord } from '../../record/recordFile.ts';
import { insertRemark } from '../../record/remarkStore.ts';
import { insertRenewal, insertShim } from '../../record/renewalStore.ts';
import { insertSize } from '../../record/sizeStore.ts';
import { insertStripDown } from '../../record/stripDownStore.ts';
import { insertWorkShare } from '../../record/workShareStore.ts';
import type { Day } from '../../units/day.ts';

/** Who entered rows that came out of a file. */
const BROUGHT_IN_BY = 'brought in';

export type Brought = {
  customers: number;
  machines: number;
  dialReadings: number;
  points: number;
  sizes: number;
  renewals: number;
  moves: number;
  findings: number;
  classes: number;
};

type Writing = {
  w: WritableRecord;
  entryId: number;
  brought: Brought;
  machineIds: Map<PlannedMachine, number>;
  pointIds: Map<PlannedPoint, number>;
  /** of every dial row in the plan, by the id it has there */
  dialIds: Map<number, number>;
  classIds: Map<string, number>;
  told: () => void;
};

/**
 * Writes a plan without faults into the record; part of one entry, so that all of it is there or none.
 * @param told before each meter reading, size and renewal; what it throws leaves the record as it was
 * @returns what was brought; `anything` also counts what only closes a finding on record
 */
export function writePlan(
  w: WritableRecord,
  entryId: number,
  plan: Plan,
  told: () => void = () => {},
): { brought: Brought; anything: boolean } {
  const brought: Brought = {
    customers: 0,
    machines: 0,
    dialReadings: 0,
    points: 0,
    sizes: 0,
    renewals: 0,
    moves: 0,
    findings: 0,
    classes: 0,
  };
  const writing: Writing = {
    w,
    entryId,
    brought,
    machineIds: new Map(),
    pointIds: new Map(),
    dialIds: new Map(),
    classIds: new Map(),
    told,
  };
  writeMachines(writing, plan);
  for (const machine of plan.machines) writeDials(writing, machine);
  for (const { name, row } of plan.classes) writeClass(writing, name, row);
  const assemblyIds = new Map(plan.assemblies.map((assembly) => [assembly, writeAssembly(writing, assembly)]));
  for (const visit of plan.visits) writeVisit(writing, visit);
  writeFindings(writing, plan, assemblyIds);
  const anything = plan.findings.length > 0 || Object.values(brought).some((count) => count > 0);
  return { brought, anything };
}

function writeMachines({ w, entryId, brought, machineIds }: Writing, plan: Plan): void {
  for (const customer of plan.customers) {
    if (customer.id !== null) continue;
    customer.id = insertCustomer(w, { name: customer.name, place: '', address: '', phone: '', email: '' });
    brought.customers++;
  }
  for (const machine of plan.machines) {
    if (machine.id !== null || !machine.row) {
      machineIds.set(machine, machine.key);
      continue;
    }
    const { make, model, serial, built_year: builtYear, meter_digits: digits } = machine.row;
    const { hoursBefore } = machine.life;
    const machineId = insertMachine(w, entryId, { name: machine.name, make, model, serial, builtYear, note: '' });
    if (machine.customer?.id) insertOwnership(w, entryId, { machineId, customerId: machine.customer.id, fromOn: null });
    insertMeter(w, entryId, { machineId, digits, hoursBefore });
    const { work_share: share } = machine.row;
    if (share !== 1) insertWorkShare(w, entryId, { machineId, fromOn: null, share, workType: null });
    machineIds.set(machine, machineId);
    brought.machines++;
  }
}

/** In the order they go in, so that rows of one day keep it. */
function writeDials({ w, entryId, brought, machineIds, dialIds, told }: Writing, machine: PlannedMachine): void {
  const machineId = idOf(machineIds, machine);
  for (const { id: key } of machine.life.dialEvents) {
    const dial = machine.newDials.get(key);
    if (!dial) continue;
    told();
    const { takenOn, kind, dialHours, newDialHours, errorHours, parked } = dial.event;
    const id = insertDialReading(w, entryId, {
      machineId,
      takenOn,
      kind,
      dialHours,
      newDialHours,
      errorHours,
      saidBy: '',
      parked,
      question: dial.question,
      inDay: dial.inDay,
    });
    dialIds.set(key, id);
    if (dial.question !== null)
      remark(w, entryId, dial.line, dial.column, dial.question, { sizeId: null, dialReadingId: id });
    brought.dialReadings++;
  }
}

/** A hundred thousand points name the same few classes. */
function classIdOf({ w, entryId, classIds }: Writing, name: string): number {
  const known = classIds.get(name.toLowerCase());
  if (known !== undefined) return known;
  const id = ensureClass(w, entryId, name);
  classIds.set(name.toLowerCase(), id);
  return id;
}

function writeClass(writing: Writing, name: string, row: Plan['classes'][number]['row']): void {
  const { w, entryId, brought } = writing;
  const classId = classIdOf(writing, name);
  if (!row) return;
  addKnowledge(w, entryId, classId, {
    tradeWear: {
      wearFromMm: row.wear_from_mm,
      wearToMm: row.wear_to_mm,
      hoursFrom: row.hours_from,
      hoursTo: row.hours_to,
      source: row.line.file,
    },
    newSizeTolMm: null,
  });
  brought.classes++;
}

function writeAssembly(writing: Writing, assembly: PlannedAssembly): number {
  const { w, entryId, brought, machineIds, dialIds } = writing;
  const { name, kind } = assembly;
  const assemblyId = assembly.id ?? insertAssembly(w, entryId, { kindId: kind?.id ?? null, name, serial: '' });
  for (const [place, sitting] of assembly.sittings.entries()) {
    if (!sitting.isNew) continue;
    const left = assembly.sittings[place - 1]?.machine ?? null;
    const readingOf = (machine: PlannedMachine | null, dialHours: number | null) =>
      machine && sitting.from !== null ? dialIdOf(dialIds, machine, sitting.from, dialHours) : null;
    insertSitting(w, entryId, {
      assemblyId,
      machineId: sitting.machine && idOf(machineIds, sitting.machine),
      fromOn: sitting.from,
      offDialReadingId: readingOf(left, sitting.dialHours),
      onDialReadingId: readingOf(sitting.machine, sitting.toDialHours),
    });
    if (sitting.move) brought.moves++;
  }
  for (const position of assembly.positions) {
    const { item, name: called, safety } = position;
    position.id ??= insertPosition(w, entryId, { assemblyId, item, name: called, safety });
    for (const point of position.points) writePoint(writing, point, position.id);
  }
  return assemblyId;
}

/** The reading a dial beside a size or a move became, or the one that gave the same figure already. */
function dialIdOf(
  dialIds: Map<number, number>,
  machine: PlannedMachine,
  takenOn: Day,
  dialHours: number | null,
): number | null {
  if (dialHours === null) return null;
  const event = machine.life.dialEvents.find((one) => one.takenOn === takenOn && one.dialHours === dialHours);
  return event ? (dialIds.get(event.id) ?? event.id) : null;
}

function writePoint(writing: Writing, point: PlannedPoint, positionId: number): void {
  const { w, entryId, brought, pointIds } = writing;
  if (pointIds.has(point)) return; // its position was in another assembly as well
  if (point.id !== null || !point.row) {
    pointIds.set(point, point.life.pointId);
    return;
  }
  const { name, measures, stations, life, row } = point;
  const pointId = insertPoint(w, entryId, {
    positionId,
    name,
    measures,
    wears: life.wears,
    partClassId: classIdOf(writing, life.partClass),
    gaugeErrorMm: life.gaugeErrorMm,
    fittedMachineHours: life.fittedMachineHours,
    stations,
  });
  insertLimits(w, entryId, {
    pointId,
    fromOn: null,
    newSizeMm: row.new_size_mm,
    newSizeTolMm: row.new_size_tol_mm,
    renewAtMm: row.renew_at_mm,
    rejectAtMm: row.reject_at_mm,
    source: row.limit_source,
    enteredBy: BROUGHT_IN_BY,
  });
  pointIds.set(point, pointId);
  brought.points++;
}

function writeVisit(writing: Writing, visit: PlannedVisit): void {
  const { w, entryId, brought, machineIds, pointIds, dialIds, told } = writing;
  const { machine, takenOn, dialHours } = visit;
  const stripDownId = insertStripDown(w, entryId, {
    machineId: machine && idOf(machineIds, machine),
    takenOn,
    dialHours,
    dialReadingId: machine && dialIdOf(dialIds, machine, takenOn, dialHours),
    fitter: '',
    note: '',
  });
  for (const { point, row, event, parked, question } of visit.sizes) {
    told();
    const sizeId = insertSize(w, entryId, {
      stripDownId,
      pointId: idOf(pointIds, point),
      station: row.station,
      event,
      sizeMm: row.size_mm,
      gaugeId: null,
      gaugeErrorMm: row.gauge_error_mm,
      gaugeStepMm: 0,
      parked,
      question,
    });
    if (question !== null) remark(w, entryId, row.line, 'size_mm', question, { sizeId, dialReadingId: null });
    brought.sizes++;
  }
  for (const { point, row, hoursKnown } of visit.renewals) {
    told();
    const { size_mm: sizeMm, renewal: kind, station } = row;
    insertRenewal(w, entryId, { stripDownId, pointId: idOf(pointIds, point), hoursKnown, sizeMm, kind, station });
    brought.renewals++;
  }
  for (const { point, shimMm } of visit.shims) {
    told();
    insertShim(w, entryId, { stripDownId, pointId: idOf(pointIds, point), shimMm });
    brought.renewals++;
  }
}

function writeFindings(
  { w, entryId, brought }: Writing,
  plan: Plan,
  assemblyIds: ReadonlyMap<PlannedAssembly, number>,
): void {
  for (const { id, assembly, position, row, closes } of plan.findings) {
    const assemblyId = assemblyIds.get(assembly);
    assertInvariant(assemblyId !== undefined, 'an assembly is written before its findings');
    const findingId =
      id ??
      insertFinding(w, entryId, {
        assemblyId,
        positionId: position?.id ?? null,
        stripDownId: null,
        takenOn: row.date,
        kind: row.finding,
        severity: row.severity,
        note: row.note,
        foundBy: '',
      });
    if (id === null) brought.findings++;
    if (closes && row.closed_date !== null)
      insertClosing(w, entryId, { findingId, closedOn: row.closed_date, outcome: row.outcome ?? '', closedBy: '' });
  }
}

function remark(
  w: WritableRecord,
  entryId: number,
  line: Line,
  column: string,
  code: string,
  about: { sizeId: number | null; dialReadingId: number | null },
): void {
  const value = line.cells[line.columns.get(column) ?? -1] ?? '';
  insertRemark(w, entryId, { file: line.file, row: line.row, column, value, code, facts: {}, ...about });
}

function idOf<T>(ids: ReadonlyMap<T, number>, of: T): number {
  const id = ids.get(of);
  assertInvariant(id !== undefined, 'what is referred to is written first');
  return id;
}
