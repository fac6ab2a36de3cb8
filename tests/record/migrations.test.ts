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

  test('0003_photos_and_people keeps photos, refusals, merges; texts may be blanked only while a customer is erased', () => {
    const before = recordAt(3);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO customers (name, place, address, phone, email) VALUES ('C', '', '', '', ''), ('D', '', '', '', '');
      INSERT INTO machines (entry_id, name, make, model, serial, note) VALUES (1, 'M', '', '', '', '');
      INSERT INTO assemblies (entry_id, name, serial) VALUES (1, 'Hitch', '');
      INSERT INTO findings (assembly_id, taken_on, kind, severity, note, found_by, entry_id)
        VALUES (1, '2026-01-01', 'crack', 'do-not-use', 'C knows', '', 1)`);
    before.close();
    const record = recordAt(4);
    const run = (sql: string) => record.sqlite.exec(sql);
    run(`INSERT INTO photos (jpeg, width_px, height_px, kept_at) VALUES (x'ffd8ff', 1600, 900, '');
      INSERT INTO finding_photos (finding_id, photo_id, entry_id) VALUES (1, 1, 1);
      INSERT INTO finding_declines (finding_id, said_on, said_by, words, entry_id) VALUES (1, '2026-01-02', 'C', 'later', 1);
      INSERT INTO customer_merges (customer_id, into_customer_id, entry_id) VALUES (2, 1, 1)`);
    expect(() => run('DELETE FROM photos')).toThrow(/FOREIGN KEY/);
    expect(() => run('UPDATE photos SET height_px = 1')).toThrow(/stay as they were kept/);
    expect(() =>
      run("INSERT INTO photos (jpeg, width_px, height_px, kept_at) VALUES (x'ffd8ff', 1601, 900, '')"),
    ).toThrow(/photos_sides/);
    expect(() =>
      run("INSERT INTO photos (jpeg, width_px, height_px, kept_at) VALUES (zeroblob(300001), 1, 1, '')"),
    ).toThrow(/photos_small/);
    for (const table of ['finding_photos', 'finding_declines', 'customer_merges'])
      expect(() => run(`DELETE FROM ${table}`)).toThrow(/never deleted/);
    const blank = () => run("UPDATE findings SET note = ''; UPDATE customers SET name = '' WHERE id = 1");
    expect(blank).toThrow(/stay as written/);
    run('INSERT INTO customer_erasures (entry_id, customer_id, texts, done) VALUES (1, 1, 0, 0)');
    blank();
    run('UPDATE customer_erasures SET done = 1, texts = 2');
    expect(blank).toThrow(/stay as written/);
    expect(() => run('UPDATE customer_erasures SET done = 0')).toThrow(/stays as made/);
    expect(record.sqlite.prepare('SELECT name FROM customers ORDER BY id').pluck().all()).toEqual(['', 'D']);
    record.close();
  });

  test('0004_halves_move lets a position go by itself; the pick-up hitch on record comes apart in frame and carrier', () => {
    const before = recordAt(4);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO assemblies (entry_id, name, serial) VALUES (1, 'Hitch', ''), (1, 'Other', '');
      INSERT INTO positions (entry_id, assembly_id, item, name, safety) VALUES (1, 1, 1, 'Hook', 1);
      INSERT INTO assembly_kinds (name, template) VALUES
        ('Telescopic pick-up hitch', '{"name":"h","positions":[{"item":1,"name":"Hook"},{"item":2,"name":"Latch pin, left"},{"item":3,"name":"Ours"}],"sketch":null}'),
        ('Other kind', '{"name":"o","positions":[{"item":1,"name":"Hook"}],"sketch":null}')`);
    before.close();
    const record = recordAt(5);
    const groups = record.sqlite
      .prepare(
        "SELECT json_extract(at.value, '$.group') FROM assembly_kinds k, json_each(k.template, '$.positions') at ORDER BY k.id, at.key",
      )
      .pluck()
      .all();
    expect(groups).toEqual(['carrier', 'frame', null, null]);
    expect(
      record.sqlite.prepare("SELECT json_type(template, '$.positions[0]') FROM assembly_kinds").pluck().get(),
    ).toBe('object');
    record.sqlite.exec(
      "INSERT INTO position_sittings (position_id, assembly_id, from_on, entry_id) VALUES (1, 2, '2026-01-02', 1)",
    );
    expect(() => record.sqlite.exec("UPDATE position_sittings SET from_on = '2026-01-03'")).toThrow(/stay as written/);
    expect(() => record.sqlite.exec('DELETE FROM position_sittings')).toThrow(/never deleted/);
    record.close();
  });

  test('0005_forecast_settings keeps what the shop has set in its forecasts, as written, in one chain', () => {
    const before = recordAt(5);
    before.sqlite.exec("INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test')");
    before.close();
    const record = recordAt(6);
    const put = (changed: string, rest: string) =>
      record.sqlite.exec(
        `INSERT INTO forecast_settings (changed, work_types, entry_id, supersedes_id, chain_id) VALUES ('${changed}', '[]', 1, ${rest})`,
      );
    put('{}', 'NULL, NULL');
    put('{"driftDelta":0.2}', '1, 1');
    expect(() => put('{}', '2, 2')).toThrow(/its own chain/);
    expect(() => put('{', 'NULL, NULL')).toThrow(/forecast_settings_json/);
    expect(() => record.sqlite.exec("UPDATE forecast_settings SET changed = '{}'")).toThrow(/stay as written/);
    expect(() => record.sqlite.exec('DELETE FROM forecast_settings')).toThrow(/never deleted/);
    record.close();
  });

  test('0006_hours_sources says where the hours of a machine without a meter come from, in rows that stay', () => {
    const before = recordAt(6);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO machines (entry_id, name, make, model, serial, note) VALUES (1, 'T', '', '', '', ''), (1, 'P', '', '', '', '')`);
    before.close();
    const record = recordAt(7);
    const put = (kind: string, puller: string, share: string, aYear: string, chain = 'NULL, NULL') =>
      record.sqlite.exec(
        `INSERT INTO hours_sources (machine_id, from_on, kind, puller_id, share, hours_per_year, said_by, entry_id, supersedes_id, chain_id)
         VALUES (1, '2026-01-01', '${kind}', ${puller}, ${share}, ${aYear}, '', 1, ${chain})`,
      );
    put('pulled', '2', '0.3', 'NULL');
    put('yearly', 'NULL', 'NULL', '300', '1, 1');
    put('own', 'NULL', 'NULL', 'NULL', '2, 1');
    expect(() => put('pulled', '1', '0.3', 'NULL')).toThrow(/hours_sources_puller/);
    expect(() => put('pulled', '2', '1.3', 'NULL')).toThrow(/hours_sources_share/);
    expect(() => put('pulled', 'NULL', '0.3', 'NULL')).toThrow(/hours_sources_pulled/);
    expect(() => put('yearly', 'NULL', 'NULL', 'NULL')).toThrow(/hours_sources_yearly/);
    expect(() => put('own', 'NULL', 'NULL', 'NULL', '3, 2')).toThrow(/its own chain/);
    expect(() => record.sqlite.exec('UPDATE hours_sources SET share = 0.4')).toThrow(/stay as written/);
    expect(() => record.sqlite.exec('DELETE FROM hours_sources')).toThrow(/never deleted/);
    record.close();
  });

  test('0007_renewals_and_joints says what a renewal was; one on record before was a new part', () => {
    const before = recordAt(7);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO part_classes (entry_id, name) VALUES (1, 'C');
      INSERT INTO assemblies (entry_id, name, serial) VALUES (1, 'A', '');
      INSERT INTO positions (entry_id, assembly_id, item, name, safety) VALUES (1, 1, 1, 'P', 0);
      INSERT INTO measuring_points (entry_id, position_id, name, measures, wears, part_class_id, gauge_error_mm, stations)
        VALUES (1, 1, 'slack', 'slack', 'up', 1, 0.1, '[]');
      INSERT INTO strip_downs (entry_id, taken_on, fitter, note) VALUES (1, '2026-01-01', '', '');
      INSERT INTO renewals (entry_id, strip_down_id, point_id, hours_known) VALUES (1, 1, 1, 1)`);
    before.close();
    const record = recordAt(8);
    const { sqlite } = record;
    expect(sqlite.prepare('SELECT kind, station, stamped, parked FROM renewals').raw().get()).toEqual([
      'new-part',
      '',
      null,
      0,
    ]);
    expect(sqlite.prepare('SELECT must_stay_standard FROM positions').pluck().get()).toBe(0);
    const renew =
      "INSERT INTO renewals (entry_id, strip_down_id, point_id, hours_known, kind) VALUES (1, 1, 1, 1, 'painted')";
    expect(() => sqlite.exec(renew)).toThrow(/CHECK/);
    sqlite.exec(`INSERT INTO shims (entry_id, strip_down_id, point_id, shim_mm) VALUES (1, 1, 1, 0.5);
      INSERT INTO joints (entry_id, slack_point_id) VALUES (1, 1);
      INSERT INTO joint_members (entry_id, joint_id, point_id, part) VALUES (1, 1, 1, 'pin')`);
    for (const table of ['shims', 'joints', 'joint_members', 'renewals']) {
      expect(() => sqlite.exec(`DELETE FROM ${table}`)).toThrow(/never deleted/);
      expect(() => sqlite.exec(`UPDATE ${table} SET id = 7`)).toThrow(/stay as written/);
    }
    record.close();
  });

  test('0008_jobs keeps jobs, their lines and steps, and the shop’s rates; none of it is written over', () => {
    recordAt(8).close();
    const record = recordAt(9);
    const { sqlite } = record;
    sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO machines (entry_id, name, make, model, serial, note) VALUES (1, 'M', '', '', '', '');
      INSERT INTO machines (entry_id, name, make, model, serial, note) VALUES (1, 'N', '', '', '', '');
      INSERT INTO rebuilds (entry_id, number, machine_id, taken_in_on, complaint) VALUES (1, 'J26-001', 1, '2026-01-01', '');
      INSERT INTO rebuild_lines (entry_id, rebuild_id, work, stands, declined_words) VALUES (1, 1, '{}', 'proposed', '');
      INSERT INTO rebuild_steps (entry_id, rebuild_id, kind, said_on, said_by, facts) VALUES (1, 1, 'check', '2026-01-01', '', '{}');
      INSERT INTO shop_rates (entry_id, currency, hour_price, strip_and_report_price) VALUES (1, 'EUR', 60, 150)`);
    for (const table of ['rebuilds', 'rebuild_lines', 'rebuild_steps', 'shop_rates']) {
      expect(() => sqlite.exec(`DELETE FROM ${table}`)).toThrow(/never deleted/);
      expect(() => sqlite.exec(`UPDATE ${table} SET id = 7`)).toThrow(/stay as written/);
    }
    const elsewhere = `INSERT INTO rebuilds (entry_id, number, machine_id, taken_in_on, complaint, supersedes_id, chain_id)
      VALUES (1, 'J26-001', 2, '2026-01-01', '', 1, 1)`;
    expect(() => sqlite.exec(elsewhere)).toThrow(/its own chain/);
    record.close();
  });

  test('0009_repairs keeps what the bench says of worn holes and the repairs chosen, in rows that stay', () => {
    const before = recordAt(9);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO assemblies (entry_id, name, serial) VALUES (1, 'Hitch', '');
      INSERT INTO positions (entry_id, assembly_id, item, name, safety) VALUES (1, 1, 1, 'Pivot', 1), (1, 1, 2, 'Other', 1)`);
    before.close();
    const record = recordAt(10);
    for (const [table, columns, row] of [
      ['repair_facts', 'facts', `'{}'`],
      ['repair_choices', 'chosen_on, choice, option', `'2026-01-01', 'bush', '{}'`],
    ] as const) {
      const put = (position: number, values: string, rest: string) =>
        record.sqlite.exec(
          `INSERT INTO ${table} (position_id, ${columns}, entry_id, supersedes_id, chain_id) VALUES (${position}, ${values}, 1, ${rest})`,
        );
      put(1, row, 'NULL, NULL');
      put(1, row, '1, 1');
      expect(() => put(2, row, '2, 1')).toThrow(/its own chain/);
      expect(() => put(1, row.replace('{}', '['), 'NULL, NULL')).toThrow(/_json|malformed/);
      expect(() => record.sqlite.exec(`UPDATE ${table} SET position_id = 2`)).toThrow(/stay as written/);
      expect(() => record.sqlite.exec(`DELETE FROM ${table}`)).toThrow(/never deleted/);
    }
    record.close();
  });

  test('0010_jobs_and_figures keeps pictures of a job, a slide’s lengths and the shop’s figures, in rows that stay', () => {
    const before = recordAt(10);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO machines (entry_id, name, make, model, serial, note) VALUES (1, 'M', '', '', '', '');
      INSERT INTO assemblies (entry_id, name, serial) VALUES (1, 'Hitch', ''), (1, 'Other', '');
      INSERT INTO photos (jpeg, width_px, height_px, kept_at) VALUES (x'00', 1, 1, ''), (x'00', 1, 1, '');
      INSERT INTO rebuilds (entry_id, number, machine_id, taken_in_on, complaint) VALUES (1, 'J26-001', 1, '2026-01-01', '')`);
    before.close();
    const { sqlite, close } = recordAt(11);
    expect(sqlite.prepare('SELECT whereabouts, whereabouts_note FROM rebuilds').all()).toEqual([
      { whereabouts: 'not-said', whereabouts_note: '' },
    ]);
    const put = (table: string, columns: string, values: string, rest: string) =>
      sqlite.exec(
        `INSERT INTO ${table} (${columns}, entry_id, supersedes_id, chain_id) VALUES (${values}, 1, ${rest})`,
      );
    put('rebuild_photos', 'rebuild_id, photo_id', '1, 1', 'NULL, NULL');
    expect(() => put('rebuild_photos', 'rebuild_id, photo_id', '1, 2', '1, 1')).toThrow(/its own chain/);
    put('slide_facts', 'assembly_id, facts', `1, '{}'`, 'NULL, NULL');
    put('slide_facts', 'assembly_id, facts', `1, '{}'`, '1, 1');
    expect(() => put('slide_facts', 'assembly_id, facts', `2, '{}'`, '1, 1')).toThrow(/its own chain/);
    expect(() => put('slide_facts', 'assembly_id, facts', `1, '['`, 'NULL, NULL')).toThrow(/_json|malformed/);
    sqlite.exec(`INSERT INTO repair_figures (entry_id, figures) VALUES (1, '{}')`);
    for (const table of ['rebuild_photos', 'slide_facts', 'repair_figures']) {
      expect(() => sqlite.exec(`UPDATE ${table} SET id = 70`)).toThrow(/stay as written/);
      expect(() => sqlite.exec(`DELETE FROM ${table}`)).toThrow(/never deleted/);
    }
    close();
  });

  test('0011_contacts keeps who was contacted and what to keep to, in chains that stay', () => {
    const before = recordAt(11);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO customers (name, place, address, phone, email) VALUES ('C', '', '', '', ''), ('D', '', '', '', '')`);
    before.close();
    const record = recordAt(12);
    for (const [table, columns, row, odd, check] of [
      [
        'contacts',
        'made_on, way, said_by, note',
        "'2026-01-02', 'phone', '', ''",
        "'2026-01-02', 'dove', '', ''",
        /way/,
      ],
      [
        'contact_terms',
        'no_contact, said_on, words, distance_km',
        "0, '2026-01-02', '', 12",
        "0, '', '', -1",
        /distance/,
      ],
      [
        'quiet_periods',
        'from_on, to_on, why',
        "'2026-01-02', '2026-01-09', ''",
        "'2026-01-09', '2026-01-02', ''",
        /order/,
      ],
    ] as const) {
      const put = (customer: number, values: string, rest: string) =>
        record.sqlite.exec(
          `INSERT INTO ${table} (customer_id, ${columns}, entry_id, supersedes_id, chain_id) VALUES (${customer}, ${values}, 1, ${rest})`,
        );
      put(1, row, 'NULL, NULL');
      put(1, row, '1, 1');
      expect(() => put(2, row, '2, 1')).toThrow(/its own chain/);
      expect(() => put(1, odd, 'NULL, NULL')).toThrow(check);
      expect(() => record.sqlite.exec(`UPDATE ${table} SET customer_id = 2`)).toThrow(/stay as written/);
      expect(() => record.sqlite.exec(`DELETE FROM ${table}`)).toThrow(/never deleted/);
    }
    expect(() => record.sqlite.exec('INSERT INTO recall_settings (entry_id, lead_days) VALUES (1, 400)')).toThrow(
      /lead/,
    );
    record.sqlite.exec('INSERT INTO recall_settings (entry_id, lead_days) VALUES (1, 28)');
    expect(() => record.sqlite.exec('DELETE FROM recall_settings')).toThrow(/never deleted/);
    record.close();
  });

  test('0012_winter_plan keeps what the plan goes by, weeks, customers away, visits and plans, in rows that stay', () => {
    const before = recordAt(12);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO machines (entry_id, name, make, model, serial, note) VALUES (1, 'M', '', '', '', ''), (1, 'N', '', '', '', '');
      INSERT INTO customers (name, place, address, phone, email) VALUES ('A', '', '', '', ''), ('B', '', '', '', '')`);
    before.close();
    const record = recordAt(13);
    const put = (table: string, columns: string, row: string, chain = 'NULL, NULL') =>
      record.sqlite.exec(
        `INSERT INTO ${table} (${columns}, entry_id, supersedes_id, chain_id) VALUES (${row}, 1, ${chain})`,
      );
    const visit = 'machine_id, winter_year, stands, weeks, work, said_by, note';
    const tables = [
      ['plan_settings', 'changed, renewals', `'{}', '[]'`, null, `'{', '[]'`],
      [
        'plan_weeks',
        'week_from, bench_hours, note',
        `'2026-12-21', 16, ''`,
        `'2026-12-28', 0, ''`,
        `'2026-12-21', -1, ''`,
      ],
      [
        ...['customer_away', 'customer_id, from_on, to_on, note', `1, '2026-12-01', '2026-12-08', ''`],
        ...[`2, '2026-12-01', '2026-12-08', ''`, `1, '2026-12-08', '2026-12-01', ''`],
      ],
      [
        ...['plan_visits', visit, `1, 2026, 'proposed', '[]', '{}', '', ''`],
        ...[`2, 2026, 'proposed', '[]', '{}', '', ''`, `1, 2026, 'hoped', '[]', '{}', '', ''`],
      ],
    ] as const;
    for (const [table, columns, row, another, unsound] of tables) {
      put(table!, columns!, row!);
      put(table!, columns!, row!, '1, 1');
      if (another) expect(() => put(table!, columns!, another, '2, 1')).toThrow(/its own chain/);
      expect(() => put(table!, columns!, unsound!)).toThrow(/CHECK|malformed/);
      expect(() => record.sqlite.exec(`UPDATE ${table} SET reason = 'x'`)).toThrow(/stay as written/);
      expect(() => record.sqlite.exec(`DELETE FROM ${table}`)).toThrow(/never deleted/);
    }
    record.sqlite.exec(
      "INSERT INTO plans (entry_id, made_on, winter_year, facts) VALUES (1, '2026-10-01', 2026, '{}')",
    );
    expect(() => record.sqlite.exec('DELETE FROM plans')).toThrow(/never deleted/);
    expect(() => record.sqlite.exec("UPDATE plans SET made_on = ''")).toThrow(/stay as written/);
    record.close();
  });

  test('0013_machine_forecasts keeps forecasts of a machine, one row each, which may be written over and dropped', () => {
    const before = recordAt(13);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO machines (entry_id, name, make, model, serial, note) VALUES (1, 'M', '', '', '', '')`);
    before.close();
    const record = recordAt(14);
    const keep = (machineId: number) =>
      record.sqlite.exec(`INSERT INTO machine_forecasts (machine_id, as_of, learned, stale, line, points)
        VALUES (${machineId}, '2026-11-01', 'x', 0, '{}', '[]')`);
    keep(1);
    expect(() => keep(1)).toThrow(/UNIQUE/);
    expect(() => keep(2)).toThrow(/FOREIGN KEY/);
    record.sqlite.exec("UPDATE machine_forecasts SET stale = 1; INSERT INTO forecasts_marked VALUES (1, '')");
    record.sqlite.exec('DELETE FROM machine_forecasts');
    record.close();
  });

  test('0014_kept_forecasts keeps forecasts as they stood, each with what it was kept for, in rows that stay', () => {
    const before = recordAt(14);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO machines (entry_id, name, make, model, serial, note) VALUES (1, 'M', '', '', '', '');
      INSERT INTO part_classes (name, entry_id) VALUES ('slide', 1);
      INSERT INTO assemblies (entry_id, name, serial) VALUES (1, 'Hitch', '');
      INSERT INTO positions (entry_id, assembly_id, item, name, safety) VALUES (1, 1, 1, 'Strip', 0);
      INSERT INTO measuring_points (entry_id, position_id, name, part_class_id, measures, wears, gauge_error_mm, stations)
        VALUES (1, 1, 'thickness', 1, 'thickness', 'down', 0.05, '[]');
      INSERT INTO slips (number, machine_id, made_on, made_at, made_by, slip) VALUES ('2026-001', 1, '2026-01-01', '', '', '{}')`);
    before.close();
    const record = recordAt(15);
    const keep = (whose: string, told = '{}') =>
      record.sqlite.exec(`INSERT INTO kept_forecasts
        (why, entry_id, slip_id, strip_down_id, point_id, part_ordinal, as_of, known_at, model_version, learned_from, foretold)
        VALUES (${whose}, 1, 0, '2026-01-01', '2026-01-01T09:00:00.000Z', 5, '', '${told}')`);
    keep("'slip', NULL, 1, NULL");
    keep("'plan', 1, NULL, NULL");
    expect(() => keep("'slip', 1, 1, NULL")).toThrow(/kept_forecasts_whose/);
    expect(() => keep("'strip-down', 1, NULL, NULL")).toThrow(/kept_forecasts_whose/);
    expect(() => keep("'guess', 1, NULL, NULL")).toThrow(/kept_forecasts_why/);
    expect(() => keep("'plan', 1, NULL, NULL", '[]')).toThrow(/kept_forecasts_json/);
    expect(() => record.sqlite.exec("UPDATE kept_forecasts SET as_of = ''")).toThrow(/stay as written/);
    expect(() => record.sqlite.exec('DELETE FROM kept_forecasts')).toThrow(/never deleted/);
    record.close();
  });

  test('0015_lengths_in_inches shows lengths in mm in a shop that has not said otherwise', () => {
    const before = recordAt(15);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO shop_settings (entry_id, name, head_lines, phone, email, winter_from, winter_to, winter_hours_per_week,
        decimal_mark, season, hours_per_year_default, grease_and_watch, theme)
      VALUES (1, 'Shop', '[]', '', '', '11-01', '02-28', 40, ',', '[]', 400, '[]', 'system')`);
    before.close();
    const record = recordAt(16);
    expect(record.sqlite.prepare('SELECT decimal_mark, lengths FROM shop_settings').all()).toEqual([
      { decimal_mark: ',', lengths: 'mm' },
    ]);
    record.close();
  });

  test('0016_farm_calls has the visits there are done in the shop', () => {
    const before = recordAt(16);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO machines (entry_id, name, make, model, serial, note) VALUES (1, 'M', '', '', '', '');
      INSERT INTO plan_visits (entry_id, machine_id, winter_year, stands, weeks, work, said_by, note)
      VALUES (1, 1, 2026, 'proposed', '[]', '{}', '', '')`);
    before.close();
    const record = recordAt(17);
    expect(record.sqlite.prepare('SELECT stands, at_farm FROM plan_visits').all()).toEqual([
      { stands: 'proposed', at_farm: 0 },
    ]);
    expect(() => record.sqlite.exec('UPDATE plan_visits SET at_farm = 1')).toThrow(/stay as written/);
    record.close();
  });

  test('0017_list_in_order keeps the order of the list beside its lines; lines kept before stand on as older ones', () => {
    const line = {
      ...{ group: 'later', planLineHours: 210, assemblies: ['Hitch', 'Loader'] },
      first: { decidingHoursLeft: 900, hoursLeft: { low: 900, middle: 1300, high: null } },
    };
    const before = recordAt(17);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO machines (entry_id, name, make, model, serial, note) VALUES (1, 'M', '', '', '', ''), (1, 'N', '', '', '', '')`);
    const keep = before.sqlite.prepare(`INSERT INTO machine_forecasts (machine_id, as_of, learned, stale, line, points)
      VALUES (?, '2026-11-01', 'x', 0, ?, '[]')`);
    keep.run(1, JSON.stringify(line));
    keep.run(2, '{}');
    before.close();
    const record = recordAt(18);
    const kept = `SELECT machine_id, stale, list_group, soonest_hours, low_hours, middle_hours, plan_line_hours, assemblies, line
      FROM machine_forecasts ORDER BY 1`;
    expect(record.sqlite.prepare(kept).raw().all()).toEqual([
      [1, 1, 'later', 900, 900, 1300, 210, 'Hitch\nLoader', JSON.stringify(line)],
      [2, 1, 'no-forecast', null, null, null, null, '', '{}'],
    ]);
    record.close();
  });

  test('0018_entries_by_index gives every table with many rows an index of its entries', () => {
    const before = recordAt(18);
    before.sqlite.exec(`INSERT INTO entries (made_at, made_by, what) VALUES ('2026-01-01T00:00:00.000Z', '', 'test');
      INSERT INTO machines (entry_id, name, make, model, serial, note) VALUES (1, 'M', '', '', '', '');
      INSERT INTO strip_downs (machine_id, taken_on, fitter, note, entry_id) VALUES (1, '2026-01-01', '', '', 1)`);
    before.close();
    const record = recordAt(19);
    const byEntry = record.sqlite
      .prepare(
        "SELECT m.tbl_name FROM sqlite_schema m, pragma_index_info(m.name) i WHERE m.type = 'index' AND i.seqno = 0 AND i.name = 'entry_id' AND m.sql IS NOT NULL ORDER BY 1",
      )
      .pluck()
      .all();
    expect(byEntry).toEqual([
      ...['dial_readings', 'kept_forecasts', 'measuring_points', 'point_limits', 'renewals', 'sizes', 'strip_downs'],
    ]);
    expect(record.sqlite.prepare('SELECT id FROM strip_downs WHERE entry_id = 1').pluck().all()).toEqual([1]);
    record.close();
  });

  test('there is a test for each', () => {
    const journal = JSON.parse(readFileSync(join(MIGRATIONS, 'meta', '_journal.json'), 'utf8')) as Journal;
    const told = readFileSync(import.meta.filename, 'utf8');
    expect(journal.entries.length).toBeGreaterThan(0);
    for (const { tag } of journal.entries) expect(told).toContain(`test('${tag} `);
  });
});
