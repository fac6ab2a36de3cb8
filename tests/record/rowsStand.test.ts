import { beforeEach, describe, expect, test } from 'vitest';
import { dialRowsOf, insertDialReading, putDialRight } from '#core/record/dialStore.ts';
import { recordRevision, undoEntry, writeEntry, writePlain } from '#core/record/entry.ts';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import { insertMachine } from '#core/record/machineStore.ts';
import type { OpenRecord } from '#core/record/recordFile.ts';
import { day } from '#core/units/day.ts';
import { aRecord } from '#tests/support/aRecord.ts';

let record: OpenRecord;
let machineId = 0;
const made = (madeAt: string) => ({ madeAt, madeBy: 'Bo', what: 'test' });
const reading = (dialHours: number) => ({
  machineId,
  takenOn: day('2026-03-01'),
  kind: 'reading' as const,
  dialHours,
  newDialHours: null,
  errorHours: null,
  saidBy: 'Bo',
  parked: false,
  question: null,
  inDay: 0,
});
const right = (dialHours: number) => ({
  takenOn: day('2026-03-01'),
  dialHours,
  saidBy: 'Bo',
  reason: 'a digit missed',
  parked: false,
  question: null,
});
const dials = (knownAt?: string) =>
  loadShopLife(record, knownAt === undefined ? {} : { knownAt }).machines.flatMap(({ dialEvents }) =>
    dialEvents.map(({ dialHours }) => dialHours),
  );

beforeEach(() => {
  record = aRecord();
  const machine = { name: 'Loader', make: '', model: '', serial: '', builtYear: null, note: '' };
  machineId = writeEntry(record, made('2026-03-01T10:00:00.000Z'), (w, entryId) => insertMachine(w, entryId, machine));
});

describe('a reading put right', () => {
  test('stays in the record, and the last standing row of its chain counts', () => {
    const first = writeEntry(record, made('2026-03-01T10:00:00.000Z'), (w, e) => insertDialReading(w, e, reading(123)));
    const second = writeEntry(record, made('2026-03-02T10:00:00.000Z'), (w, e) =>
      putDialRight(w, e, first, right(1230)),
    );
    writeEntry(record, made('2026-03-03T10:00:00.000Z'), (w, e) => putDialRight(w, e, second, right(1231)));
    expect(dials()).toEqual([1231]);
    expect(dialRowsOf(record, machineId).map(({ dialHours, superseded }) => [dialHours, superseded])).toEqual([
      [123, true],
      [1230, true],
      [1231, false],
    ]);
    expect(() =>
      writeEntry(record, made('2026-03-04T10:00:00.000Z'), (w, e) => putDialRight(w, e, first, right(5))),
    ).toThrow('already-put-right');
    expect(dials()).toEqual([1231]);
  });

  test('is known from its own time on: what was known before can be asked again', () => {
    const first = writeEntry(record, made('2026-03-02T10:00:00.000Z'), (w, e) => insertDialReading(w, e, reading(123)));
    writeEntry(record, made('2026-03-05T10:00:00.000Z'), (w, e) => putDialRight(w, e, first, right(1230)));
    expect(dials('2026-03-01T12:00:00.000Z')).toEqual([]);
    expect(dials('2026-03-04T00:00:00.000Z')).toEqual([123]);
    expect(dials('2026-03-05T10:00:00.000Z')).toEqual([1230]);
  });

  test('undone, gives way to the row before it, from the undoing on', () => {
    const first = writeEntry(record, made('2026-03-02T10:00:00.000Z'), (w, e) => insertDialReading(w, e, reading(123)));
    let entry = 0;
    writeEntry(record, made('2026-03-05T10:00:00.000Z'), (w, e) => {
      entry = e;
      return putDialRight(w, e, first, right(1230));
    });
    const before = recordRevision(record);
    writePlain(record, (w) => undoEntry(w, entry, '2026-03-06T10:00:00.000Z'));
    expect(recordRevision(record)).not.toBe(before);
    expect(dials()).toEqual([123]);
    expect(dials('2026-03-05T12:00:00.000Z')).toEqual([1230]);
  });

  test('an entry that fails leaves nothing behind', () => {
    const before = recordRevision(record);
    expect(() =>
      writeEntry(record, made('2026-03-02T10:00:00.000Z'), (w, e) => {
        insertDialReading(w, e, reading(123));
        throw new Error('power cut');
      }),
    ).toThrow('power cut');
    expect(dials()).toEqual([]);
    expect(recordRevision(record)).toBe(before);
  });
});

describe('whichever program asks', () => {
  test('a row that supersedes must take the place of one of its own', () => {
    const first = writeEntry(record, made('2026-03-02T10:00:00.000Z'), (w, e) => insertDialReading(w, e, reading(123)));
    record.sqlite.exec(
      `INSERT INTO machines (entry_id, name, make, model, serial, note) VALUES (1, 'Other', '', '', '', '')`,
    );
    const insert = (machine: string, supersedes: string, chain: string) =>
      record.sqlite.exec(`INSERT INTO dial_readings (machine_id, taken_on, kind, dial_hours, said_by, entry_id, supersedes_id, chain_id)
        VALUES (${machine}, '2026-03-01', 'reading', 1, '', 1, ${supersedes}, ${chain})`);
    const otherId = "(SELECT id FROM machines WHERE name = 'Other')";
    expect(() => insert(otherId, String(first), String(first))).toThrow(/of its own chain/);
    expect(() => insert(String(machineId), String(first), 'NULL')).toThrow(/of its own chain/);
    expect(() => insert(String(machineId), 'NULL', String(first))).toThrow(/of its own chain/);
    insert(String(machineId), String(first), String(first));
  });

  test('entries keep who made them and when, and REPLACE cannot slip a row away', () => {
    expect(() => record.sqlite.exec("UPDATE entries SET made_at = '2000-01-01'")).toThrow(/stays as made/);
    expect(() => record.sqlite.exec('DELETE FROM entries')).toThrow(/never deleted/);
    writeEntry(record, made('2026-03-02T10:00:00.000Z'), (w, e) => insertDialReading(w, e, reading(123)));
    expect(() =>
      record.sqlite.exec(`INSERT OR REPLACE INTO dial_readings (id, machine_id, taken_on, kind, dial_hours, said_by, entry_id)
        VALUES (1, ${machineId}, '2026-03-01', 'reading', 5, '', 1)`),
    ).toThrow(/never deleted/);
  });
});
