import type { ContactAnswer, ContactWay } from '../shop/contact.ts';
import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { chainOf, counting, isLastOfChain, NOW_KNOWN, ofChain, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { contacts, contactTerms, quietPeriods, recallSettings } from './schema.ts';
import { strikeOut, supersede } from './supersede.ts';

export type ContactRow = {
  /** first row of its chain */
  id: number;
  customerId: number;
  machineId: number | null;
  madeOn: Day;
  madeBy: string;
  way: ContactWay;
  slipId: number | null;
  saidBy: string;
  note: string;
  answer: ContactAnswer | null;
  answerOn: Day | null;
  callBackOn: Day | null;
  struck: boolean;
  /** the entry that brought it: rises with the order in which things came on record */
  entered: number;
};

type Row = [
  ...[id: number, customerId: number, machineId: number | null, madeOn: Day, madeBy: string, way: ContactWay],
  ...[slipId: number | null, saidBy: string, note: string, answer: ContactAnswer | null, answerOn: Day | null],
  ...[callBackOn: Day | null, struck: number, entered: number],
];

/** All contacts, oldest first; struck ones too, since a calendar that was given out must hear of them. */
export const listContacts = (db: ReadableRecord): ContactRow[] =>
  bulk<Row>(
    db,
    `SELECT ${chainOf('c')}, c.customer_id, c.machine_id, c.made_on, e.made_by, c.way, c.slip_id, c.said_by, c.note,
       c.answer, c.answer_on, c.call_back_on, c.struck, c.entry_id
     FROM contacts c JOIN entries e ON e.id = c.entry_id
     WHERE ${standing('c')} AND ${isLastOfChain('contacts', 'c')} ORDER BY c.made_on, ${chainOf('c')}`,
    { knownAt: NOW_KNOWN },
  ).map(([id, customerId, machineId, madeOn, madeBy, way, slipId, saidBy, note, ...rest]) => {
    const [answer, answerOn, callBackOn, struck, entered] = rest;
    return {
      ...{ id, customerId, machineId, madeOn, madeBy, way, slipId, saidBy, note, answer, answerOn, callBackOn },
      struck: struck === 1,
      entered,
    };
  });

export const insertContact = (
  w: WritableRecord,
  entryId: number,
  row: Omit<ContactRow, 'id' | 'struck' | 'madeBy' | 'entered'>,
): number => insertInto(w, contacts, { ...row, entryId });

/** Strikes a contact that never was. @throws RefusedError no-such-row, already-put-right */
export const strikeContact = (w: WritableRecord, entryId: number, contactId: number, reason: string): number =>
  strikeOut(w, contacts, lastRowOf(w, 'contacts', contactId), entryId, reason);

// ---- what is to be kept to

export type TermsRow = {
  customerId: number;
  noContact: boolean;
  saidOn: Day;
  words: string;
  distanceKm: number | null;
  driveMinutes: number | null;
  seasonTo: string | null;
};

/** Of every customer that something was said of. */
export const listTerms = (db: ReadableRecord): TermsRow[] =>
  bulk<[number, number, Day, string, number | null, number | null, string | null]>(
    db,
    `SELECT t.customer_id, t.no_contact, t.said_on, t.words, t.distance_km, t.drive_minutes, t.season_to
     FROM contact_terms t WHERE ${counting('contact_terms', 't')} ORDER BY t.id`,
    { knownAt: NOW_KNOWN },
  ).map(([customerId, noContact, saidOn, words, distanceKm, driveMinutes, seasonTo]) => ({
    ...{ customerId, noContact: noContact === 1, saidOn, words, distanceKm, driveMinutes, seasonTo },
  }));

/** Keeps them in the place of those before. */
export function saveTerms(w: WritableRecord, entryId: number, { customerId, ...row }: TermsRow): void {
  const last = bulk<[number]>(
    w,
    `SELECT t.id FROM contact_terms t WHERE t.customer_id = @customerId AND ${standing('t')}
       AND ${isLastOfChain('contact_terms', 't')} ORDER BY t.id DESC LIMIT 1`,
    { customerId, knownAt: NOW_KNOWN },
  )[0]?.[0];
  if (last === undefined) insertInto(w, contactTerms, { ...row, customerId, entryId });
  else supersede(w, contactTerms, last, entryId, { ...row, struck: false, reason: '' });
}

export type QuietRow = { id: number; customerId: number; fromOn: Day; toOn: Day; why: string };

export const listQuietPeriods = (db: ReadableRecord): QuietRow[] =>
  bulk<[number, number, Day, Day, string]>(
    db,
    `SELECT ${chainOf('q')}, q.customer_id, q.from_on, q.to_on, q.why FROM quiet_periods q
     WHERE ${counting('quiet_periods', 'q')} ORDER BY q.from_on, q.id`,
    { knownAt: NOW_KNOWN },
  ).map(([id, customerId, fromOn, toOn, why]) => ({ id, customerId, fromOn, toOn, why }));

export const insertQuiet = (w: WritableRecord, entryId: number, row: Omit<QuietRow, 'id'>): number =>
  insertInto(w, quietPeriods, { ...row, entryId });

/** Strikes a quiet period. @throws RefusedError no-such-row, already-put-right */
export const strikeQuiet = (w: WritableRecord, entryId: number, quietId: number, reason: string): number =>
  strikeOut(w, quietPeriods, lastRowOf(w, 'quiet_periods', quietId), entryId, reason);

/** The row of a chain that stands last; its first where none does, which is then refused by name. */
const lastRowOf = (db: ReadableRecord, table: 'contacts' | 'quiet_periods', chainId: number): number =>
  bulk<[number]>(
    db,
    `SELECT r.id FROM ${table} r WHERE ${ofChain('r', '@chainId')} AND ${standing('r')} ORDER BY r.id DESC LIMIT 1`,
    { chainId, knownAt: NOW_KNOWN },
  )[0]?.[0] ?? chainId;

// ---- how early the shop calls

/** Four weeks: parts come, a week is free, the work is done (common practice, no source). */
const USUAL_LEAD_DAYS = 28;

export const leadDaysOf = (db: ReadableRecord): number =>
  bulk<[number]>(db, `SELECT s.lead_days FROM recall_settings s WHERE ${standing('s')} ORDER BY s.id DESC LIMIT 1`, {
    knownAt: NOW_KNOWN,
  })[0]?.[0] ?? USUAL_LEAD_DAYS;

export const saveLeadDays = (w: WritableRecord, entryId: number, leadDays: number): number =>
  insertInto(w, recallSettings, { entryId, leadDays });
