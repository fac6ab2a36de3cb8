import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { openRecord } from '#core/record/openRecord.ts';

/** One test for each migration: what it adds, reached from the version before. */
const MIGRATIONS = join(import.meta.dirname, '..', '..', 'migrations');

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'migrations-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

type Journal = { entries: { tag: string }[] };

/** The migrations as they were when there were only so many. */
function firstMigrations(count: number): string {
  const target = join(folder, `first-${count}`);
  cpSync(MIGRATIONS, target, { recursive: true });
  const file = join(target, 'meta', '_journal.json');
  const journal = JSON.parse(readFileSync(file, 'utf8')) as Journal;
  writeFileSync(file, JSON.stringify({ ...journal, entries: journal.entries.slice(0, count) }));
  return target;
}

const recordAt = (count: number) =>
  openRecord(join(folder, 'shop.hoursandwear'), { create: true, migrationsFolder: firstMigrations(count) });

const namesOf = (record: ReturnType<typeof recordAt>, type: string): string[] =>
  record.sqlite.prepare('SELECT name FROM sqlite_schema WHERE type = ? ORDER BY name').pluck().all(type) as string[];

describe('migrations', () => {
  test('0000_shop lays down the tables of a shop', () => {
    const record = recordAt(1);
    expect(namesOf(record, 'table')).toEqual(
      expect.arrayContaining(['entries', 'machines', 'dial_readings', 'sizes', 'renewals', 'findings', 'slips']),
    );
    expect(namesOf(record, 'trigger')).toEqual([]);
    record.close();
  });

  test('0001_rows_stand makes rows that feed a forecast stay as written, those there before too', () => {
    const before = recordAt(1);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO machines (entry_id, name, make, model, serial, note) VALUES (1, 'M', '', '', '', '');
      INSERT INTO dial_readings (machine_id, taken_on, kind, dial_hours, said_by, entry_id) VALUES (1, '2026-01-01', 'reading', 10, '', 1)`);
    before.close();
    const record = recordAt(2);
    expect(() => record.sqlite.exec('UPDATE dial_readings SET dial_hours = 11')).toThrow(/stay as written/);
    expect(() => record.sqlite.exec('DELETE FROM dial_readings')).toThrow(/never deleted/);
    expect(record.sqlite.prepare('SELECT dial_hours FROM dial_readings').pluck().get()).toBe(10);
    record.close();
  });

  test('0002_sheet_mappings keeps how sheets were read; what is in the record stays', () => {
    const before = recordAt(2);
    before.sqlite.exec("INSERT INTO customers (name, place, address, phone, email) VALUES ('C', '', '', '', '')");
    before.close();
    const record = recordAt(3);
    record.sqlite.exec("INSERT INTO sheet_mappings (noun, heads, mapping, kept_at) VALUES ('sizes', '[]', '{}', '')");
    expect(record.sqlite.prepare('SELECT name FROM customers').pluck().get()).toBe('C');
    record.close();
  });

  test('there is a test for each', () => {
    const journal = JSON.parse(readFileSync(join(MIGRATIONS, 'meta', '_journal.json'), 'utf8')) as Journal;
    const told = readFileSync(import.meta.filename, 'utf8');
    expect(journal.entries.length).toBeGreaterThan(0);
    for (const { tag } of journal.entries) expect(told).toContain(`test('${tag} `);
  });
});
