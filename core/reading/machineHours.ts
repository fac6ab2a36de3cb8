import type { Caution } from '../outcome.ts';
import { type Day, dayNumber } from '../units/day.ts';
import type { HoursLine, HoursNode } from './hoursLine.ts';
import { type MeterSpan, machineHoursOnMeter } from './meter.ts';
import { USUAL_JOB_HOURS, useBetween } from './useRate.ts';

/** Machine hours on a day, and how far they may be trusted. */
export type MachineHoursAt = {
  hours: number;
  /** 1 sd of the whole figure [h] */
  sdHours: number;
  /** part of the variance that is this day's alone [h^2] */
  ownVariance: number;
  /** part of the variance that all later days share [h^2] */
  driftVariance: number;
  kind: 'read' | 'between' | 'estimated';
};

const at = (
  hours: number,
  ownVariance: number,
  driftVariance: number,
  kind: MachineHoursAt['kind'],
): MachineHoursAt => ({
  hours,
  sdHours: Math.sqrt(ownVariance + driftVariance),
  ownVariance,
  driftVariance,
  kind,
});

/**
 * Machine hours on a day: read, straight between two nodes, or from the machine's use before the first and after the last.
 * Between two nodes H hours apart, a share f of the way:
 *   var = f (1-f) H^2 / (H/phi + 1) + both nodes' own variances, weighted (1-f)^2 and f^2
 * A farmer's season makes it less even still; a size whose dial was read does not need this.
 *
 * @returns null when the machine has no hours on record
 * @source own derivation: variance of a gamma process between two known values is that of a beta share (f H/phi, (1-f) H/phi) of H
 */
export function machineHoursOn(line: HoursLine, on: Day): MachineHoursAt | null {
  const dayOf = dayNumber(on);
  const { before, after } = around(line, dayOf);
  if (!before) return after ? beforeFirst(line, after, on) : null;
  if (before.dayOf === dayOf) {
    const kind = before.kind === 'read' ? 'read' : 'estimated';
    return at(before.machineHours, before.ownVariance, before.driftVariance, kind);
  }
  if (!after) {
    const run = useBetween(line.use, before.takenOn, on);
    const hours = before.machineHours + run.hours;
    return at(hours, before.ownVariance + run.sdHours ** 2, before.driftVariance, 'estimated');
  }
  return between(line, before, after, dayOf);
}

function between(line: HoursLine, before: HoursNode, after: HoursNode, dayOf: number): MachineHoursAt {
  const share = (dayOf - before.dayOf) / (after.dayOf - before.dayOf);
  const run = after.machineHours - before.machineHours;
  const wander = (share * (1 - share) * run ** 2) / (run / (line.use.jobHours ?? USUAL_JOB_HOURS) + 1);
  const own = wander + (1 - share) ** 2 * before.ownVariance + share ** 2 * after.ownVariance;
  const drift = before.driftVariance + share * (after.driftVariance - before.driftVariance);
  return at(before.machineHours + share * run, own, drift, 'between');
}

function beforeFirst(line: HoursLine, first: HoursNode, on: Day): MachineHoursAt {
  const run = useBetween(line.use, on, first.takenOn);
  const hours = Math.max(0, first.machineHours - run.hours);
  return at(
    hours,
    first.ownVariance + Math.min(run.sdHours, first.machineHours) ** 2,
    first.driftVariance,
    'estimated',
  );
}

/** Last node at or before a day (of several on one day the last), and the first after it. */
function around(line: HoursLine, dayOf: number): { before: HoursNode | undefined; after: HoursNode | undefined } {
  let low = 0;
  let high = line.nodes.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (line.nodes[middle]!.dayOf <= dayOf) low = middle + 1;
    else high = middle;
  }
  return { before: line.nodes[low - 1], after: line.nodes[low] };
}

/** Hours a day cannot exceed, and a little for the time of day. */
const MOST_HOURS_A_DAY = 24;

/**
 * Machine hours that a dial figure seen on a day means: on the meter, and the lap of it, that was in place and fits the
 * days before and after. A figure that fits none of them is not used: the hours by date come back with `caution`.
 *
 * @returns null when the machine has no hours on record
 */
export function machineHoursAtDial(
  line: HoursLine,
  on: Day,
  dialHours: number,
): (MachineHoursAt & { caution: Caution | null }) | null {
  const byDate = machineHoursOn(line, on);
  if (!byDate) return null;
  const dayOf = dayNumber(on);
  const { before: last, after: most } = around(line, dayOf);
  const least = last?.dayOf === dayOf ? around(line, dayOf - 1).before : last;
  const lowest = least ? least.machineHours - 3 * Math.sqrt(least.ownVariance) : 0;
  const highest = most
    ? most.machineHours + 3 * Math.sqrt(most.ownVariance)
    : last!.machineHours + 3 * Math.sqrt(last!.ownVariance) + MOST_HOURS_A_DAY * (dayOf - last!.dayOf + 1);
  const fitting = metersOn(line, dayOf)
    .map((meter) => ({ hours: machineHoursOnMeter(meter, dialHours), driftVariance: meter.driftVariance }))
    .filter(({ hours }) => hours >= lowest && hours <= highest)
    .sort((a, b) => Math.abs(a.hours - byDate.hours) - Math.abs(b.hours - byDate.hours));
  const best = fitting[0];
  if (best) return { ...at(best.hours, 0, best.driftVariance, 'read'), caution: null };
  return {
    ...byDate,
    caution: { code: 'dial-off-line', facts: { dialHours, takenOn: on, machineHours: byDate.hours } },
  };
}

/** Meters in place on a day; after the last node also the next lap of the present one. */
function metersOn(line: HoursLine, dayOf: number): MeterSpan[] {
  const inPlace = line.meters.filter(
    (meter) => meter.fromDayOf <= dayOf && (meter.toDayOf === null || dayOf <= meter.toDayOf),
  );
  const present = inPlace.at(-1);
  if (line.fullScaleHours === null || present?.toDayOf !== null) return inPlace;
  const nextLap = machineHoursOnMeter(present, line.fullScaleHours);
  return [...inPlace, { ...present, dialHoursAtStart: 0, machineHoursAtStart: nextLap }];
}

/**
 * What the present meter shows, or will show, at some machine hours.
 *
 * @returns dial [h] and how many times it will have passed its full scale by then; null when the machine has no meter
 *   (no hours on record, or nothing but estimates)
 */
export function presentDial(line: HoursLine, machineHours: number): { dialHours: number; laps: number } | null {
  const meter = line.meters.at(-1);
  if (!meter || line.nodes.every((node) => node.kind === 'estimated')) return null;
  const dial = meter.dialHoursAtStart + (machineHours - meter.machineHoursAtStart) / meter.hoursPerDialHour;
  if (line.fullScaleHours === null || dial < line.fullScaleHours) return { dialHours: dial, laps: 0 };
  const laps = Math.floor(dial / line.fullScaleHours);
  return { dialHours: dial - laps * line.fullScaleHours, laps };
}

/** Day and figure of the last real reading; null when there is none. */
export function lastRead(line: HoursLine): { takenOn: Day; machineHours: number; dialHours: number } | null {
  const node = line.nodes.findLast(({ kind }) => kind === 'read');
  return node ? { takenOn: node.takenOn, machineHours: node.machineHours, dialHours: node.dialHours } : null;
}

/** A stretch over which a machine's hours are known: what its use is learned from. */
export type UseStretch = { from: Day; to: Day; hours: number; sdHours: number };

/**
 * Stretches of known hours, from reading to reading, and from the last reading to the last estimate after it; with
 * nothing but estimates, from the first to the last. Estimates between are the same guess told again, each out by about
 * the same share: taken one by one they would count its error many times over.
 * Unread stretches between meters are left out: they were filled in from use and would speak for themselves.
 */
export function useStretches(line: HoursLine): UseStretch[] {
  const lastReadAt = line.nodes.findLastIndex(({ kind }) => kind !== 'estimated');
  const firstAt = lastReadAt < 0 ? 0 : -1;
  const lastAt = line.nodes.length - 1;
  const nodes = line.nodes.filter(({ kind }, at) => kind !== 'estimated' || at === firstAt || at === lastAt);
  const stretches: UseStretch[] = [];
  let from = nodes[0];
  for (const node of nodes.slice(1)) {
    if (from && node.dayOf === from.dayOf && node.driftVariance === from.driftVariance) continue;
    if (from && node.dayOf > from.dayOf && node.driftVariance === from.driftVariance) {
      const sdHours = Math.sqrt(from.ownVariance + node.ownVariance);
      stretches.push({ from: from.takenOn, to: node.takenOn, hours: node.machineHours - from.machineHours, sdHours });
    }
    from = node;
  }
  return stretches;
}
