import { eq, sql } from 'drizzle-orm';
import { bulk } from './bulk.ts';
import { counting, NOW_KNOWN } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { customers } from './schema.ts';

export type CustomerOnRecord = typeof customers.$inferSelect;

/** All customers, by name. */
export const listCustomers = (db: ReadableRecord): CustomerOnRecord[] =>
  db.read.select().from(customers).orderBy(sql`name COLLATE NOCASE`, customers.id).all();

export const readCustomer = (db: ReadableRecord, id: number): CustomerOnRecord | null =>
  db.read.select().from(customers).where(eq(customers.id, id)).get() ?? null;

export const insertCustomer = (w: WritableRecord, customer: Omit<CustomerOnRecord, 'id'>): number =>
  insertInto(w, customers, customer);

/** Whose machine it is on a day (absent: now); null: nobody's on record. */
export function customerOfMachine(db: ReadableRecord, machineId: number, asOf = '9999-12-31'): CustomerOnRecord | null {
  const owner = bulk<[customerId: number]>(
    db,
    `SELECT o.customer_id FROM ownerships o
     WHERE o.machine_id = @machineId AND (o.from_on IS NULL OR o.from_on <= @asOf) AND ${counting('ownerships', 'o')}
     ORDER BY o.from_on DESC, o.id DESC LIMIT 1`,
    { machineId, asOf, knownAt: NOW_KNOWN },
  )[0];
  return owner ? readCustomer(db, owner[0]) : null;
}
