import type { Caution } from '../outcome.ts';
import type { HoursLine } from '../reading/hoursLine.ts';
import { type MachineHoursAt, machineHoursAtDial, machineHoursOn } from '../reading/machineHours.ts';
import { type ShareStretch, shareStretches, workedBetween } from '../reading/workedHours.ts';
import type { MachineLife } from '../shop/machineLife.ts';
import type { Sitting } from '../shop/measuringPoint.ts';
import type { Day } from '../units/day.ts';

/** A machine with its hours worked out. */
export type MachineOnLine = { life: MachineLife; line: HoursLine };

/**
 * A moment in the life of an assembly, in hours it has run on all its machines together ("run hours"):
 * on one machine since new these are that machine's hours; the shelf adds none.
 */
export type ClockAt = {
  /** where it sat; null: the shelf */
  machineId: number | null;
  /** hours of that machine; null on the shelf */
  machineHours: number | null;
  runHours: number;
  workedHours: number;
  /** variance of the moment alone [h^2] */
  ownVariance: number;
  /** variance shared by all later moments [h^2] */
  driftVariance: number;
  kind: MachineHoursAt['kind'];
  caution: Caution | null;
};

type Leg = {
  machineId: number | null;
  from: Day | null;
  machine: MachineOnLine | null;
  shares: readonly ShareStretch[];
  /** hours of this machine when the assembly came to it; null: shelf, or no hours on record */
  start: MachineHoursAt | null;
  runHours: number;
  workedHours: number;
  driftVariance: number;
};

/** Where an assembly has been, leg by leg: what turns a day and a dial into run hours. Made by {@link partClock}. */
export type PartClock = {
  legs: readonly Leg[];
  asOf: Day;
  /** moments asked for before, by day and dial: the points of an assembly are measured in the same visits */
  known: Map<Day, Map<number | null, ClockAt | null>>;
};

const AS_NEW: MachineHoursAt = { hours: 0, sdHours: 0, ownVariance: 0, driftVariance: 0, kind: 'read' };

/**
 * The clock of an assembly through its moves up to a day.
 * A leg on a machine without hours on record adds none; its moments come back as null.
 */
export function partClock(
  sittings: readonly Sitting[],
  lines: ReadonlyMap<number, MachineOnLine>,
  asOf: Day,
): PartClock {
  const legs: Leg[] = [];
  for (const sitting of sittings) {
    if (sitting.from !== null && sitting.from > asOf) break;
    const machine = sitting.machineId === null ? null : (lines.get(sitting.machineId) ?? null);
    const left = legs.length > 0 ? leave(legs.at(-1)!, sitting) : null;
    const start =
      machine && (legs.length === 0 ? asNew(machine) : hoursAt(machine, sitting.from!, sitting.toDialHours));
    legs.push({
      machineId: sitting.machineId,
      from: sitting.from,
      machine,
      shares: machine ? shareStretches(machine.life, machine.line) : [],
      start,
      runHours: left?.runHours ?? 0,
      workedHours: left?.workedHours ?? 0,
      driftVariance: (left ? left.driftVariance + left.ownVariance : 0) + (start?.ownVariance ?? 0),
    });
  }
  return { legs, asOf, known: new Map() };
}

const asNew = (machine: MachineOnLine): MachineHoursAt | null => (machine.line.nodes.length > 0 ? AS_NEW : null);

type DoubtedHours = MachineHoursAt & { caution: Caution | null };

function hoursAt({ line }: MachineOnLine, on: Day, dialHours: number | null): DoubtedHours | null {
  if (dialHours !== null) return machineHoursAtDial(line, on, dialHours);
  const byDate = machineHoursOn(line, on);
  return byDate && { ...byDate, caution: null };
}

/** The moment it left a leg for the next; a leg without hours ends as it began. */
function leave(leg: Leg, next: Sitting): ClockAt {
  return alongLeg(leg, next.from!, next.dialHours) ?? startOf(leg);
}

const startOf = (leg: Leg): ClockAt => ({
  machineId: leg.machineId,
  machineHours: leg.start?.hours ?? null,
  runHours: leg.runHours,
  workedHours: leg.workedHours,
  ownVariance: 0,
  driftVariance: leg.driftVariance,
  kind: leg.start?.kind ?? 'read',
  caution: null,
});

function alongLeg(leg: Leg, on: Day, dialHours: number | null): ClockAt | null {
  if (leg.machineId === null) return startOf(leg);
  if (!leg.machine || !leg.start) return null;
  const now = hoursAt(leg.machine, on, dialHours);
  if (!now) return null;
  return onLeg(leg, leg.start, now, now.caution);
}

function onLeg(leg: Leg, start: MachineHoursAt, now: MachineHoursAt, caution: Caution | null): ClockAt {
  return {
    machineId: leg.machineId,
    machineHours: now.hours,
    runHours: leg.runHours + Math.max(0, now.hours - start.hours),
    workedHours: leg.workedHours + workedBetween(leg.shares, start.hours, now.hours),
    ownVariance: now.ownVariance,
    driftVariance: leg.driftVariance + Math.max(0, now.driftVariance - start.driftVariance),
    kind: now.kind,
    caution,
  };
}

/**
 * The moment of a day, by the dial of the machine the assembly sat on, or by date. On the day of a move it is the moment
 * of the move, whichever dial was read.
 *
 * @returns null when that machine has no hours on record
 */
export function clockOn(clock: PartClock, on: Day, dialHours: number | null): ClockAt | null {
  const ofDay = clock.known.get(on) ?? new Map<number | null, ClockAt | null>();
  if (ofDay.size === 0) clock.known.set(on, ofDay);
  let at = ofDay.get(dialHours);
  if (at === undefined) {
    at = momentOn(clock, on, dialHours);
    ofDay.set(dialHours, at);
  }
  // each look its own moment: a start between two of them is told from one that is certain
  return at && { ...at };
}

function momentOn(clock: PartClock, on: Day, dialHours: number | null): ClockAt | null {
  const leg = clock.legs.findLast(({ from }) => from === null || from <= on);
  if (!leg) return null;
  if (leg.from === on) return startOf(leg);
  return alongLeg(leg, on, dialHours);
}

/** The moment at which the first machine had run some hours: where a first part's fitting is given in machine hours. */
export function clockAtMachineHours(clock: PartClock, machineHours: number): ClockAt | null {
  const leg = clock.legs.find(({ start }) => start !== null);
  if (!leg?.machine || !leg.start) return null;
  const passed = leg.machine.line.nodes.findLast((node) => node.machineHours <= machineHours);
  const driftVariance = passed?.driftVariance ?? 0;
  return onLeg(leg, leg.start, { ...AS_NEW, hours: machineHours, driftVariance }, null);
}

/** The machine the assembly sits on, or sat on last; null when it never sat on any. */
export const machineOfClock = (clock: PartClock, on: Day): number | null =>
  clock.legs.findLast(({ machineId, from }) => machineId !== null && (from === null || from <= on))?.machineId ?? null;

/** Hours of the machine it sits on at the as-of day; on the shelf: of the machine it left, when it left. */
export function presentMachineHours(clock: PartClock): number | null {
  const now = clockOn(clock, clock.asOf, null);
  if (now?.machineHours != null) return now.machineHours;
  const lastLeg = clock.legs.findLastIndex(({ machineId }) => machineId !== null);
  const leg = clock.legs[lastLeg];
  const after = clock.legs[lastLeg + 1];
  if (!leg?.start || !after) return null;
  return leg.start.hours + (after.runHours - leg.runHours);
}
