import { and, eq } from 'drizzle-orm';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { sheetMappings } from './schema.ts';

/** How a sheet with these heads was read last; null: never. Who reads it checks it against the contract. */
export const readMapping = (db: ReadableRecord, noun: string, heads: string[]): unknown =>
  db.read
    .select({ mapping: sheetMappings.mapping })
    .from(sheetMappings)
    .where(and(eq(sheetMappings.noun, noun), eq(sheetMappings.heads, heads)))
    .get()?.mapping ?? null;

/** Keeps it in place of the one before. */
export const keepMapping = (
  w: WritableRecord,
  noun: string,
  heads: string[],
  mapping: unknown,
  keptAt: string,
): void => {
  w.write
    .insert(sheetMappings)
    .values({ noun, heads, mapping, keptAt })
    .onConflictDoUpdate({ target: [sheetMappings.noun, sheetMappings.heads], set: { mapping, keptAt } })
    .run();
};

/** Nouns for which a sheet with these heads was read before. */
export const nounsOfHeads = (db: ReadableRecord, heads: string[]): string[] =>
  db.read
    .select({ noun: sheetMappings.noun })
    .from(sheetMappings)
    .where(eq(sheetMappings.heads, heads))
    .all()
    .map(({ noun }) => noun);
