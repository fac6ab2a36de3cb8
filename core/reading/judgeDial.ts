import type { Caution, Refusal } from '../outcome.ts';
import type { DialEvent, MachineLife } from '../shop/machineLife.ts';
import { type Day, dayNumber } from '../units/day.ts';
import { type HoursLine, type HoursNode, hoursLine } from './hoursLine.ts';
import { machineHoursAtDial } from './machineHours.ts';
import { guessedFullScale, machineHoursOnMeter } from './meter.ts';
import { USUAL_USE, type UseRate, useBetween } from './useRate.ts';

/** What a person may say to a questioned dial; the events among them are entered in its place. */
export type DialChoice = 'read-again' | 'right-as-read' | 'new-meter' | 'rollover' | 'estimate' | 'other-machine';

/** What is odd about a dial row: a refusal (it cannot be), or cautions; `parked`: it waits for an answer, out of the machine's hours. */
export type DialJudgement = { refusal: Refusal | null; cautions: Caution[]; parked: boolean; choices: DialChoice[] };

const HOURS_IN_A_DAY = 24;

/** A rise is within what the machine's use makes likely up to this many sd. */
const LIKELY_WITHIN_SD = 4;

/** Rise at which a tenfold slip is looked for, as a multiple of the rise expected: three, and at least this many hours. Common practice, no source. */
const STARTLING = { times: 3, hours: 500 };

/** A dial that has not moved for longer than this may have stopped [d]. Common practice, no source. */
const STILL_FOR_DAYS = 300;

const noFault = (cautions: Caution[] = [], parked = false): DialJudgement => ({
  refusal: null,
  cautions,
  parked,
  choices: parked ? ['read-again', 'right-as-read', 'other-machine'] : [],
});

/**
 * Judges a new row of a machine's hours against the rows before it and, when it is back-dated, after it.
 *  - refusals: dial-went-back, dial-above-later, rollover-without-fall
 *  - cautions that park: rise-over-24-a-day, ten-times-off, dial-over-full-scale
 *  - cautions that only tell: meter-may-have-stopped, meter-digits-not-known
 * An answered row is kept without being judged again.
 *
 * @param line the machine's hours from all rows on record but this one
 * @param event the row; on its day it comes after the rows already there
 */
export function judgeDial(line: HoursLine, event: DialEvent): DialJudgement {
  const dayOf = dayNumber(event.takenOn);
  const before = line.nodes.findLast((node) => node.dayOf <= dayOf);
  const after = line.nodes.find((node) => node.dayOf > dayOf);
  if (event.dialHours === null) return noFault();
  if (!before) return judgeFirst(line, event, event.dialHours, after);
  const meant = after && event.kind === 'reading' ? machineHoursAtDial(line, event.takenOn, event.dialHours) : null;
  if (meant?.caution === null && (meant.hours >= before.machineHours || before.kind === 'estimated')) {
    return judgeRise(line, before, event, event.dialHours, meant.hours - before.machineHours);
  }
  const rise = riseOf(line, before, event, event.dialHours);
  if ('refusal' in rise) return rise;
  const later = laterOnSameMeter(line, event, event.dialHours, dayOf, after);
  if (later) return later;
  return judgeRise(line, before, event, event.dialHours, rise.machineHours - before.machineHours);
}

function judgeFirst(line: HoursLine, event: DialEvent, dialHours: number, after: HoursNode | undefined): DialJudgement {
  if (
    event.kind === 'reading' &&
    after &&
    line.meters[0] &&
    machineHoursOnMeter(line.meters[0], dialHours) > after.machineHours
  ) {
    return refused('dial-above-later', { dialHours, laterDialHours: after.dialHours, laterReadOn: after.takenOn });
  }
  return noFault();
}

/** Machine hours the row would mean, or why it cannot be. */
function riseOf(
  line: HoursLine,
  before: HoursNode,
  event: DialEvent,
  dialHours: number,
): { machineHours: number } | DialJudgement {
  const dayOf = dayNumber(event.takenOn);
  const meter = line.meters.findLast(({ fromDayOf }) => fromDayOf <= dayOf)!;
  const lastDialHours = lastDialOn(line, before, dayOf);
  const machineHours = machineHoursOnMeter(meter, dialHours);
  const fullScaleHours = line.fullScaleHours ?? guessedFullScale(lastDialHours);
  if (event.kind === 'rollover') {
    if (dialHours >= lastDialHours)
      return refused('rollover-without-fall', { dialHours, lastDialHours, lastReadOn: before.takenOn });
    return { machineHours: machineHours + meter.hoursPerDialHour * fullScaleHours };
  }
  if (dialHours >= lastDialHours) return { machineHours };
  const overLap = machineHours + meter.hoursPerDialHour * fullScaleHours - before.machineHours;
  const tenfold = machineHoursOnMeter(meter, dialHours * 10) - before.machineHours;
  return refused('dial-went-back', {
    dialHours,
    lastDialHours,
    lastReadOn: before.takenOn,
    rolloverPlausible: isLikely(line.use, before.takenOn, event.takenOn, overLap),
    fullScaleHours,
    tenTimesFits: isLikely(line.use, before.takenOn, event.takenOn, tenfold),
  });
}

/** The last figure really read on the meter in place; an estimate does not bind. */
function lastDialOn(line: HoursLine, before: HoursNode, dayOf: number): number {
  const meter = line.meters.findLast(({ fromDayOf }) => fromDayOf <= dayOf)!;
  if (before.kind !== 'estimated') return before.dialHours;
  const read = line.nodes.findLast((node) => node.kind === 'read' && node.dayOf <= dayOf);
  const onThisMeter =
    read && read.machineHours >= meter.machineHoursAtStart && read.dialHours >= meter.dialHoursAtStart;
  return onThisMeter ? read.dialHours : line.nodes[0]!.kind === 'read' ? meter.dialHoursAtStart : 0;
}

/** A back-dated row must also lie below what was read later on the same meter. */
function laterOnSameMeter(
  line: HoursLine,
  event: DialEvent,
  dialHours: number,
  dayOf: number,
  after: HoursNode | undefined,
): DialJudgement | null {
  if (event.kind !== 'reading' || !after || after.kind !== 'read') return null;
  const meter = line.meters.findLast(({ fromDayOf }) => fromDayOf <= dayOf)!;
  if (machineHoursOnMeter(meter, dialHours) <= after.machineHours) return null;
  return refused('dial-above-later', { dialHours, laterDialHours: after.dialHours, laterReadOn: after.takenOn });
}

function judgeRise(
  line: HoursLine,
  before: HoursNode,
  event: DialEvent,
  dialHours: number,
  riseHours: number,
): DialJudgement {
  const days = dayNumber(event.takenOn) - before.dayOf;
  const expected = useBetween(line.use, before.takenOn, event.takenOn);
  const facts = {
    dialHours,
    lastDialHours: before.dialHours,
    lastReadOn: before.takenOn,
    riseHours,
    days,
    expectedRiseHours: expected.hours,
  };
  const cautions: Caution[] = [];
  if (riseHours > HOURS_IN_A_DAY * Math.max(1, days)) cautions.push({ code: 'rise-over-24-a-day', facts });
  const tenthRise = riseHours - 0.9 * dialHours;
  const startling = riseHours > Math.max(STARTLING.hours, STARTLING.times * expected.hours);
  if (event.kind !== 'rollover' && startling && isLikely(line.use, before.takenOn, event.takenOn, tenthRise)) {
    cautions.push({ code: 'ten-times-off', facts: { ...facts, likelyDialHours: dialHours / 10 } });
  }
  if (line.fullScaleHours !== null && dialHours >= line.fullScaleHours) {
    cautions.push({ code: 'dial-over-full-scale', facts: { ...facts, fullScaleHours: line.fullScaleHours } });
  }
  const parked = cautions.length > 0;
  if (event.kind === 'reading' && riseHours === 0 && days > STILL_FOR_DAYS)
    cautions.push({ code: 'meter-may-have-stopped', facts });
  if (event.kind === 'rollover' && line.fullScaleHours === null) {
    cautions.push({ code: 'meter-digits-not-known', facts: { fullScaleHours: guessedFullScale(before.dialHours) } });
  }
  return noFault(cautions, parked);
}

function isLikely(use: UseRate, from: Day, to: Day, riseHours: number): boolean {
  const expected = useBetween(use, from, to);
  const most = expected.hours + LIKELY_WITHIN_SD * expected.sdHours + HOURS_IN_A_DAY;
  const days = Math.max(1, dayNumber(to) - dayNumber(from));
  return riseHours >= 0 && riseHours <= Math.min(most, HOURS_IN_A_DAY * days);
}

const refused = (code: string, facts: NonNullable<Refusal['facts']>): DialJudgement => ({
  refusal: { code, facts },
  cautions: [],
  parked: false,
  choices:
    code === 'dial-went-back'
      ? ['read-again', 'new-meter', 'rollover', 'other-machine']
      : ['read-again', 'other-machine'],
});

/**
 * Judges every row of a machine's life in order, each against the sound rows before it: what an import asks.
 * Rows already parked stay out and are not judged again.
 *
 * @returns one judgement per row of `life.dialEvents`, in its order
 */
export function judgeLife(life: MachineLife, use: UseRate = USUAL_USE): DialJudgement[] {
  const sound: DialEvent[] = [];
  return life.dialEvents.map((event) => {
    if (event.parked) return noFault([], true);
    const judged = judgeDial(hoursLine({ ...life, dialEvents: sound }, event.takenOn, use), event);
    if (!judged.refusal && !judged.parked) sound.push(event);
    return judged;
  });
}
