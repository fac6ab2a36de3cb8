import { mkdtempSync, readFileSync, rmSync, truncateSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Database from 'better-sqlite3';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { RefusedError } from '#core/outcome.ts';
import { APPLICATION_ID } from '#core/record/applicationId.ts';
import { writePlain } from '#core/record/entry.ts';
import { saveFitter } from '#core/record/fitterStore.ts';
import { openRecord, schemaVersion } from '#core/record/openRecord.ts';
import type { ReadableRecord } from '#core/record/recordFile.ts';
import { aRecord } from '#tests/support/aRecord.ts';

const aWrite = (record: ReadableRecord) => writePlain(record, (w) => saveFitter(w, null, { name: 'Bo', active: true }));

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'record-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

const refusalOf = (run: () => unknown): string => {
  try {
    run();
  } catch (thrown) {
    if (thrown instanceof RefusedError) return thrown.refusal.code;
    throw thrown;
  }
  return 'none';
};

describe('opening a record', () => {
  test('a commit is on the disk before it is acknowledged, and rows cannot lose what they refer to', () => {
    const record = aRecord(join(folder, 'shop.hoursandwear'));
    expect(record.sqlite.pragma('journal_mode', { simple: true })).toBe('wal');
    expect(record.sqlite.pragma('synchronous', { simple: true })).toBe(2); // FULL
    expect(record.sqlite.pragma('foreign_keys', { simple: true })).toBe(1);
    expect(record.sqlite.pragma('application_id', { simple: true })).toBe(APPLICATION_ID);
    expect(record.sqlite.pragma('user_version', { simple: true })).toBe(schemaVersion());
    record.close();
  });

  test('every table of ours is strict: a word in a number column is refused', () => {
    const record = aRecord();
    const loose = record.sqlite
      .prepare(
        "SELECT name FROM pragma_table_list WHERE type = 'table' AND schema = 'main' AND strict = 0 AND name NOT LIKE 'sqlite%'",
      )
      .pluck()
      .all();
    expect(loose).toEqual(['__drizzle_migrations']);
    expect(() =>
      record.sqlite
        .prepare("INSERT INTO gauges (name, error_mm, step_mm, measures, active) VALUES ('x', 'wide', 0, '[]', 1)")
        .run(),
    ).toThrow(/REAL/);
    record.close();
  });

  test('what was written is there after closing, in the one file', () => {
    const path = join(folder, 'shop.hoursandwear');
    const record = aRecord(path);
    const gauges = record.sqlite.prepare('SELECT count(*) FROM gauges').pluck().get();
    record.close();
    const copy = join(folder, 'copy.hoursandwear');
    writeFileSync(copy, readFileSync(path));
    const again = openRecord(copy);
    expect(again.sqlite.prepare('SELECT count(*) FROM gauges').pluck().get()).toBe(gauges);
    again.close();
  });

  test('a record of a later program is refused, untouched', () => {
    const path = join(folder, 'later.hoursandwear');
    aRecord(path).close();
    const later = new Database(path);
    later.pragma(`user_version = ${schemaVersion() + 1}`);
    later.pragma('journal_mode = DELETE');
    later.close();
    const before = readFileSync(path);
    expect(refusalOf(() => openRecord(path))).toBe('record-newer');
    expect(readFileSync(path).equals(before)).toBe(true);
  });

  test('a file that is no record is refused, untouched', () => {
    const text = join(folder, 'letter.hoursandwear');
    writeFileSync(text, 'Dear Sir, '.repeat(500));
    expect(refusalOf(() => openRecord(text))).toBe('not-a-record');
    expect(readFileSync(text, 'utf8')).toBe('Dear Sir, '.repeat(500));

    const other = join(folder, 'other.db');
    const sqlite = new Database(other);
    sqlite.exec('CREATE TABLE songs (name TEXT)');
    sqlite.close();
    const before = readFileSync(other);
    expect(refusalOf(() => openRecord(other, { create: true }))).toBe('not-a-record');
    expect(readFileSync(other).equals(before)).toBe(true);

    expect(refusalOf(() => openRecord(join(folder, 'nowhere.hoursandwear')))).toBe('no-such-record');
  });

  test('a record cut short is refused as damaged', () => {
    const path = join(folder, 'cut.hoursandwear');
    aRecord(path).close();
    truncateSync(path, 6000);
    expect(['record-damaged', 'not-a-record']).toContain(refusalOf(() => openRecord(path)));
  });

  test('a record left half way through its laying down is brought on at the next opening', () => {
    const path = join(folder, 'half.hoursandwear');
    aRecord(path).close();
    const half = new Database(path);
    half.pragma('user_version = 0');
    half.close();
    const backedUp: number[] = [];
    const record = openRecord(path, { beforeMigrating: (_path, from) => backedUp.push(from) });
    expect(record.sqlite.pragma('user_version', { simple: true })).toBe(schemaVersion());
    expect(backedUp).toEqual([0]);
    record.close();
  });

  test('a record another program is writing to is waited for, then refused as in use', () => {
    const path = join(folder, 'busy.hoursandwear');
    const mine = aRecord(path);
    const other = new Database(path);
    other.exec('BEGIN IMMEDIATE');
    expect(refusalOf(() => mine.sqlite.pragma('busy_timeout = 50') && aWrite(mine))).toBe('record-in-use');
    other.exec('ROLLBACK');
    other.close();
    mine.close();
  });
});
