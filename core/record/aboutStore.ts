import { randomUUID } from 'node:crypto';
import { assertInvariant } from '../outcome.ts';
import { bulk } from './bulk.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { recordAbout } from './schema.ts';

export type About = { identity: string; isDemo: boolean; startedAt: string };

/** Which record this is; null: nothing was ever laid down in it. */
export const readAbout = (db: ReadableRecord): About | null => db.read.select().from(recordAbout).get() ?? null;

/** Gives a new record its identity, once. */
export function insertAbout(w: WritableRecord, about: Omit<About, 'identity'>): void {
  assertInvariant(readAbout(w) === null, 'a record is laid down once');
  insertInto(w, recordAbout, { id: 1, identity: randomUUID(), ...about });
}

export type RecordCounts = { customers: number; machines: number; points: number; sizes: number; findings: number };

/** Counted in indexes, which is quick: of a large record they are looked at after every entry. */
const things = (table: string): string =>
  `(SELECT count(*) FROM ${table}) - (SELECT count(*) FROM ${table} WHERE chain_id IS NOT NULL)`;

/** How many rows the record holds; a size put right counts once. */
export function countRows(db: ReadableRecord): RecordCounts {
  const row = bulk<[number, number, number, number, number]>(
    db,
    `SELECT (SELECT count(*) FROM customers), (SELECT count(*) FROM machines), (SELECT count(*) FROM measuring_points),
       ${things('sizes')}, ${things('findings')}`,
    {},
  )[0];
  assertInvariant(row, 'counting gives one row');
  const [customers, machines, points, sizes, findings] = row;
  return { customers, machines, points, sizes, findings };
}
