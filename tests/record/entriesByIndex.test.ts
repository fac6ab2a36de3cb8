import { afterAll, beforeAll, expect, test } from 'vitest';
import { listEntries, rowsOfEntries, rowsOfEntriesSql } from '#core/record/entryStore.ts';
import { openRecord } from '#core/record/openRecord.ts';
import type { OpenRecord } from '#core/record/recordFile.ts';
import { demoRecord, fillEveryTable } from '#tests/support/aFullRecord.ts';

let record: OpenRecord;
beforeAll(() => {
  record = demoRecord();
  fillEveryTable(record);
});
afterAll(() => record.close());

/** Tables that a bulk import, or a shop's years, fill with rows by the hundred thousand. */
const MANY_ROWS = [
  ...['dial_readings', 'kept_forecasts', 'measuring_points', 'point_limits', 'renewals', 'sizes', 'strip_downs'],
];

/** How SQLite reads what the history asks for: "SEARCH r USING INDEX sizes_entry (entry_id=?)". */
const planOf = (of: OpenRecord): string[] =>
  rowsOfEntriesSql(of)
    .split('\nUNION ALL\n')
    .map((sql) =>
      (of.sqlite.prepare(`EXPLAIN QUERY PLAN ${sql}`).all({ ids: '[1]' }) as { detail: string }[])
        .map(({ detail }) => detail)
        .join('\n'),
    );

test('the history reads what an entry brought by index in every table with many rows, with and without statistics', () => {
  const empty = openRecord(':memory:');
  record.sqlite.exec('ANALYZE');
  for (const of of [empty, record]) {
    const plans = planOf(of);
    for (const table of MANY_ROWS) {
      const own = new RegExp(`^SEARCH (r|${table}) USING (COVERING )?INDEX ${table}_entry `, 'm');
      expect(plans.filter((plan) => own.test(plan)).length, table).toBeGreaterThan(0);
    }
    // whoever is joined to such rows is found by its number
    expect(plans.filter((plan) => /^SCAN (?!r$|json_each|shims$)/m.test(plan))).toEqual([]);
  }
  empty.close();
});

test('what the history counts is what the tables hold, entry by entry', () => {
  const entries = listEntries(record, null, 1000).map(({ id }) => id);
  const told = rowsOfEntries(record, entries);
  const sorts = { sizes: 'sizes', renewals: 'renewals', dialReadings: 'dial_readings', limits: 'point_limits' };
  for (const [sort, table] of Object.entries(sorts)) {
    const held = record.sqlite.prepare(`SELECT entry_id, count(*) FROM ${table} GROUP BY 1`).raw().all() as number[][];
    const of = (entryId: number) =>
      told.filter((row) => row.entryId === entryId && row.sort === sort).reduce((sum, { rows }) => sum + rows, 0);
    expect(held.length).toBeGreaterThan(1);
    expect(entries.map(of), sort).toEqual(entries.map((id) => held.find(([entryId]) => entryId === id)?.[1] ?? 0));
  }
  // each row of a visit is about the machine and the day of its visit
  const [days] = record.sqlite
    .prepare('SELECT min(v.taken_on), max(v.taken_on) FROM sizes s JOIN strip_downs v ON v.id = s.strip_down_id')
    .raw()
    .all() as string[][];
  const ofSizes = told.filter(({ sort }) => sort === 'sizes');
  expect([
    ofSizes.map(({ fromOn }) => fromOn).sort()[0],
    ofSizes
      .map(({ toOn }) => toOn)
      .sort()
      .at(-1),
  ]).toEqual(days);
});
