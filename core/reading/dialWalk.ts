import type { Caution } from '../outcome.ts';
import type { DialEvent, MachineLife } from '../shop/machineLife.ts';
import { type Day, dayNumber } from '../units/day.ts';
import type { GatheredHours } from './gatheredHours.ts';
import type { HoursNode } from './hoursLine.ts';
import { guessedFullScale, type MeterSpan, machineHoursOnMeter } from './meter.ts';
import { type UseRate, useBetween } from './useRate.ts';

/** Share of the hours since the last reading that an estimate, or an unread stretch, may be out by (1 sd). */
export const ESTIMATE_ERROR_SHARE = 0.25;

/** Nodes of gathered hours carry no row of their own. */
export const GATHERED_ID = -1;

/** A dial below a reading with errors of its own is the same dial when within this many sd. */
const SAME_WITHIN_SD = 3;

/** A machine's dial rows on their way to a line: what is known after the rows so far. */
export type DialWalk = {
  life: MachineLife;
  use: UseRate;
  nodes: HoursNode[];
  meters: MeterSpan[];
  cautions: Caution[];
  /** the last figure really read on the present meter: dial, and its place in machine hours */
  lastDialHours: number;
  lastReadMachineHours: number;
};

/** Goes through a machine's rows up to a day, in order; parked ones are left out. Gathered hours come before a day's rows, a new source after. */
export function walkDial(
  life: MachineLife,
  asOf: Day,
  use: UseRate,
  gathered: readonly GatheredHours[] = [],
): DialWalk {
  const walk: DialWalk = { life, use, nodes: [], meters: [], cautions: [], lastDialHours: 0, lastReadMachineHours: 0 };
  const steps: readonly (DialEvent | GatheredHours)[] = [...gathered, ...life.dialEvents];
  for (const event of steps.toSorted((a, b) => byDay(a, b) || placeInDay(a) - placeInDay(b))) {
    if (event.takenOn > asOf) continue;
    if ('gatheredHours' in event) {
      walkGathered(walk, event);
      continue;
    }
    if (event.parked) continue;
    if (walk.meters.length === 0) walkFirst(walk, event);
    else if (event.kind === 'new-meter') walkNewMeter(walk, event);
    else if (event.kind === 'rollover') walkRollover(walk, event);
    else if (event.kind === 'estimate') walkEstimate(walk, event);
    else walkReading(walk, event);
  }
  return walk;
}

/** Rows of one day keep their order. */
const byDay = (a: { takenOn: Day }, b: { takenOn: Day }): number =>
  a.takenOn < b.takenOn ? -1 : a.takenOn > b.takenOn ? 1 : 0;

const placeInDay = (step: DialEvent | GatheredHours): number => ('begins' in step ? (step.begins ? 2 : 0) : 1);

/** Figure at which a machine's meters start again [h]; null: digits not known. */
export const fullScale = (life: MachineLife): number | null =>
  life.meterDigits === null ? null : 10 ** life.meterDigits;

function walkFirst(walk: DialWalk, event: DialEvent): void {
  const { life } = walk;
  const newMeter = event.kind === 'new-meter';
  const lap = event.kind === 'rollover' ? (fullScale(life) ?? guessedFullScale(event.dialHours ?? 0)) : 0;
  const shown = event.dialHours ?? 0;
  // on a new meter the figure is the old one's, whose clock nobody spoke of
  const perDialHour = newMeter ? 1 : (event.hoursPerDialHour ?? 1);
  const machineHours = (life.hoursBefore ?? 0) + perDialHour * (lap + shown);
  if (newMeter && event.dialHours === null && life.hoursBefore === null) {
    walk.cautions.push({ code: 'hours-before-not-known', facts: { takenOn: event.takenOn } });
  }
  const estimated = event.kind === 'estimate';
  const errorHours = event.errorHours ?? (estimated ? ESTIMATE_ERROR_SHARE * perDialHour * (lap + shown) : 0);
  const dialHours = newMeter ? (event.newDialHours ?? 0) : shown;
  addNode(walk, event, machineHours, errorHours ** 2, estimated ? 'estimated' : 'read');
  fitMeter(walk, event, dialHours, machineHours, 0);
  walk.nodes[0]!.dialHours = dialHours;
  if (!estimated) return;
  walk.lastDialHours = 0;
  walk.lastReadMachineHours = life.hoursBefore ?? 0;
}

/** Hours without a meter: on from what is known so far, whose doubt they carry on. */
function walkGathered(walk: DialWalk, step: GatheredHours): void {
  const { takenOn } = step;
  const last = walk.nodes.at(-1);
  if (!last) {
    const nought = { kind: 'estimate', dialHours: 0, newDialHours: null, errorHours: 0, parked: false } as const;
    walkFirst(walk, { ...nought, id: GATHERED_ID, takenOn });
    walk.nodes[0]!.driftVariance = step.driftVariance;
    return;
  }
  if (last.eventId !== GATHERED_ID) {
    // what is not known of the hours it starts from is the same for all that follow
    last.driftVariance += last.ownVariance;
    last.ownVariance = 0;
  }
  // before a source begins nobody has said anything: those hours come from the machine's use
  const unread = step.begins ? useBetween(walk.use, last.takenOn, takenOn) : NO_USE;
  const unreadSdHours = Math.max(unread.sdHours, ESTIMATE_ERROR_SHARE * unread.hours);
  const machineHours = last.machineHours + unread.hours + step.gatheredHours;
  addNode(walk, { id: GATHERED_ID, takenOn, dialHours: null }, machineHours, step.ownVariance, 'estimated');
  walk.nodes.at(-1)!.driftVariance = last.driftVariance + unreadSdHours ** 2 + step.driftVariance;
}

const NO_USE = { hours: 0, sdHours: 0 };

function walkReading(walk: DialWalk, event: DialEvent): void {
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

function walkEstimate(walk: DialWalk, event: DialEvent): void {
  if (event.dialHours === null) return;
  if (event.dialHours < walk.lastDialHours) {
    walk.cautions.push(wentBack(walk, event));
    return;
  }
  const machineHours = onMeter(walk, event.dialHours);
  const errorHours = event.errorHours ?? ESTIMATE_ERROR_SHARE * (machineHours - walk.lastReadMachineHours);
  addNode(walk, event, machineHours, errorHours ** 2, 'estimated');
}

function walkNewMeter(walk: DialWalk, event: DialEvent): void {
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
function bridge(walk: DialWalk, event: DialEvent, newDialHours: number): void {
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

function walkRollover(walk: DialWalk, event: DialEvent): void {
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
const stoodStill = (walk: DialWalk, dialHours: number): boolean =>
  dialHours === walk.lastDialHours &&
  walk.nodes.at(-1)!.kind === 'estimated' &&
  walk.nodes.at(-1)!.machineHours > walk.lastReadMachineHours;

const wentBack = (walk: DialWalk, event: DialEvent): Caution => ({
  code: 'dial-went-back',
  facts: { dialHours: event.dialHours, lastDialHours: walk.lastDialHours, takenOn: event.takenOn },
});

const onMeter = (walk: DialWalk, dialHours: number): number => machineHoursOnMeter(walk.meters.at(-1)!, dialHours);

function fitMeter(
  walk: DialWalk,
  event: DialEvent,
  dialHours: number,
  machineHours: number,
  driftVariance: number,
): void {
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
  walk: DialWalk,
  event: Pick<DialEvent, 'id' | 'takenOn' | 'dialHours'>,
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
    // what the meter shows is as sure as its fitting, whatever was gathered without it
    driftVariance: walk.meters.at(-1)?.driftVariance ?? 0,
    kind,
    dialHours,
    eventId: event.id,
  });
  if (kind !== 'read') return;
  walk.lastDialHours = dialHours;
  walk.lastReadMachineHours = machineHours;
}

/** What was read since shows that earlier estimates were too high: they come down to it. */
function lowerEstimates(walk: DialWalk, machineHours: number): void {
  const driftVariance = walk.meters.at(-1)?.driftVariance ?? 0;
  for (let back = walk.nodes.length - 1; back >= 0; back--) {
    const node = walk.nodes[back]!;
    if (node.machineHours <= machineHours) return;
    const overHours = node.machineHours - machineHours;
    if (overHours > 2 * Math.sqrt(node.ownVariance + Math.max(0, node.driftVariance - driftVariance))) {
      walk.cautions.push({ code: 'estimate-above-reading', facts: { takenOn: node.takenOn, overHours } });
    }
    node.machineHours = machineHours;
  }
}
