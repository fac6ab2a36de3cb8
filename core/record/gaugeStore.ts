import { eq, sql } from 'drizzle-orm';
import { assertInvariant } from '../outcome.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { gauges } from './schema.ts';

export type GaugeOnRecord = typeof gauges.$inferSelect;

/** All gauges by name; `errorMm` is 1 sd. */
export const listGauges = (db: ReadableRecord): GaugeOnRecord[] =>
  db.read.select().from(gauges).orderBy(sql`name COLLATE NOCASE`).all();

/** Adds a gauge, or changes one: sizes already taken keep the error it had. */
export function saveGauge(w: WritableRecord, id: number | null, gauge: Omit<GaugeOnRecord, 'id'>): number {
  if (id === null) return insertInto(w, gauges, gauge);
  const done = w.write.update(gauges).set(gauge).where(eq(gauges.id, id)).run();
  assertInvariant(done.changes === 1, 'the gauge to be changed is in the record');
  return id;
}
