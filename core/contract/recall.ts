import { z } from 'zod';
import type { ContactAnswer, ContactWay } from '../shop/contact.ts';
import { zFinding } from './machine.ts';
import { operation } from './operation.ts';
import { zBy, zDay, zDecides, zId, zName, zNote, zRange } from './shapes.ts';

export const zContactWay = z.enum(['slip', 'email', 'message', 'phone', 'in-person'] satisfies ContactWay[]);
export const zContactAnswer = z.enum(['booked', 'later', 'declined', 'sold'] satisfies ContactAnswer[]);

/** What was sent or said, and what came of it. */
export const zContact = z.object({
  contactId: zId,
  customerId: zId,
  machineId: zId.nullable(),
  machine: z.string(),
  madeOn: zDay,
  madeBy: z.string(),
  way: zContactWay,
  slipNumber: z.string().nullable(),
  saidBy: z.string(),
  note: z.string(),
  answer: zContactAnswer.nullable(),
  answerOn: zDay.nullable(),
  callBackOn: zDay.nullable(),
});
export type Contact = z.infer<typeof zContact>;

/** Month and day, "10-15". */
const zMonthDay = z.string().regex(/^(0[1-9]|1[0-2])-(0[1-9]|[12]\d|3[01])$/);

const zTerms = z.object({
  noContact: z.boolean(),
  /** the wish in their words, or what else is to be known */
  words: z.string().max(2000),
  /** by road, one way */
  distanceKm: z.number().min(0).max(2000).nullable(),
  driveMinutes: z.number().min(0).max(2000).nullable(),
  /** last month and day of the farm's season; null: up to the shop's next winter */
  seasonTo: zMonthDay.nullable(),
});
export type ContactTerms = z.infer<typeof zTerms>;

export const zQuiet = z.object({ quietId: zId, fromOn: zDay, toOn: zDay, why: z.string() });

/** Who a farm is and what is to be kept to in reaching it. */
const zFarm = z.object({
  customerId: zId,
  name: z.string(),
  place: z.string(),
  phone: z.string(),
  email: z.string(),
  terms: zTerms,
  quiet: z.array(zQuiet),
});

/** The hours by which a machine comes in, as its owner reads them. */
export const zComeInBy = z.object({
  item: z.int(),
  label: z.string(),
  decides: zDecides,
  /** on the dial it is gone by, turned over past its full scale; machine hours where there is none */
  dialHours: z.number(),
  hoursAre: z.enum(['dial', 'machine']),
  /** whose dial, where it is that of the machine that pulls it */
  dialMachine: z.string().nullable(),
  hoursLeft: zRange,
  decidingHoursLeft: z.number(),
  /** about when, at this farm's use; null: not to be said */
  about: zDay.nullable(),
  /** nobody measured this part yet: what like parts say alone */
  guessed: z.boolean(),
});
export type ComeInBy = z.infer<typeof zComeInBy>;

export const zRecallReason = z.discriminatedUnion('code', [
  z.object({ code: z.literal('safety'), count: z.int(), doNotUse: z.boolean(), since: zDay }),
  z.object({ code: z.literal('call-back'), on: zDay }),
  z.object({ code: z.literal('hours'), hoursLeft: z.number(), on: zDay.nullable(), passed: z.boolean() }),
  z.object({ code: z.literal('no-hours'), since: zDay.nullable() }),
]);
export type RecallReason = z.infer<typeof zRecallReason>;

export const zRecallStanding = z.discriminatedUnion('code', [
  z.object({ code: z.literal('to-contact') }),
  z.object({ code: z.literal('waiting'), sentOn: zDay }),
  z.object({
    code: z.literal('held'),
    why: z.enum(['booked', 'later', 'declined', 'sold', 'call-back', 'quiet']),
    until: zDay.nullable(),
  }),
]);
export type RecallStanding = z.infer<typeof zRecallStanding>;

const zDueMachine = z.object({
  machineId: zId,
  name: z.string(),
  serial: z.string(),
  reasons: z.array(zRecallReason),
  standing: zRecallStanding,
  comeInBy: zComeInBy.nullable(),
  safetyFindings: z.array(zFinding),
  lastContact: zContact.nullable(),
});
export type DueMachine = z.infer<typeof zDueMachine>;

const zDueFarm = z.object({ farm: zFarm, machines: z.array(zDueMachine) });
export type DueFarm = z.infer<typeof zDueFarm>;

export const recallRead = operation(
  'recall/list',
  z.object({
    /** do not wait where nothing has been learned yet */
    atOnce: z.boolean().default(false),
  }),
  z.object({
    asOf: zDay,
    leadDays: z.int(),
    /** what a machine without a season of its own must last to */
    lastsTo: zDay,
    winter: z.string(),
    /** in the order to be contacted */
    toContact: z.array(zDueFarm),
    /** something was sent, no answer yet */
    waiting: z.array(zDueFarm),
    /** an answer, a promise or a quiet period keeps them off for now */
    held: z.array(zDueFarm),
    /** farms that asked not to be contacted: never listed, only counted */
    noContact: z.int(),
    /** due, and nobody is on record to be contacted */
    nobodys: z.array(z.object({ machineId: zId, name: z.string() })),
    learning: z.boolean(),
  }),
  { title: 'Who to contact, why now, by what hours: safety first, then deciding hours, then distance' },
);

export const recallPaper = operation(
  'recall/paper',
  z.object({}),
  z.object({ fileName: z.string(), pdfBase64: z.string() }),
  { title: 'The recall list as a PDF, with a box for each answer' },
);

export const recallSaveLead = operation(
  'recall/saveLead',
  z.object({ leadDays: z.int().min(0).max(365), by: zBy }),
  z.object({ leadDays: z.int() }),
  { title: 'Say how long before its deciding hours a machine is called in' },
);

/** Words for one machine's owner, from the facts of its slip as it would be printed now. */
export const zLetters = z.object({
  machineId: zId,
  machine: z.string(),
  customerId: zId.nullable(),
  name: z.string(),
  phone: z.string(),
  /** the answer in one sentence, to be read aloud */
  spoken: z.string(),
  email: z.object({ to: z.string(), subject: z.string(), body: z.string(), mailto: z.string() }),
  /** fewer than 160 characters */
  message: z.string(),
  script: z.array(z.string()),
});
export type Letters = z.infer<typeof zLetters>;

export const recallLetters = operation('recall/letters', z.object({ machineId: zId }), zLetters, {
  title: 'What to write or say of a machine: mail, short message, words for the telephone; nothing is sent or kept',
});

export const contactAdd = operation(
  'contact/add',
  z
    .object({
      customerId: zId,
      /** none: of nothing of one machine */
      machineIds: z.array(zId).max(50),
      madeOn: zDay,
      way: zContactWay,
      slipId: zId.nullable(),
      saidBy: z.string().trim().max(120),
      note: zNote,
      answer: zContactAnswer.nullable(),
      /** booked: the day it comes in; later: not before this day */
      answerOn: zDay.nullable(),
      callBackOn: zDay.nullable(),
      by: zBy,
    })
    .refine(({ answer, answerOn }) => answerOn === null || answer === 'booked' || answer === 'later', {
      path: ['answerOn'],
      message: 'no day but of booked or later',
    }),
  z.object({ contactIds: z.array(zId) }),
  { title: 'Note what was sent or said, the answer, and when to ring again' },
);

export const contactStrike = operation(
  'contact/strike',
  z.object({ contactId: zId, reason: zNote.min(1), by: zBy }),
  z.object({ contactId: zId }),
  { title: 'Strike out a contact that never was' },
);

export const contactTermsSave = operation(
  'contact/saveTerms',
  zTerms.extend({ customerId: zId, by: zBy }),
  z.object({ customerId: zId }),
  { title: 'Say what is to be kept to in reaching a customer: not at all, how far, until when their season runs' },
);

export const quietAdd = operation(
  'contact/addQuiet',
  z
    .object({ customerId: zId, fromOn: zDay, toOn: zDay, why: z.string().trim().max(500), by: zBy })
    .refine(({ fromOn, toOn }) => fromOn <= toOn, { path: ['toOn'], message: 'a day from the first on' }),
  z.object({ quietId: zId }),
  { title: 'Say in which days a customer is not to be disturbed' },
);

export const quietStrike = operation(
  'contact/strikeQuiet',
  z.object({ quietId: zId, reason: zNote, by: zBy }),
  z.object({ quietId: zId }),
  { title: 'Take a quiet period back' },
);

// ---- the telephone

const zFoundFarm = z.object({
  customerId: zId,
  name: z.string(),
  place: z.string(),
  phone: z.string(),
  machines: z.array(z.object({ machineId: zId, name: z.string(), serial: z.string() })),
});

export const phoneFind = operation(
  'phone/find',
  z.object({ text: z.string().max(120) }),
  z.object({ farms: z.array(zFoundFarm), more: z.int() }),
  { title: 'Who rings: by a part of a name, farm, serial, telephone, slip or job number' },
);

const zPhoneMachine = z.object({
  machineId: zId,
  name: z.string(),
  makeModel: z.string(),
  serial: z.string(),
  /** the answer in one sentence, to be read aloud */
  spoken: z.string(),
  comeInBy: zComeInBy.nullable(),
  openFindings: z.array(zFinding),
  visits: z.array(z.object({ on: zDay, kind: z.enum(['strip-down', 'job', 'booked']), text: z.string() })),
});
export type PhoneMachine = z.infer<typeof zPhoneMachine>;

export const phoneRead = operation(
  'phone/read',
  z.object({ customerId: zId }),
  z.object({
    asOf: zDay,
    farm: zFarm,
    machines: z.array(zPhoneMachine),
    /** newest first */
    contacts: z.array(zContact),
  }),
  { title: 'All that is asked on the telephone: a farm’s machines, findings, visits, and what was said last' },
);
export type PhoneSheet = z.infer<typeof phoneRead.zReply>;

// ---- what became due

export const recallNews = operation(
  'recall/news',
  z.object({}),
  z.object({
    /** when the list was last looked at on this computer; null: never */
    since: zDay.nullable(),
    /** became due since then, in the order to be contacted */
    became: z.array(z.object({ machineId: zId, machine: z.string(), farm: z.string(), reason: zRecallReason })),
    toContact: z.int(),
    /** figures are from what the trade says, or something was entered meanwhile: to be asked again soon */
    learning: z.boolean(),
  }),
  { title: 'What became due since the recall list was last looked at' },
);

export const recallSeen = operation('recall/seen', z.object({}), z.object({ seen: z.boolean() }), {
  title: 'The recall list was looked at: what stands on it is no news any more',
});

// ---- calendar

export const recallCalendar = operation(
  'recall/calendar',
  z.object({}),
  z.object({ fileName: z.string(), ics: z.string(), visits: z.int(), dueDates: z.int() }),
  { title: 'Booked visits and due dates as a calendar file' },
);

// ---- slips of many machines at once

export const zWinterSlips = z.object({
  /** machines the slips are of; those of a farm that asked not to be contacted are left out */
  machineIds: z.array(zId).min(1).max(1000),
  /** each is noted as a slip sent today */
  noteAsSent: z.boolean(),
  by: zName,
});
export type WinterSlips = z.output<typeof zWinterSlips>;

/** Numbered and kept; as one document, and as a file each in a zip. */
export const zMadeSlips = z.object({
  count: z.int(),
  /** machines left out: their farm asked not to be contacted, or has no name on record */
  leftOut: z.int(),
  pdfName: z.string(),
  pdfBase64: z.string(),
  zipName: z.string(),
  zipBase64: z.string(),
});
export type MadeSlips = z.infer<typeof zMadeSlips>;
