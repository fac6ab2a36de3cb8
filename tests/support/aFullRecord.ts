import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { idsGivenOut, rowsOfTable, type StoredTable, type StoredValue, tablesOnRecord } from '#core/record/allRows.ts';
import { openRecord } from '#core/record/openRecord.ts';
import type { OpenRecord, ReadableRecord } from '#core/record/recordFile.ts';
import { day } from '#core/units/day.ts';
import { bringIn } from '#core/use-cases/bring-in/bringIn.ts';
import { layDownShop } from '#core/use-cases/newShop.ts';

const DEMO = join(import.meta.dirname, '..', '..', 'demo-data', 'workshop');
export const DEMO_DAY = day('2026-11-02');

export const demoFiles = () =>
  readdirSync(DEMO).map((name) => ({ name, bytes: new Uint8Array(readFileSync(join(DEMO, name))) }));

/** The demo workshop in a record in memory. */
export function demoRecord(): OpenRecord {
  const record = openRecord(':memory:');
  layDownShop(record, '2026-11-01T08:00:00.000Z', { isDemo: true });
  const made = { madeAt: '2026-11-01T08:00:01.000Z', madeBy: 'test', what: 'record/bringIn' };
  bringIn(record, demoFiles(), made, { asOf: DEMO_DAY, dryRun: false });
  return record;
}

/** Texts that files, spreadsheets and careless readers spoil. */
export const ODD_TEXTS = [
  '=2+5',
  '+49 171 23',
  '-',
  '@here',
  '\ttab',
  '\rreturn',
  "'",
  "''=",
  "'tis",
  ' spaces ',
  'comma, semicolon; "quotes"\nlines\r\nand more',
  'Müller ≤ ½ mm 🚜',
  '\ufeffmark',
  '00123',
  '1e3',
  'null',
];

/** A tiny picture's beginning: enough to be told for a JPEG. */
const JPEG = Uint8Array.from([0xff, 0xd8, 0xff, 0xe0, 0, 16, 0x4a, 0x46, 0x49, 0x46, 0, 255, 10, 13, 44, 34]);

/** Texts that must be what the program reads them as. */
const FORECAST_SETTINGS: Record<string, string> = {
  changed: '{"driftDelta":0.2}',
  work_types: '[{"name":"=contract","timesAsFast":1.4}]',
};

/** Each kind leaves other columns empty. */
const HOURS_SOURCES = `INSERT INTO hours_sources
  (machine_id, from_on, kind, puller_id, share, hours_per_year, error_share, said_by, entry_id) VALUES
  ((SELECT max(id) FROM machines), '2020-05-05', 'pulled', (SELECT min(id) FROM machines), 0.3, NULL, 0.1, '=said', 1),
  ((SELECT max(id) FROM machines), '2021-05-05', 'yearly', NULL, NULL, 300.5, NULL, '', 1),
  ((SELECT max(id) FROM machines), '2022-05-05', 'own', NULL, NULL, NULL, NULL, '-', 1)`;

/** A job as one is written: its line and a step, which random words would not be. */
const JOBS = `INSERT INTO rebuilds (number, machine_id, taken_in_on, complaint, entry_id)
    VALUES ('J26-001', (SELECT min(id) FROM machines), '2026-11-01', 'It rattles.', 1);
  INSERT INTO rebuild_lines (rebuild_id, position_id, work, stands, declined_words, entry_id)
    VALUES ((SELECT max(id) FROM rebuilds), (SELECT min(id) FROM positions), '{}', 'declined', 'Not now.', 1);
  INSERT INTO rebuild_steps (rebuild_id, line_id, kind, said_on, said_by, facts, entry_id)
    VALUES ((SELECT max(id) FROM rebuilds), (SELECT max(id) FROM rebuild_lines), 'check', '2026-11-01', 'Bo', '{}', 1)`;

/** A slack, its pin and its bore, and packing behind them. */
const JOINTS = `INSERT INTO joints (slack_point_id, entry_id) VALUES ((SELECT max(id) FROM measuring_points), 1);
  INSERT INTO joint_members (entry_id, joint_id, point_id, part) VALUES
    (1, (SELECT max(id) FROM joints), (SELECT min(id) FROM measuring_points), 'pin'),
    (1, (SELECT max(id) FROM joints), (SELECT min(id) + 1 FROM measuring_points), 'bore');
  INSERT INTO shims (strip_down_id, point_id, shim_mm, entry_id) VALUES
    ((SELECT max(id) FROM strip_downs), (SELECT max(id) FROM measuring_points), 0.1, 1)`;

/** A forecast kept with a slip, and those of an agreed visit and of a strip-down. */
const KEPT_FORECASTS = `INSERT INTO slips (number, machine_id, made_on, made_at, made_by, slip)
    VALUES ('2026-001', (SELECT min(id) FROM machines), '2026-11-01', '2026-11-01T09:00:00.000Z', '', '{}');
  INSERT INTO kept_forecasts
    (why, entry_id, slip_id, strip_down_id, point_id, part_ordinal, as_of, known_at, model_version, learned_from, foretold) VALUES
    ('slip', NULL, (SELECT max(id) FROM slips), NULL, 1, 0, '2026-11-01', '2026-11-01T09:00:00.000Z', 1, '', '{}'),
    ('plan', 1, NULL, NULL, 1, 0, '2026-11-01', '2026-11-01T09:00:00.000Z', 1, '', '{}'),
    ('strip-down', 1, NULL, (SELECT max(id) FROM strip_downs), 1, 0, '2026-11-01', '2026-11-01T09:00:00.000Z', 1, '', '{}')`;

/**
 * Puts further rows into every table, written past the stores: each column that may be empty is filled in some row, texts
 * are odd ones, rows are put right, an entry is undone, the last customer is taken away. Tables and columns of a later
 * schema are filled of themselves, where its rules allow it.
 */
export function fillEveryTable(record: OpenRecord): void {
  const { sqlite } = record;
  let odd = 0;
  const oddText = () => `${ODD_TEXTS[odd++ % ODD_TEXTS.length]}`;
  const undone = Number(
    sqlite
      .prepare(
        "INSERT INTO entries (made_at, made_by, what) VALUES ('2026-11-01T09:00:00.000Z', 'test', 'to be undone')",
      )
      .run().lastInsertRowid,
  );
  sqlite.exec(HOURS_SOURCES);
  sqlite.exec(JOINTS);
  sqlite.exec(JOBS);
  sqlite.exec(CONTACTS_AND_PLANS);
  sqlite.exec(KEPT_FORECASTS);
  for (const table of tablesOnRecord(record)) {
    if (table.name === 'record_about') continue;
    if ([...rowsOfTable(record, table)].length === 0) tryInsert(record, table, synthetic(record, table, oddText));
    for (const column of table.columns) {
      if (table.name === 'point_limits' && column.name === 'struck') continue; // a point always has a new size
      const fills = column.name === 'entry_id' ? [undone] : filling(record, table, column, oddText);
      const rows = [...rowsOfTable(record, table)].slice(-200);
      fills.find((value) =>
        rows.some((row) => tryInsert(record, table, copied(table, row, column.name, value, undone))),
      );
    }
  }
  sqlite.prepare('UPDATE entries SET undone_at = ? WHERE id = ?').run('2026-11-01T10:00:00.000Z', undone);
  const { lastInsertRowid } = sqlite
    .prepare("INSERT INTO customers (name, place, address, phone, email) VALUES ('gone', '', '', '', '')")
    .run();
  sqlite.prepare('DELETE FROM customers WHERE id = ?').run(lastInsertRowid);
}

/** Who was rung, and what was planned of it. */
const CONTACTS_AND_PLANS = `INSERT INTO contacts (customer_id, machine_id, made_on, way, said_by, note, answer, entry_id)
    VALUES ((SELECT min(id) FROM customers), (SELECT min(id) FROM machines), '2026-11-01', 'phone', 'Bo', '=rang', 'booked', 1);
  INSERT INTO quiet_periods (customer_id, from_on, to_on, why, entry_id)
    VALUES ((SELECT min(id) FROM customers), '2026-04-01', '2026-05-01', '=calving', 1);
  INSERT INTO plan_settings (changed, renewals, entry_id) VALUES ('{}', '[]', 1);
  INSERT INTO plan_visits (machine_id, winter_year, stands, weeks, work, said_by, note, entry_id)
    VALUES ((SELECT min(id) FROM machines), 2026, 'agreed', '["2026-11-02"]', '{}', 'Bo', '-', 1);
  INSERT INTO plans (entry_id, made_on, winter_year, facts) VALUES (1, '2026-11-01', 2026, '{}')`;

type Column = StoredTable['columns'][number];

/** Columns that take JSON objects only. */
const JSON_OBJECTS: ReadonlySet<string> = new Set([
  ...['repair_facts.facts', 'repair_choices.option', 'slide_facts.facts', 'repair_figures.figures'],
]);

/** Values to try in a column, likeliest first. */
function filling(record: ReadableRecord, table: StoredTable, column: Column, oddText: () => string): StoredValue[] {
  const parent = parentOf(record, table.name, column.name);
  if (parent) {
    return record.sqlite.prepare(`SELECT rowid FROM "${parent}" ORDER BY rowid DESC LIMIT 3`).pluck().all() as number[];
  }
  const whole = table.name === 'forecast_settings' && FORECAST_SETTINGS[column.name];
  if (whole) return [whole];
  if (JSON_OBJECTS.has(`${table.name}.${column.name}`)) return [JSON.stringify({ said: oddText() }), '{}'];
  if (column.type === 'TEXT') return [oddText(), '2026-05-05', '2026-01-01T00:00:00.000Z'];
  if (column.type === 'BLOB') return [JPEG, Uint8Array.from([1, 2, 3])];
  return column.type === 'REAL' ? [0.1 + 0.2, 0.5] : [1, 7];
}

const parentOf = ({ sqlite }: ReadableRecord, table: string, column: string): string | null =>
  (sqlite.prepare('SELECT "table" FROM pragma_foreign_key_list(?) WHERE "from" = ?').pluck().get(table, column) as
    | string
    | undefined) ?? null;

/** The row once more, as one that puts it right where the table knows that, with one column another value. */
function copied(
  table: StoredTable,
  row: readonly StoredValue[],
  changed: string,
  value: StoredValue,
  undone: number,
): StoredValue[] {
  const place = (name: string) => table.columns.findIndex((column) => column.name === name);
  const copy = [...row];
  const id = row[place('id')] ?? null;
  if (place('id') >= 0) copy[place('id')] = null;
  if (place('supersedes_id') >= 0) {
    copy[place('supersedes_id')] = id;
    copy[place('chain_id')] = row[place('chain_id')] ?? id;
  } else if (place('entry_id') >= 0) {
    // a thing of its own, half laid out: it belongs to the entry that is undone
    copy[place('entry_id')] = undone;
  }
  for (const unique of ['name', 'number', 'key']) {
    if (place(unique) >= 0 && unique !== changed) copy[place(unique)] = `${row[place(unique)]} ${changed}`;
  }
  copy[place(changed)] = changed === 'id' ? null : value;
  return copy;
}

function synthetic(record: ReadableRecord, table: StoredTable, oddText: () => string): StoredValue[] {
  const referred: string[] = [];
  return table.columns.map((column) => {
    if (column.name === 'id' && table.key.includes('id')) return null;
    if (column.mayBeNull) return null;
    const parent = parentOf(record, table.name, column.name);
    // two columns that refer to one table refer to two of its rows
    const place = parent === null ? 0 : referred.filter((name) => name === parent).length;
    if (parent !== null) referred.push(parent);
    return filling(record, table, column, oddText)[place] ?? null;
  });
}

/** @returns whether the record's own rules let it in */
function tryInsert({ sqlite }: ReadableRecord, { name, columns }: StoredTable, row: readonly StoredValue[]): boolean {
  try {
    sqlite.prepare(`INSERT INTO "${name}" VALUES (${columns.map(() => '?').join(', ')})`).run(row);
    return true;
  } catch {
    return false;
  }
}

/** Every row of every table and the ids given out, as one text a table: what two records must have alike. */
export const contentsOf = (record: ReadableRecord): Record<string, string> => ({
  ...Object.fromEntries(
    tablesOnRecord(record).map((table) => [
      table.name,
      [...rowsOfTable(record, table)]
        .map((row) =>
          JSON.stringify(
            row.map((value) => (value instanceof Uint8Array ? Buffer.from(value).toString('hex') : value)),
          ),
        )
        .join('\n'),
    ]),
  ),
  'ids given out': JSON.stringify(idsGivenOut(record)),
});
