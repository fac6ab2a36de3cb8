import { z } from 'zod';
import { operation } from './operation.ts';
import { zBy, zDay, zDialEventKind, zHours, zId, zMeterDigits, zNote, zQuestion, zShare } from './shapes.ts';

/** Machine hours in one hour of the dial: a clock that runs with the ignition against an engine's own count. */
export const zHoursPerDialHour = z.number().min(0.1).max(10);
const zReason = z.string().trim().min(1).max(2000);
export const zClock = z.object({ hoursPerDialHour: zHoursPerDialHour, reason: zReason });

/**
 * Enter what a meter shows. An unlikely figure comes back as a question and is not kept, until it is sent again
 * with `sure`, or as another event (new meter, rollover, estimate).
 */
export const hoursAdd = operation(
  'hours/add',
  z.object({
    machineId: zId,
    takenOn: zDay,
    kind: zDialEventKind,
    dialHours: zHours.nullable(),
    newDialHours: zHours.nullable(),
    errorHours: zHours.nullable(),
    /** machine hours in one hour of the new meter's dial, and why; only of a new meter; null: 1 */
    clock: zClock.nullable().default(null),
    saidBy: z.string().max(120),
    sure: z.boolean(),
  }),
  z.object({
    kept: z.boolean(),
    question: zQuestion.nullable(),
    machineHours: z.number().nullable(),
    dialReadingId: zId.nullable(),
  }),
  { title: 'Enter what an hour meter shows' },
);

/** Put a wrong reading right: a new row takes its place, the old one stays visible. */
export const hoursPutRight = operation(
  'hours/putRight',
  z.object({ dialReadingId: zId, takenOn: zDay, dialHours: zHours, reason: zNote, by: zBy }),
  z.object({ dialReadingId: zId }),
  { title: 'Put a wrong meter reading right' },
);

/** Say what is known of the meter now fitted: digits, hours it does not show, the pace of its clock. What stood before stays visible. */
export const hoursMeter = operation(
  'hours/meter',
  z.object({
    machineId: zId,
    meterDigits: zMeterDigits,
    /** machine hours that the first reading's dial did not show; null: its dial is the machine hours */
    hoursBefore: zHours.nullable(),
    hoursPerDialHour: zHoursPerDialHour,
    reason: zReason,
    by: zBy,
  }),
  z.object({ machineId: zId }),
  { title: 'Say what is known of a machine’s hour meter' },
);

/** The share of a machine's hours in which its assemblies work, from a day on; null: from the beginning. */
export const zWorkShare = z.object({
  from: zDay.nullable(),
  share: zShare,
  /** "silage", "loader"; empty: not said */
  workType: z.string().trim().max(120),
});

/** Say what a machine does and in which share of its hours its assemblies work; or put right what was said. */
export const hoursShare = operation(
  'hours/share',
  z.object({
    machineId: zId,
    /** the row to be put right; null: a new one */
    workShareId: zId.nullable(),
    /** null: that row never held */
    is: zWorkShare.nullable(),
    reason: zNote,
    by: zBy,
  }),
  z.object({ workShareId: zId }),
  { title: 'Say which share of a machine’s hours its assemblies work, from a day on' },
);

/** 1 sd of one year's hours, as a share of them; null: the usual of an estimate. */
const zErrorShare = z.number().min(0).max(2).nullable();

/** Where a machine's hours come from, from a day on, while no meter of its own tells them. */
export const zHoursSource = z.discriminatedUnion('kind', [
  z.object({ kind: z.literal('pulled'), from: zDay, pullerId: zId, share: zShare, errorShare: zErrorShare }),
  z.object({
    kind: z.literal('yearly'),
    from: zDay,
    hoursPerYear: z.number().min(1).max(8760),
    errorShare: zErrorShare,
  }),
  z.object({ kind: z.literal('own'), from: zDay }),
]);

/** Say where the hours of a machine without a meter come from; or put right what was said. */
export const hoursSource = operation(
  'hours/source',
  z.object({
    machineId: zId,
    /** the row to be put right; null: a new one */
    hoursSourceId: zId.nullable(),
    /** null: that row never held */
    is: zHoursSource.nullable(),
    reason: zNote,
    by: zBy,
  }),
  z.object({ hoursSourceId: zId }),
  { title: 'Say where the hours of a machine without a meter come from, from a day on' },
);
