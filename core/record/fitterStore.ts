import { eq, sql } from 'drizzle-orm';
import { assertInvariant } from '../outcome.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { fitters } from './schema.ts';

export type FitterOnRecord = typeof fitters.$inferSelect;

export const listFitters = (db: ReadableRecord): FitterOnRecord[] =>
  db.read.select().from(fitters).orderBy(sql`name COLLATE NOCASE`).all();

export function saveFitter(w: WritableRecord, id: number | null, fitter: Omit<FitterOnRecord, 'id'>): number {
  if (id === null) return insertInto(w, fitters, fitter);
  const done = w.write.update(fitters).set(fitter).where(eq(fitters.id, id)).run();
  assertInvariant(done.changes === 1, 'the fitter to be changed is in the record');
  return id;
}
