import { type ForecastSettings, USUAL_FORECAST_SETTINGS } from '../shop/forecastSettings.ts';
import { bulk } from './bulk.ts';
import { counting, NOW_KNOWN } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { forecastSettings } from './schema.ts';
import { supersede } from './supersede.ts';

/** What the shop has set in its forecasts, as last saved; the program's own until then, and once that was undone. */
export const readForecastSettings = (db: ReadableRecord, knownAt = NOW_KNOWN): ForecastSettings =>
  lastRow(db, knownAt)?.settings ?? USUAL_FORECAST_SETTINGS;

function lastRow(db: ReadableRecord, knownAt: string): { id: number; settings: ForecastSettings } | null {
  const [row] = bulk<[id: number, changed: string, workTypes: string]>(
    db,
    `SELECT f.id, f.changed, f.work_types FROM forecast_settings f WHERE ${counting('forecast_settings', 'f')} ORDER BY f.id DESC LIMIT 1`,
    { knownAt },
  );
  if (!row) return null;
  const [id, changed, workTypes] = row;
  return { id, settings: { changed: JSON.parse(changed), workTypes: JSON.parse(workTypes) } };
}

/** Saves them whole, in place of what was saved before; that stays in the record. */
export function saveForecastSettings(
  w: WritableRecord,
  entryId: number,
  { changed, workTypes }: ForecastSettings,
  reason: string,
): number {
  const row = { changed: { ...changed }, workTypes: [...workTypes] };
  const last = lastRow(w, NOW_KNOWN);
  return last
    ? supersede(w, forecastSettings, last.id, entryId, { ...row, reason })
    : insertInto(w, forecastSettings, { ...row, entryId, reason });
}
