import { desc, eq, inArray, sql } from 'drizzle-orm';
import type { Day } from '../units/day.ts';
import { bulk } from './bulk.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { slips } from './schema.ts';

export type SlipOnRecord = typeof slips.$inferSelect;

/** Slips are numbered through the year of their making: "2026-014". */
export function nextSlipNumber(db: ReadableRecord, madeOn: Day): string {
  const year = madeOn.slice(0, 4);
  const last = db.read
    .select({ last: sql<number | null>`max(CAST(substr(number, 6) AS INTEGER))` })
    .from(slips)
    .where(sql`number LIKE ${`${year}-%`}`)
    .get()?.last;
  return `${year}-${String((last ?? 0) + 1).padStart(3, '0')}`;
}

/** Keeps a slip as it was made. @param slip its facts, with its number already in them */
export const insertSlip = (w: WritableRecord, slip: Omit<SlipOnRecord, 'id'>): number => insertInto(w, slips, slip);

/** All slips, newest first. */
export const listSlips = (db: ReadableRecord): SlipOnRecord[] =>
  db.read.select().from(slips).orderBy(desc(slips.id)).all();

export const slipsOfMachine = (db: ReadableRecord, machineId: number): SlipOnRecord[] =>
  db.read.select().from(slips).where(eq(slips.machineId, machineId)).orderBy(desc(slips.id)).all();

export const readSlip = (db: ReadableRecord, id: number): SlipOnRecord | null =>
  db.read.select().from(slips).where(eq(slips.id, id)).get() ?? null;

/** How many slips stand under each customer's own id. */
export const slipsByCustomer = (db: ReadableRecord): [customerId: number, count: number][] =>
  bulk(db, 'SELECT customer_id, count(*) FROM slips WHERE customer_id IS NOT NULL GROUP BY customer_id', {});

/** Slips made for any of these customers, oldest first. */
export const slipsOfCustomers = (db: ReadableRecord, customerIds: readonly number[]): SlipOnRecord[] =>
  customerIds.length === 0
    ? []
    : db.read
        .select()
        .from(slips)
        .where(inArray(slips.customerId, [...customerIds]))
        .orderBy(slips.id)
        .all();

/** Numbers of all slips by their ids. */
export const slipNumbers = (db: ReadableRecord): Map<number, string> =>
  new Map(bulk<[number, string]>(db, 'SELECT id, number FROM slips', {}));
