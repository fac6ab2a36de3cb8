import { desc, eq } from 'drizzle-orm';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { drafts } from './schema.ts';

/** A strip-down as typed so far on a machine, and when that was kept; null: none. Who reads it checks it against the contract. */
export const readDraft = (db: ReadableRecord, machineId: number): { draft: unknown; keptAt: string } | null =>
  db.read.select().from(drafts).where(eq(drafts.machineId, machineId)).get() ?? null;

/** Every strip-down typed and not saved, the last one kept first. */
export const listDrafts = (db: ReadableRecord): { machineId: number; draft: unknown; keptAt: string }[] =>
  db.read.select().from(drafts).orderBy(desc(drafts.keptAt)).all();

/** Keeps it in place of the one before: one a machine. */
export const keepDraft = (w: WritableRecord, machineId: number, draft: unknown, keptAt: string): void => {
  w.write
    .insert(drafts)
    .values({ machineId, draft, keptAt })
    .onConflictDoUpdate({ target: drafts.machineId, set: { draft, keptAt } })
    .run();
};

/** @returns whether there was one */
export const dropDraft = (w: WritableRecord, machineId: number): boolean =>
  w.write.delete(drafts).where(eq(drafts.machineId, machineId)).run().changes > 0;
