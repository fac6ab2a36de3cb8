import Database from 'better-sqlite3';
import { USUAL_FORECAST_SETTINGS } from '#core/shop/forecastSettings.ts';

/** What a shop of a test has set in its forecasts: so few nodes stand for a class there, the fewest a shop may set. */
export const COARSE = { classNodes: 4 };

/**
 * A record that was just laid down forecasts as coarsely as a shop may: a third of the work, or less. For tests of what is done with
 * forecasts; how near they come to the truth is tested with the program's own settings, in tests/reference and tests/accuracy, and so
 * is all that is shown of the demo.
 */
export function forecastCoarsely({ sqlite }: { sqlite: Pick<Database.Database, 'prepare'> }): void {
  sqlite
    .prepare(
      'INSERT INTO forecast_settings (changed, work_types, entry_id) VALUES (?, ?, (SELECT min(id) FROM entries))',
    )
    .run(JSON.stringify(COARSE), JSON.stringify(USUAL_FORECAST_SETTINGS.workTypes));
}

/** The same of a record that a program may have open. */
export function forecastCoarselyAt(recordPath: string): void {
  const sqlite = new Database(recordPath);
  forecastCoarsely({ sqlite });
  sqlite.close();
}
