import type { RenewalWork, VisitStands, VisitWeek } from '../shop/visit.ts';
import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { chainOf, counting, isLastOfChain, NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { customerAway, planSettings, plans, planVisits, planWeeks } from './schema.ts';
import { strikeOut, supersede } from './supersede.ts';

/** A machine's visit as it stands. `id` is the first row of its chain, `rowId` the one to be put right. */
export type VisitRow = {
  id: number;
  rowId: number;
  machineId: number;
  /** year in which its winter begins */
  winterYear: number;
  stands: VisitStands;
  /** in order; empty: no week yet */
  weeks: readonly VisitWeek[];
  promisedOn: Day | null;
  /** as the contract's work of a visit */
  work: unknown;
  saidBy: string;
  note: string;
  /** done at the farm */
  atFarm: boolean;
};

/** Every visit that stands, of all winters, by winter, first week and machine. An agreed one is booked. */
export const listVisits = (db: ReadableRecord): VisitRow[] =>
  bulk<[number, number, number, number, VisitStands, string, Day | null, string, string, string, number]>(
    db,
    `SELECT ${chainOf('v')}, v.id, v.machine_id, v.winter_year, v.stands, v.weeks, v.promised_on, v.work, v.said_by, v.note,
       v.at_farm
     FROM plan_visits v WHERE ${counting('plan_visits', 'v')}
     ORDER BY v.winter_year, json_extract(v.weeks, '$[0].weekFrom') IS NULL, json_extract(v.weeks, '$[0].weekFrom'),
       v.machine_id, ${chainOf('v')}`,
    { knownAt: NOW_KNOWN },
  ).map(([id, rowId, machineId, winterYear, stands, weeks, promisedOn, work, saidBy, note, atFarm]) => ({
    ...{ id, rowId, machineId, winterYear, stands, promisedOn, saidBy, note, atFarm: atFarm === 1 },
    weeks: JSON.parse(weeks),
    work: JSON.parse(work),
  }));

export type VisitFacts = Omit<VisitRow, 'id' | 'rowId'>;

export const insertVisit = (w: WritableRecord, entryId: number, { weeks, ...row }: VisitFacts): number =>
  insertInto(w, planVisits, { ...row, weeks: [...weeks], entryId });

/** Puts a visit in the place of what it was. @returns its new row */
export const changeVisit = (
  w: WritableRecord,
  entryId: number,
  rowId: number,
  { weeks, ...changes }: Partial<Omit<VisitFacts, 'machineId'>>,
  reason: string,
): number => supersede(w, planVisits, rowId, entryId, { ...changes, ...(weeks && { weeks: [...weeks] }), reason });

export const strikeVisit = (w: WritableRecord, entryId: number, rowId: number, reason: string): number =>
  strikeOut(w, planVisits, rowId, entryId, reason);

export type PlanRow = { id: number; madeOn: Day; winterYear: number; facts: unknown };

/** The plan proposed last; null: none yet. Who reads its facts checks them against the contract. */
export const lastPlan = (db: ReadableRecord): PlanRow | null =>
  bulk<[number, Day, number, string]>(
    db,
    `SELECT p.id, p.made_on, p.winter_year, p.facts FROM plans p WHERE ${standing('p')} ORDER BY p.id DESC LIMIT 1`,
    { knownAt: NOW_KNOWN },
  ).map(([id, madeOn, winterYear, facts]) => ({ id, madeOn, winterYear, facts: JSON.parse(facts) }))[0] ?? null;

export const insertPlan = (w: WritableRecord, entryId: number, row: Omit<PlanRow, 'id'>): number =>
  insertInto(w, plans, { ...row, entryId });

/** What the shop has set of the plan: only what differs from the program's own. */
export type PlanSettingsRow = { changed: Readonly<Record<string, number>>; renewals: readonly RenewalWork[] };

export const readPlanSettings = (db: ReadableRecord): PlanSettingsRow => {
  const row = bulk<[string, string]>(
    db,
    `SELECT s.changed, s.renewals FROM plan_settings s WHERE ${counting('plan_settings', 's')} ORDER BY s.id DESC LIMIT 1`,
    { knownAt: NOW_KNOWN },
  )[0];
  return row ? { changed: JSON.parse(row[0]), renewals: JSON.parse(row[1]) } : { changed: {}, renewals: [] };
};

/** Saves them whole, in place of what was saved before. */
export const savePlanSettings = (
  w: WritableRecord,
  entryId: number,
  { changed, renewals }: PlanSettingsRow,
  reason: string,
): void => {
  const row = { changed: { ...changed }, renewals: [...renewals], struck: false, reason };
  const last = lastRow(w, 'plan_settings');
  if (last === null) insertInto(w, planSettings, { ...row, entryId });
  else supersede(w, planSettings, last, entryId, row);
};

/** A week with other hours than usual. */
export type PlanWeekRow = { weekFrom: Day; benchHours: number; note: string };

export const listPlanWeeks = (db: ReadableRecord): PlanWeekRow[] =>
  bulk<[Day, number, string]>(
    db,
    `SELECT w.week_from, w.bench_hours, w.note FROM plan_weeks w WHERE ${counting('plan_weeks', 'w')} ORDER BY w.week_from`,
    { knownAt: NOW_KNOWN },
  ).map(([weekFrom, benchHours, note]) => ({ weekFrom, benchHours, note }));

/** Sets a week's hours; null: the usual ones again. */
export function savePlanWeek(
  w: WritableRecord,
  entryId: number,
  { weekFrom, benchHours, note }: Omit<PlanWeekRow, 'benchHours'> & { benchHours: number | null },
): void {
  const last = lastRow(w, 'plan_weeks', 'week_from', weekFrom);
  if (benchHours === null) {
    if (last !== null) strikeOut(w, planWeeks, last, entryId, note);
  } else if (last === null) insertInto(w, planWeeks, { weekFrom, benchHours, note, entryId });
  else supersede(w, planWeeks, last, entryId, { benchHours, note, struck: false, reason: '' });
}

/** Days in which a customer's machines cannot come in. `id` is the first row of its chain. */
export type AwayRow = { id: number; rowId: number; customerId: number; fromOn: Day; toOn: Day; note: string };

export const listAway = (db: ReadableRecord): AwayRow[] =>
  bulk<[number, number, number, Day, Day, string]>(
    db,
    `SELECT ${chainOf('a')}, a.id, a.customer_id, a.from_on, a.to_on, a.note FROM customer_away a
     WHERE ${counting('customer_away', 'a')} ORDER BY a.from_on, ${chainOf('a')}`,
    { knownAt: NOW_KNOWN },
  ).map(([id, rowId, customerId, fromOn, toOn, note]) => ({ id, rowId, customerId, fromOn, toOn, note }));

export const insertAway = (w: WritableRecord, entryId: number, row: Omit<AwayRow, 'id' | 'rowId'>): number =>
  insertInto(w, customerAway, { ...row, entryId });

export const strikeAway = (w: WritableRecord, entryId: number, rowId: number, reason: string): number =>
  strikeOut(w, customerAway, rowId, entryId, reason);

/** Last row of a chain, struck or not: the one the next takes the place of. */
function lastRow(
  db: ReadableRecord,
  table: 'plan_settings' | 'plan_weeks',
  column: 'week_from' | null = null,
  value: string | null = null,
): number | null {
  const row = bulk<[number]>(
    db,
    `SELECT r.id FROM ${table} r WHERE ${column === null ? '@value IS NULL' : `r.${column} = @value`}
     AND ${standing('r')} AND ${isLastOfChain(table, 'r')} ORDER BY r.id DESC LIMIT 1`,
    { value, knownAt: NOW_KNOWN },
  )[0];
  return row?.[0] ?? null;
}
