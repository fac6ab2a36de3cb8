import { eq, sql } from 'drizzle-orm';
import { assertInvariant } from '../outcome.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { assemblyKinds } from './schema.ts';

/** An assembly kind as it is kept; who reads its template checks it against the contract. */
export type KindOnRecord = { id: number; name: string; template: unknown };

export const listKinds = (db: ReadableRecord): KindOnRecord[] =>
  db.read.select().from(assemblyKinds).orderBy(sql`name COLLATE NOCASE`).all();

export function saveKind(w: WritableRecord, id: number | null, kind: Omit<KindOnRecord, 'id'>): number {
  if (id === null) return insertInto(w, assemblyKinds, kind);
  const done = w.write.update(assemblyKinds).set(kind).where(eq(assemblyKinds.id, id)).run();
  assertInvariant(done.changes === 1, 'the kind to be changed is in the record');
  return id;
}
