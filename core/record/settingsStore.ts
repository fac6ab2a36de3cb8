import { eq } from 'drizzle-orm';
import { assertInvariant } from '../outcome.ts';
import { bulk } from './bulk.ts';
import { NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { shopSettings } from './schema.ts';

export type Settings = Omit<typeof shopSettings.$inferSelect, 'id' | 'entryId'>;

/** The settings as last saved; asked of a time before the first entry, the settings the record began with. */
export function readSettings(db: ReadableRecord, knownAt = NOW_KNOWN): Settings {
  const lastKnown = bulk<[id: number | null]>(
    db,
    `SELECT COALESCE(max(s.id), (SELECT min(id) FROM shop_settings)) FROM shop_settings s WHERE ${standing('s')}`,
    { knownAt },
  )[0]?.[0];
  const row = db.read
    .select()
    .from(shopSettings)
    .where(eq(shopSettings.id, lastKnown ?? 0))
    .get();
  assertInvariant(row, 'a record has settings from its first entry on');
  const { id: _, entryId: __, ...settings } = row;
  return settings;
}

export const saveSettings = (w: WritableRecord, entryId: number, settings: Settings): number =>
  insertInto(w, shopSettings, { ...settings, entryId });
