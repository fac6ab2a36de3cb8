import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { openRecord, schemaVersion } from '#core/record/openRecord.ts';
import { day } from '#core/units/day.ts';
import { layDownShop } from '#core/use-cases/newShop.ts';
import { brought, MADE_AT } from '#tests/support/aRecord.ts';
import { AS_OF, aShop } from './aShop.ts';

/**
 * Lays down the record file of the newest schema version beside this script: once for each migration, before what comes
 * after it is written. A file that is there is kept: later programs must open it as it was made.
 *
 *   node tests/record/versions/make.ts [VERSION]
 */
const MIGRATIONS = join(import.meta.dirname, '..', '..', '..', 'migrations');

/** The migrations as they were when there were only so many. */
export function firstMigrations(count: number, into: string): string {
  const target = join(into, `first-${count}`);
  cpSync(MIGRATIONS, target, { recursive: true });
  const file = join(target, 'meta', '_journal.json');
  const journal = JSON.parse(readFileSync(file, 'utf8')) as { entries: unknown[] };
  writeFileSync(file, JSON.stringify({ ...journal, entries: journal.entries.slice(0, count) }));
  return target;
}

export const fileOfVersion = (version: number): string => join(import.meta.dirname, `version-${version}.hoursandwear`);

function make(version: number): void {
  const file = fileOfVersion(version);
  if (existsSync(file)) throw new Error(`${file} is there already`);
  const folder = mkdtempSync(join(tmpdir(), 'version-'));
  try {
    const record = openRecord(file, { create: true, migrationsFolder: firstMigrations(version, folder) });
    layDownShop(record, MADE_AT, { isDemo: false });
    const { faults } = brought(record, aShop(), { asOf: day(AS_OF) });
    if (faults.length > 0) throw new Error(JSON.stringify(faults));
    // the layouts of assemblies a new shop starts with are long, and nothing here rests on them
    record.sqlite.exec(
      'DELETE FROM assembly_kinds WHERE id NOT IN (SELECT kind_id FROM assemblies WHERE kind_id NOT NULL)',
    );
    record.sqlite.exec('VACUUM');
    record.close();
  } finally {
    rmSync(folder, { recursive: true });
  }
}

if (import.meta.main) make(Number(process.argv[2] ?? schemaVersion()));
