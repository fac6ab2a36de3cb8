import { writeEntry } from '#core/record/entry.ts';
import { saveForecastSettings } from '#core/record/forecastSettingsStore.ts';
import { openRecord } from '#core/record/openRecord.ts';
import { laySyntheticRecord } from '#tests/bench/syntheticRecord.ts';

/** A class is learned from so many machines there: more of them make a shop a large one. */
const HEARD = 30;

/** A shop that counts as large and is forecast quickly: machines of two points, measured three times. */
export function layLargeShop(path: string, machines: number): void {
  laySyntheticRecord(path, { machines, points: 2, visits: 3 });
  const record = openRecord(path);
  writeEntry(
    record,
    { madeAt: '2026-11-01T09:00:00.000Z', madeBy: 'test', what: 'forecastSettings/save' },
    (w, entryId) =>
      saveForecastSettings(w, entryId, { changed: { machinesPerClass: HEARD }, workTypes: [] }, 'a small large shop'),
  );
  record.close();
}
