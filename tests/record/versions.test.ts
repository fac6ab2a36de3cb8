import { copyFileSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { forecastAll } from '#core/contract/forecast.ts';
import { machinesList } from '#core/contract/machine.ts';
import { recordBackups, recordState } from '#core/contract/record.ts';
import { stripDownSave, stripDownSheet } from '#core/contract/stripDown.ts';
import { RefusedError } from '#core/outcome.ts';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import { openRecord, schemaVersion } from '#core/record/openRecord.ts';
import type { ReadableRecord } from '#core/record/recordFile.ts';
import { day } from '#core/units/day.ts';
import { aSize } from '#tests/support/aHitch.ts';
import { aProgramAt, type Program } from '#tests/support/aProgram.ts';
import { aRecord, brought } from '#tests/support/aRecord.ts';
import { forecastCoarsely } from '#tests/support/coarseForecasts.ts';
import { AS_OF, aShop } from './versions/aShop.ts';
import { fileOfVersion, firstMigrations } from './versions/make.ts';

/** Records as each version of the program left them, kept as files beside the script that made them. */
const VERSIONS = Array.from({ length: schemaVersion() }, (_, n) => n + 1);

let folder = '';
let path = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'versions-'));
  path = join(folder, 'shop.hoursandwear');
});
afterEach(() => rmSync(folder, { recursive: true }));

const versionOf = (file: string): unknown => {
  const sqlite = new Database(file, { readonly: true });
  try {
    return sqlite.pragma('user_version', { simple: true });
  } finally {
    sqlite.close();
  }
};

/** What forecasts rest on in the same shop laid down afresh; its classes may start from other figures by now. */
function theSameShop() {
  const record = aRecord();
  try {
    expect(brought(record, aShop(), { asOf: day(AS_OF) }).faults).toEqual([]);
    return shopIn(record);
  } finally {
    record.close();
  }
}

function shopIn(record: ReadableRecord) {
  const { machines, points, findings } = loadShopLife(record);
  return { machines, points, findings };
}

describe('a record of every version of the program', () => {
  test('is kept as a file', () => {
    const kept = readdirSync(join(import.meta.dirname, 'versions')).filter((name) => name.endsWith('.hoursandwear'));
    expect(kept.sort()).toEqual(VERSIONS.map((version) => `version-${version}.hoursandwear`).sort());
  });

  type Row = Record<string, unknown>;
  let taught: Row[] = [];
  const putRows = ({ context }: Program, rows: readonly Row[]) => {
    const columns = Object.keys(rows[0]!);
    const put = context.record!.sqlite.prepare(
      `INSERT OR REPLACE INTO learnings (${columns}) VALUES (${columns.map((name) => `@${name}`)})`,
    );
    for (const row of rows) put.run(row);
  };

  test.each(VERSIONS)('version %i opens, holds the same shop, forecasts, and takes entries', async (version) => {
    copyFileSync(fileOfVersion(version), path);
    expect(versionOf(path)).toBe(version);
    const bytes = readFileSync(path);
    const program = aProgramAt(path, AS_OF);
    try {
      expect(await program.ask(recordState, {})).toMatchObject({ open: true, trouble: null, counts: { machines: 2 } });
      expect(shopIn(program.context.record!)).toEqual(theSameShop());
      forecastCoarsely(program.context.record!);
      // what one of them taught holds for the same shop in another, by its fingerprint; else it is learned again
      if (taught.length > 0) putRows(program, taught);
      const forecasts = await program.ask(forecastAll, {});
      taught = program.context.record!.sqlite.prepare('SELECT * FROM learnings').all() as Row[];
      expect(forecasts.rows).toHaveLength(3);
      for (const { hoursLeft } of forecasts.rows) expect(hoursLeft.middle).toEqual(expect.any(Number));
      const machineId = (await program.ask(machinesList, {})).machines[0]!.machineId;
      const { rows } = await program.ask(stripDownSheet, { machineId });
      await program.ask(stripDownSave, {
        ...{ machineId, takenOn: AS_OF, dialHours: null, dialSure: true, fitter: 'Bo', note: '' },
        ...{ sizes: [aSize(rows[0]!.pointId, 38.9)], renewals: [], findings: [] },
      });
      const { backups } = await program.ask(recordBackups, {});
      const older = backups.filter(({ kind }) => kind === 'before-migrating');
      expect(older.map(({ file }) => versionOf(file))).toEqual(version < schemaVersion() ? [version] : []);
      expect(program.defects).toEqual([]);
    } finally {
      program.end();
    }
    expect(versionOf(path)).toBe(schemaVersion());
    expect(readFileSync(fileOfVersion(version)).equals(bytes)).toBe(true);
    expect(existsSync(`${fileOfVersion(version)}-wal`)).toBe(false);
  });
});

const tables = (file: string) => {
  const db = new Database(file, { readonly: true });
  const found = db.prepare('SELECT name, sql FROM sqlite_schema ORDER BY name').all();
  const customers = db.prepare('SELECT count(*) FROM customers').pluck().get();
  db.close();
  return { found, customers };
};

describe('a migration that does not hold', () => {
  /** The first two migrations, and a third that does something it must not. */
  function withLast(sql: string): string {
    const migrations = firstMigrations(3, folder);
    const last = readdirSync(migrations).find((name) => name.startsWith('0002'))!;
    writeFileSync(join(migrations, last), sql);
    copyFileSync(fileOfVersion(2), path);
    return migrations;
  }

  test.each([
    [
      'breaks off in the middle',
      'CREATE TABLE half (id integer);--> statement-breakpoint\nINSERT INTO nowhere VALUES (1);',
    ],
    [
      'leaves fewer rows than there were',
      'DROP TRIGGER entries_stay; --> statement-breakpoint\nDELETE FROM customers WHERE id = 1;',
    ],
    [
      'leaves rows without what they refer to',
      'DROP TRIGGER sizes_stay_as_written;--> statement-breakpoint\nUPDATE sizes SET point_id = 99999 WHERE id = 1;',
    ],
  ])('and %s leaves the record as it was', (_, sql) => {
    const migrationsFolder = withLast(sql);
    const bytes = readFileSync(path);
    const asItWas = tables(path);
    const open = () => openRecord(path, { migrationsFolder });
    expect(open).toThrow(RefusedError);
    expect(open).toThrow('migration-failed');
    const sqlite = new Database(path);
    sqlite.pragma('journal_mode = DELETE'); // as the kept file lies there
    sqlite.close();
    expect(versionOf(path)).toBe(2);
    expect(tables(path)).toEqual(asItWas);
    expect(readFileSync(path).length).toBe(bytes.length);
  });
});
