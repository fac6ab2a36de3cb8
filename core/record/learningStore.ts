import { eq } from 'drizzle-orm';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { learnings } from './schema.ts';

/** What was learned under a key, and of what; null: nothing yet. Who reads it compares the fingerprint. */
export const readLearning = (db: ReadableRecord, key: string): { fingerprint: string; learning: unknown } | null =>
  db.read
    .select({ fingerprint: learnings.fingerprint, learning: learnings.learning })
    .from(learnings)
    .where(eq(learnings.key, key))
    .get() ?? null;

/** Of what something was learned, without reading it; null: nothing yet. */
export const fingerprintKept = (db: ReadableRecord, key: string): string | null =>
  db.read.select({ fingerprint: learnings.fingerprint }).from(learnings).where(eq(learnings.key, key)).get()
    ?.fingerprint ?? null;

export const keepLearning = (w: WritableRecord, key: string, fingerprint: string, learning: unknown): void => {
  w.write
    .insert(learnings)
    .values({ key, fingerprint, learning })
    .onConflictDoUpdate({ target: learnings.key, set: { fingerprint, learning } })
    .run();
};
