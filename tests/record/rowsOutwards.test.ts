import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { dialRowsOf, readDialRow } from '#core/record/dialStore.ts';
import { openRecord } from '#core/record/openRecord.ts';
import type { OpenRecord } from '#core/record/recordFile.ts';
import { readSizeRow, sizeRowsOfPoints } from '#core/record/sizeStore.ts';
import { stripDownsOf, stripDownsSince } from '#core/record/stripDownStore.ts';
import { day } from '#core/units/day.ts';
import { demoRecord } from '#tests/support/aFullRecord.ts';

/**
 * A record brought in whole has few entries and many rows. Where its statistics are older than the indexes by entry, SQLite
 * takes those few entries for the quickest way in and reads every row of the shop for one machine's page, unless it is told
 * where to begin.
 */
let brought: OpenRecord;
let empty: OpenRecord;
beforeAll(() => {
  brought = demoRecord();
  brought.sqlite.exec(
    `ANALYZE; DELETE FROM sqlite_stat1 WHERE idx LIKE '%\\_entry' ESCAPE '\\';
     ANALYZE sqlite_schema`,
  );
  empty = openRecord(':memory:');
});
afterAll(() => {
  brought.close();
  empty.close();
});

/** How SQLite goes about each question that a reading asks of a record not asked before, the first step first. */
function stepsOf(record: OpenRecord, read: (of: OpenRecord) => unknown): string[][] {
  const asked = vi.spyOn(record.sqlite, 'prepare');
  read(record);
  const questions = asked.mock.calls.map(([sql]) => sql);
  asked.mockRestore();
  return questions.map((sql) => {
    const names = [...new Set([...sql.matchAll(/@(\w+)/g)].map(([, name]) => name as string))];
    const plan = record.sqlite.prepare(`EXPLAIN QUERY PLAN ${sql}`).all(Object.fromEntries(names.map((n) => [n, '1'])));
    return (plan as { detail: string }[]).map(({ detail }) => detail);
  });
}

const READINGS: [what: string, row: string, read: (of: OpenRecord) => unknown][] = [
  ['sizes of a machine’s points', 's', (of) => sizeRowsOfPoints(of, [1, 2])],
  ['one size', 's', (of) => readSizeRow(of, 1)],
  ['hours of a machine', 'd', (of) => dialRowsOf(of, 1)],
  ['one reading of the dial', 'd', (of) => readDialRow(of, 1)],
  ['strip-downs of a machine', 'v', (of) => stripDownsOf(of, 1)],
  [
    'strip-downs of a day since another',
    'v',
    (of) => stripDownsSince(of, { machineId: 1, takenOn: day('2025-01-10'), afterStripDownId: 1 }),
  ],
];

test.each(READINGS)('%s are read from their own rows outwards, with and without statistics', (_, row, read) => {
  for (const record of [empty, brought]) {
    const questions = stepsOf(record, read);
    expect(questions.length).toBeGreaterThan(0);
    for (const steps of questions) {
      expect(steps.find((step) => /^(SEARCH|SCAN) /.test(step))).toMatch(new RegExp(`^SEARCH ${row} USING`));
      // who and when is then found by the entry's number; read from end to end is only which of the few entries were undone
      expect(steps.filter((step) => /^SCAN (?!json_each|entries$)/.test(step))).toEqual([]);
    }
  }
});
