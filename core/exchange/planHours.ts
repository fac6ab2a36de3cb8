import { judgeLife } from '../reading/judgeDial.ts';
import { SEEN_DIAL_ID, withSeenDials } from '../reading/seenDials.ts';
import type { DialEvent } from '../shop/machineLife.ts';
import type { Day } from '../units/day.ts';
import { dialExpected } from './dialExpected.ts';
import { hoursBeforeOfFile } from './hoursBefore.ts';
import { rowKey, takeKnown } from './knownRows.ts';
import type { PlannedDial, PlannedMachine, Planning } from './plan.ts';
import { machineOfRow } from './planMachines.ts';
import type { RowOf } from './readFolder.ts';
import { type Line, remarkAt } from './remark.ts';

/** The rows of hours.csv, put among those on record. */
export function planHours(planning: Planning, rows: readonly RowOf<'hours.csv'>[]): void {
  for (const row of rows) {
    const machine = machineOfRow(planning, row.line, 'machine', row.machine);
    if (!machine || !isWhole(planning, row)) continue;
    const key = rowKey(machine.key, row.date, row.event, row.dial_hours, row.new_dial_hours, row.hours_error);
    if (takeKnown(planning.known.rows.dials, key) !== undefined) continue;
    addDial(planning, machine, row.line, 'dial_hours', {
      takenOn: row.date,
      kind: row.event,
      dialHours: row.dial_hours,
      newDialHours: row.new_dial_hours,
      errorHours: row.hours_error,
    });
  }
  for (const machine of planning.plan.machines) sortDials(machine);
}

function isWhole({ faults }: Planning, row: RowOf<'hours.csv'>): boolean {
  const before = faults.length;
  const newMeter = row.event === 'new-meter';
  if (!newMeter && row.dial_hours === null)
    faults.push(remarkAt(row.line, 'dial_hours', 'cell-empty', 'what the dial shows, in hours'));
  if (newMeter && row.new_dial_hours === null)
    faults.push(remarkAt(row.line, 'new_dial_hours', 'cell-empty', 'what the new meter shows, in hours'));
  if (!newMeter && row.new_dial_hours !== null)
    faults.push(remarkAt(row.line, 'new_dial_hours', 'not-here', 'nothing, unless the event is new-meter'));
  return faults.length === before;
}

type Dial = Omit<DialEvent, 'id' | 'parked'>;

function addDial(planning: Planning, machine: PlannedMachine, line: Line, column: string, dial: Dial): void {
  const event: DialEvent = { ...dial, id: planning.nextKey(), parked: false };
  machine.newDials.set(event.id, { event, line, column, inDay: 0, question: null });
}

/** By day; within a day the record's rows first, then the file's in its own order. */
function sortDials(machine: PlannedMachine): void {
  if (machine.newDials.size === 0) return;
  const added = [...machine.newDials.values()].map(({ event }) => event);
  const dialEvents = [...machine.life.dialEvents, ...added].sort(byDay);
  machine.life = { ...machine.life, dialEvents };
}

const byDay = (a: DialEvent, b: DialEvent): number => (a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0);

/** Once the dial rows stand in order: what a new machine's first one does not show. */
export function planHoursBefore({ plan }: Planning): void {
  for (const machine of plan.machines) {
    if (machine.id !== null || !machine.row) continue;
    const first = machine.life.dialEvents[0] ?? null;
    const hoursBefore = hoursBeforeOfFile(machine.row.hours_before, first, machine.life.meterDigits);
    machine.life = { ...machine.life, hoursBefore };
  }
}

/** A dial figure that stands beside a size or a move. */
export type NotedDial = { machine: PlannedMachine; takenOn: Day; dialHours: number; line: Line; column: string };

/** Figures noted beside sizes and moves are readings too: those that no row gives yet are added. */
export function planNotedDials(planning: Planning, noted: readonly NotedDial[]): void {
  const byMachine = new Map<PlannedMachine, Map<string, NotedDial>>();
  for (const dial of noted) {
    const ofMachine = byMachine.get(dial.machine) ?? new Map<string, NotedDial>();
    const key = rowKey(dial.takenOn, dial.dialHours);
    if (!ofMachine.has(key) && !isGiven(dial)) ofMachine.set(key, dial);
    byMachine.set(dial.machine, ofMachine);
  }
  for (const [machine, dials] of byMachine) {
    const merged = withSeenDials(machine.life, [...dials.values()]);
    const dialEvents = merged.dialEvents.map((event, place) => {
      const from = event.id === SEEN_DIAL_ID ? dials.get(rowKey(event.takenOn, event.dialHours)) : undefined;
      if (!from) return event;
      const own = { ...event, id: planning.nextKey() };
      const beforeChange = merged.dialEvents
        .slice(place + 1)
        .some((later) => later.takenOn === event.takenOn && later.kind === 'new-meter');
      const { line, column } = from;
      machine.newDials.set(own.id, { event: own, line, column, inDay: beforeChange ? -1 : 0, question: null });
      return own;
    });
    machine.life = { ...machine.life, dialEvents };
  }
}

const isGiven = ({ machine, takenOn, dialHours }: NotedDial): boolean =>
  machine.life.dialEvents.some((event) => event.takenOn === takenOn && event.dialHours === dialHours);

/** Judges each machine's rows in order: what cannot be is a fault, what is questioned a caution and parked, what is only told a note. */
export function judgeHours(planning: Planning): void {
  for (const machine of planning.plan.machines) {
    if (machine.newDials.size > 0) judgeMachine(planning, machine);
  }
}

function judgeMachine({ faults, cautions, notes }: Planning, machine: PlannedMachine): void {
  let lastNew: PlannedDial | null = null;
  const blamed = new Set<PlannedDial>();
  for (const [place, judged] of judgeLife(machine.life).entries()) {
    const own = machine.newDials.get(machine.life.dialEvents[place]!.id);
    if (own) lastNew = own;
    // a row on record that no longer fits was sound before: the new row before it is what does not fit
    const at = own ?? lastNew;
    if (judged.refusal && at && !blamed.has(at)) {
      blamed.add(at);
      const code = own ? judged.refusal.code : 'dial-above-later';
      const facts = judged.refusal.facts ?? {};
      faults.push(remarkAt(at.line, at.column, code, dialExpected(code, facts), facts));
    }
    if (!own) continue;
    const list = judged.parked ? cautions : notes;
    for (const { code, facts = {} } of judged.cautions)
      list.push(remarkAt(own.line, own.column, code, dialExpected(code, facts), facts));
    if (!judged.parked) continue;
    own.question = judged.cautions[0]?.code ?? null;
    own.event.parked = true;
  }
}
