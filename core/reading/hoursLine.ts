import type { Caution } from '../outcome.ts';
import type { DialEvent, MachineLife } from '../shop/machineLife.ts';
import { type Day, dayNumber } from '../units/day.ts';
import { USUAL_USE, type UseRate, useBetween } from './useRate.ts';

/** Where the hours of a machine are pinned: one per reading, estimate or change of meter. */
export type HoursNode = {
  takenOn: Day;
  dayOf: number;
  machineHours: number;
  /** variance of this node alone [h^2]: an estimate's error ends with the next reading */
  ownVariance: number;
  /** variance gathered up to here [h^2]: an unread stretch between two meters never ends */
  driftVariance: number;
  /** bridged: a new meter was fitted and the old one's last figure is not known */
  kind: 'read' | 'estimated' | 'bridged';
  /** what the meter of its day shows; on a change of meter the new one [h] */
  dialHours: number;
  eventId: number;
};

/** One meter, or one lap of it, from its fitting (or from the last figure of the lap before) on. */
export type MeterSpan = {
  fromDayOf: number;
  /** null: still in place */
  toDayOf: number | null;
  dialHoursAtStart: number;
  machineHoursAtStart: number;
  hoursPerDialHour: number;
  driftVariance: number;
};

/** A machine's hours over its days: straight between the nodes. Plain data; made by {@link hoursLine}. */
export type HoursLine = {
  machineId: number;
  asOf: Day;
  nodes: readonly HoursNode[];
  meters: readonly MeterSpan[];
  /** figure at which the meter starts again [h]; null: digits not known */
  fullScaleHours: number | null;
  /** pace beyond the last node and over unread stretches */
  use: UseRate;
  cautions: readonly Caution[];
};

/** Share of the hours since the last reading that an estimate, or an unread stretch, may be out by (1 sd). */
export const ESTIMATE_ERROR_SHARE = 0.25;

/** A dial below a reading with errors of its own is the same dial when within this many sd. */
const SAME_WITHIN_SD = 3;

type Walk = {
  life: MachineLife;
  use: UseRate;
  nodes: HoursNode[];
  meters: MeterSpan[];
  cautions: Caution[];
  /** the last figure really read on the present meter: dial, and its place in machine hours */
  lastDialHours: number;
  lastReadMachineHours: number;
};

/**
 * A machine's hours since new, from its dial: through meter changes, rollovers, estimates and unread stretches.
 *   machineHours = hours at the meter's fitting + hoursPerDialHour (dial - dial at its fitting)
 * Rows after `asOf`, and parked rows, are left out. A stored row that cannot be (a dial that falls) is left out with a
 * caution; entry refuses such rows ({@link judgeDial}). Machine hours never fall from node to node.
 *
 * @param life the machine's dial rows, in order
 * @param asOf last day looked at
 * @param use the machine's pace, for unread stretches and for the days after the last node
 * @returns the line; without nodes when the machine has no hours on record
 * @source own derivation: counting on through changes of meter
 * @checked core/reading/hoursLine.test.ts, core/series/lives.test.ts
 */
export function hoursLine(life: MachineLife, asOf: Day, use: UseRate = USUAL_USE): HoursLine {
  const walk: Walk = { life, use, nodes: [], meters: [], cautions: [], lastDialHours: 0, lastReadMachineHours: 0 };
  for (const event of life.dialEvents.toSorted(byDay)) {
    if (event.parked || event.takenOn > asOf) continue;
    if (walk.meters.length === 0) walkFirst(walk, event);
    else if (event.kind === 'new-meter') walkNewMeter(walk, event);
    else if (event.kind === 'rollover') walkRollover(walk, event);
    else if (event.kind === 'estimate') walkEstimate(walk, event);
    else walkReading(walk, event);
  }
  const { nodes, meters, cautions } = walk;
  return { machineId: life.machineId, asOf, nodes, meters, fullScaleHours: fullScale(life), use, cautions };
}

/** Rows of one day keep their order. */
const byDay = (a: DialEvent, b: DialEvent): number => (a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0);

const fullScale = (life: MachineLife): number | null => (life.meterDigits === null ? null : 10 ** life.meterDigits);

/** Full scale of a meter whose digits nobody noted: the least power of ten above what it has shown, four digits at least. */
export const guessedFullScale = (dialHours: number): number =>
  10 ** Math.max(4, Math.ceil(Math.log10(Math.max(1, dialHours + 1))));

function walkFirst(walk: Walk, event: DialEvent): void {
  const { life } = walk;
  const newMeter = event.kind === 'new-meter';
  const lap = event.kind === 'rollover' ? (fullScale(life) ?? guessedFullScale(event.dialHours ?? 0)) : 0;
  const shown = event.dialHours ?? 0;
  const machineHours = (life.hoursBefore ?? 0) + lap + shown;
  if (newMeter && event.dialHours === null && life.hoursBefore === null) {
    walk.cautions.push({ code: 'hours-before-not-known', facts: { takenOn: event.takenOn } });
  }
  const estimated = event.kind === 'estimate';
  const errorHours = event.errorHours ?? (estimated ? ESTIMATE_ERROR_SHARE * machineHours : 0);
  const dialHours = newMeter ? (event.newDialHours ?? 0) : shown;
  addNode(walk, event, machineHours, errorHours ** 2, estimated ? 'estimated' : 'read');
  fitMeter(walk, event, dialHours, machineHours, 0);
  walk.nodes[0]!.dialHours = dialHours;
  if (!estimated) return;
  walk.lastDialHours = 0;
  walk.lastReadMachineHours = life.hoursBefore ?? 0;
}

function walkReading(walk: Walk, event: DialEvent): void {
  if (event.dialHours === null) return;
  const last = walk.nodes.at(-1)!;
  const ownVariance = (event.errorHours ?? 0) ** 2;
  if (stoodStill(walk, event.dialHours)) {
    walk.cautions.push({ code: 'meter-stood-still', facts: { dialHours: event.dialHours, takenOn: event.takenOn } });
    return;
  }
  const slack = SAME_WITHIN_SD * Math.sqrt(ownVariance + (last.kind === 'read' ? last.ownVariance : 0));
  if (event.dialHours < walk.lastDialHours - slack) {
    walk.cautions.push(wentBack(walk, event));
    return;
  }
  const machineHours = Math.max(walk.lastReadMachineHours, onMeter(walk, event.dialHours));
  addNode(walk, event, machineHours, ownVariance, 'read');
}

function walkEstimate(walk: Walk, event: DialEvent): void {
  if (event.dialHours === null) return;
  if (event.dialHours < walk.lastDialHours) {
    walk.cautions.push(wentBack(walk, event));
    return;
  }
  const machineHours = onMeter(walk, event.dialHours);
  const errorHours = event.errorHours ?? ESTIMATE_ERROR_SHARE * (machineHours - walk.lastReadMachineHours);
  addNode(walk, event, machineHours, errorHours ** 2, 'estimated');
}

function walkNewMeter(walk: Walk, event: DialEvent): void {
  const newDialHours = event.newDialHours ?? 0;
  const lastFigure = event.dialHours;
  const fell = lastFigure !== null && lastFigure < walk.lastDialHours;
  if (fell) walk.cautions.push(wentBack(walk, event));
  if (lastFigure !== null && !fell && !stoodStill(walk, lastFigure)) {
    const machineHours = onMeter(walk, lastFigure);
    const ownVariance = (event.errorHours ?? 0) ** 2;
    addNode(walk, event, machineHours, 0, 'read');
    const node = walk.nodes.at(-1)!;
    node.driftVariance += ownVariance;
    fitMeter(walk, event, newDialHours, machineHours, node.driftVariance);
  } else bridge(walk, event, newDialHours);
  walk.nodes.at(-1)!.dialHours = newDialHours;
}

/** The old meter's last figure is not known, or it had stopped: the hours up to the new meter come from the machine's use. */
function bridge(walk: Walk, event: DialEvent, newDialHours: number): void {
  const last = walk.nodes.at(-1)!;
  const unread = useBetween(walk.use, last.takenOn, event.takenOn);
  const machineHours = last.machineHours + unread.hours;
  const wide = Math.max(unread.sdHours, ESTIMATE_ERROR_SHARE * unread.hours, event.errorHours ?? 0);
  addNode(walk, event, machineHours, 0, 'bridged');
  const node = walk.nodes.at(-1)!;
  node.driftVariance = last.driftVariance + last.ownVariance + wide ** 2;
  fitMeter(walk, event, newDialHours, machineHours, node.driftVariance);
  walk.cautions.push({ code: 'hours-bridged', facts: { takenOn: event.takenOn, hours: unread.hours, sdHours: wide } });
}

function walkRollover(walk: Walk, event: DialEvent): void {
  if (event.dialHours === null) return;
  if (event.dialHours >= walk.lastDialHours) {
    walk.cautions.push({
      code: 'rollover-without-fall',
      facts: { dialHours: event.dialHours, lastDialHours: walk.lastDialHours, takenOn: event.takenOn },
    });
    walkReading(walk, event);
    return;
  }
  const lap = fullScale(walk.life) ?? guessedFullScale(walk.lastDialHours);
  if (walk.life.meterDigits === null) {
    walk.cautions.push({ code: 'meter-digits-not-known', facts: { fullScaleHours: lap } });
  }
  const old = walk.meters.at(-1)!;
  const last = walk.nodes.at(-1)!;
  old.toDayOf = dayNumber(event.takenOn);
  walk.meters.push({
    ...old,
    fromDayOf: last.dayOf,
    toDayOf: null,
    dialHoursAtStart: 0,
    machineHoursAtStart: onMeter(walk, lap),
  });
  addNode(walk, event, onMeter(walk, event.dialHours), (event.errorHours ?? 0) ** 2, 'read');
}

/** A dial that has not moved although somebody's estimate has: the meter is broken, and its figure says nothing. */
const stoodStill = (walk: Walk, dialHours: number): boolean =>
  dialHours === walk.lastDialHours &&
  walk.nodes.at(-1)!.kind === 'estimated' &&
  walk.nodes.at(-1)!.machineHours > walk.lastReadMachineHours;

const wentBack = (walk: Walk, event: DialEvent): Caution => ({
  code: 'dial-went-back',
  facts: { dialHours: event.dialHours, lastDialHours: walk.lastDialHours, takenOn: event.takenOn },
});

const onMeter = (walk: Walk, dialHours: number): number => machineHoursOnMeter(walk.meters.at(-1)!, dialHours);

/** Machine hours at which one meter shows a figure. */
export const machineHoursOnMeter = (meter: MeterSpan, dialHours: number): number =>
  meter.machineHoursAtStart + meter.hoursPerDialHour * (dialHours - meter.dialHoursAtStart);

function fitMeter(walk: Walk, event: DialEvent, dialHours: number, machineHours: number, driftVariance: number): void {
  const fittedOn = dayNumber(event.takenOn);
  const old = walk.meters.at(-1);
  if (old) old.toDayOf = fittedOn;
  walk.meters.push({
    fromDayOf: old ? fittedOn : -Infinity,
    toDayOf: null,
    dialHoursAtStart: dialHours,
    machineHoursAtStart: machineHours,
    hoursPerDialHour: event.hoursPerDialHour ?? 1,
    driftVariance,
  });
  walk.lastDialHours = dialHours;
  walk.lastReadMachineHours = machineHours;
}

function addNode(
  walk: Walk,
  event: DialEvent,
  machineHours: number,
  ownVariance: number,
  kind: HoursNode['kind'],
): void {
  lowerEstimates(walk, machineHours);
  const dialHours = event.dialHours ?? walk.lastDialHours;
  walk.nodes.push({
    takenOn: event.takenOn,
    dayOf: dayNumber(event.takenOn),
    machineHours,
    ownVariance,
    driftVariance: walk.nodes.at(-1)?.driftVariance ?? 0,
    kind,
    dialHours,
    eventId: event.id,
  });
  if (kind !== 'read') return;
  walk.lastDialHours = dialHours;
  walk.lastReadMachineHours = machineHours;
}

/** What was read since shows that earlier estimates were too high: they come down to it. */
function lowerEstimates(walk: Walk, machineHours: number): void {
  for (let back = walk.nodes.length - 1; back >= 0; back--) {
    const node = walk.nodes[back]!;
    if (node.machineHours <= machineHours) return;
    const overHours = node.machineHours - machineHours;
    if (overHours > 2 * Math.sqrt(node.ownVariance)) {
      walk.cautions.push({ code: 'estimate-above-reading', facts: { takenOn: node.takenOn, overHours } });
    }
    node.machineHours = machineHours;
  }
}
