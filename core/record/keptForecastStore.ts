import { and, eq, inArray, isNull } from 'drizzle-orm';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { entries, keptForecasts } from './schema.ts';

export type KeptForecastOnRecord = typeof keptForecasts.$inferSelect;

/** Keeps a forecast as it stood; the row is never changed. */
export const insertKeptForecast = (w: WritableRecord, row: Omit<KeptForecastOnRecord, 'id'>): number =>
  insertInto(w, keptForecasts, row);

/** All that stand, oldest first: those of an entry that was undone are left out. @param pointIds null: of every point */
export const keptForecastsOf = (
  db: ReadableRecord,
  pointIds: readonly number[] | null = null,
): KeptForecastOnRecord[] =>
  db.read
    .select({ kept: keptForecasts })
    .from(keptForecasts)
    .leftJoin(entries, eq(entries.id, keptForecasts.entryId))
    .where(and(isNull(entries.undoneAt), pointIds === null ? undefined : inArray(keptForecasts.pointId, [...pointIds])))
    .orderBy(keptForecasts.id)
    .all()
    .map(({ kept }) => kept);
