import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import Papa from 'papaparse';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { type ForecastRow, zForecastRow } from '#core/contract/forecast.ts';
import { forecastCommand } from '#core/shells/forecast.ts';
import { aRecord, brought, filesOf } from '#tests/support/aRecord.ts';
import { SMALL_FOLDER } from '#tests/support/aSmallFolder.ts';
import { runScript } from '#tests/support/runScript.ts';

let folder = '';
beforeAll(() => {
  folder = mkdtempSync(join(tmpdir(), 'forecast-'));
  writeFolder('shop', SMALL_FOLDER);
});
afterAll(() => rmSync(folder, { recursive: true }));

function writeFolder(name: string, files: Record<string, string>): string {
  const path = join(folder, name);
  mkdirSync(path, { recursive: true });
  for (const [file, text] of Object.entries(files)) writeFileSync(join(path, file), text);
  return path;
}

function run(...args: string[]) {
  let out = '';
  const said: string[] = [];
  const code = forecastCommand(
    args,
    (text) => {
      out += text;
    },
    (line) => said.push(line),
  );
  return { code, out, said, rows: () => JSON.parse(out) as ForecastRow[] };
}
const shop = () => join(folder, 'shop');

describe('the forecast command', () => {
  test('prints one object a measuring point, as the contract says', () => {
    const { code, rows, said } = run('--import', shop(), '--as-of', '2026-11-09', '--json');
    expect(code).toBe(0);
    expect(said).toEqual([]);
    const [strip, hook] = rows();
    for (const row of rows()) expect(zForecastRow.strict().safeParse(row).error).toBeUndefined();
    expect(strip).toMatchObject({
      machine: 'M1',
      position: 'Strip top',
      ownReadings: 2,
      machineHoursRead: 4250,
      readOn: '2026-10-10',
    });
    const { low, middle, high } = strip!.hoursLeft;
    expect(low).toBeLessThan(middle!);
    expect(middle).toBeLessThan(high!);
    expect(hook).toMatchObject({ limitWearMm: null, hoursLeft: { low: null, middle: null, high: null } });
    expect(hook?.cautions).toContain('no-limit');
  });

  test('prints the same as CSV, flattened, and as a table', () => {
    const json = run('--import', shop(), '--as-of', '2026-11-09', '--json').rows();
    const { out } = run('--import', shop(), '--as-of', '2026-11-09', '--csv');
    const rows = Papa.parse<Record<string, string>>(out, { header: true, skipEmptyLines: true }).data;
    expect(rows).toHaveLength(json.length);
    expect(Number(rows[0]?.hoursLeft_low)).toBe(json[0]?.hoursLeft.low);
    expect(Number(rows[0]?.basis_own)).toBe(json[0]?.basis.own);
    expect(rows[1]?.hoursLeft_low).toBe('');
    expect(rows[1]?.cautions).toContain('no-limit');
    // a shop with no points has the same heading, and no rows
    const none = mkdtempSync(join(tmpdir(), 'no-points-'));
    writeFileSync(join(none, 'machines.csv'), SMALL_FOLDER['machines.csv']);
    const heading = out.slice(0, out.indexOf('\n') + 1);
    expect(run('--import', none, '--as-of', '2026-11-09', '--csv').out.replace('\r', '')).toBe(heading);
    rmSync(none, { recursive: true });
    const table = run('--import', shop(), '--as-of', '2026-11-09').out;
    expect(table).toMatch(/^As of 2026-11-09\n/);
    expect(table).toMatch(/^M1: Hitch, \d+ machine hours, read 2026-10-10$/m);
    expect(table).toMatch(/^Strip top +thickness +\d+ +2 /m);
  });

  test('leaves rows after the as-of day out, with a note, as if they were not there', () => {
    const early = run('--import', shop(), '--as-of', '2024-06-01', '--json');
    expect(early.said.join('\n')).toMatch(/hours\.csv, row 4.*after as of/);
    const upTo = (text: string) =>
      text
        .split('\n')
        .filter((line) => !/,202[56]-/.test(line))
        .join('\n');
    const cut = writeFolder('cut', {
      ...SMALL_FOLDER,
      'hours.csv': upTo(SMALL_FOLDER['hours.csv']),
      'sizes.csv': upTo(SMALL_FOLDER['sizes.csv']),
    });
    expect(run('--import', cut, '--as-of', '2024-06-01', '--json').rows()).toEqual(early.rows());
  });

  test('says the same of a record as of the folder it was brought in from', () => {
    const path = join(folder, 'shop.hoursandwear');
    const record = aRecord(path);
    brought(record, filesOf(shop()));
    record.close();
    const before = readFileSync(path);
    const ofRecord = run('--record', path, '--as-of', '2026-11-09', '--json').rows();
    expect(ofRecord).toEqual(run('--import', shop(), '--as-of', '2026-11-09', '--json').rows());
    expect(readFileSync(path).equals(before)).toBe(true);
    expect(readdirSync(folder).sort()).toEqual(['cut', 'shop', 'shop.hoursandwear']);
  });

  test('explains one point in words a fitter follows, its name typed as it comes', () => {
    const { code, out, said } = run(
      ...['--import', shop(), '--as-of', '2026-11-09', '--explain', 'm1 / hitch / STRIP-TOP / thickness'],
    );
    expect({ code, said }).toEqual({ code: 0, said: [] });
    expect(out).toMatch(/^M1 \/ Hitch \/ Strip top \/ thickness, as of 2026-11-09\n/);
    expect(out).toMatch(/was measured twice since; last on 10 Oct 2026 it read 10\.20 ±0\.10 mm/);
    expect(out).toMatch(/^Its hours +It has been in for 4 \d{3} h/m);
    expect(out).toMatch(/^Like parts here /m);
    expect(out).toMatch(/^This part /m);
    expect(out).toMatch(/^The range is .* wide, from low to high/m);
    expect(out).toMatch(/^ {2}(how|errors|gauge|wear|ups|whether).* h$/m);
    expect(out).toMatch(/^- Rests mostly on/m);
    const record = join(folder, 'explained.hoursandwear');
    const opened = aRecord(record);
    brought(opened, filesOf(shop()));
    opened.close();
    expect(run('--record', record, '--as-of', '2026-11-09', '--explain', 'Strip top').out).toBe(out);
    rmSync(record);
    const json = run('--import', shop(), '--as-of', '2026-11-09', '--explain', 'Strip top', '--json').out;
    expect(JSON.parse(json)).toMatchObject({ forecast: { position: 'Strip top' }, width: { to: 'high' } });
  });

  test('names like what was asked for are listed when no point goes by it, or several do', () => {
    const near = run('--import', shop(), '--as-of', '2026-11-09', '--explain', 'M1/Hitch/Strap top/thickness');
    expect(near.code).toBe(1);
    expect(near.said[0]).toMatch(/^There is no .*\n {2}M1\/Hitch\/Strip top\/thickness\n/);
    const several = run('--import', shop(), '--as-of', '2026-11-09', '--explain', 'm1/hitch');
    expect(several.code).toBe(1);
    expect(several.said[0]).toMatch(/may be any of these.*\n {2}M1\/Hitch\/Strip top.*\n {2}M1\/Hitch\/Hook/);
  });

  test.each([
    ['nothing', [], /Give either/],
    ['both', ['--import', 'a', '--record', 'b'], /Give either/],
    ['a day that does not exist', ['--import', 'a', '--as-of', '2026-02-30'], /2026-10-12, was expected/],
    ['an unknown option', ['--export', 'a'], /--export/],
    ['a folder that is not there', ['--import', '/nowhere/at/all'], /cannot be read/],
    ['a record that is not there', ['--record', '/nowhere/at/all.hoursandwear'], /is not there/],
    ['an explanation as csv', ['--import', 'a', '--explain', 'b', '--csv'], /in words or with --json/],
    ['json and csv', ['--import', 'a', '--json', '--csv'], /not both/],
  ])('asked for %s, ends with 1 and says why', (_what, args, why) => {
    const { code, out, said } = run(...args);
    expect(code).toBe(1);
    expect(out).toBe('');
    expect(said.join('\n')).toMatch(why);
  });

  test('lists each fault with file, row, column and value, and prints no forecast', async () => {
    const bad = writeFolder('bad', {
      ...SMALL_FOLDER,
      'hours.csv': `${SMALL_FOLDER['hours.csv']}M1,2026-10-20,900\nM7,2026-10-20,900\n`,
      'sizes.csv': SMALL_FOLDER['sizes.csv'].replace('10.9', '10.9in').replace('2026-10-10', '2026-10-32'),
    });
    const { code, out, err } = await runScript('core/shells/forecast.ts', ['--import', 'bad', '--json'], {
      standingIn: folder,
    }).ended;
    expect(code).toBe(1);
    expect(out).toBe('');
    expect(bad).toContain('bad');
    expect(err).toMatch(/hours\.csv, row 6, dial_hours "900": dial went back/);
    expect(err).toMatch(/hours\.csv, row 7, machine "M7": unknown machine/);
    expect(err).toMatch(/sizes\.csv, row 2, size_mm "10\.9in": inches/);
    expect(err).toMatch(/sizes\.csv, row 3, date "2026-10-32": not a day/);
    expect(err).toMatch(/4 faults: nothing was brought in/);
  });
});
