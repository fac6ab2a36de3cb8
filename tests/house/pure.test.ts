import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const top = join(import.meta.dirname, '..', '..');

/** The same record gives the same answer: outside these, core reads no clock and draws no lots. */
const MAY_READ_THE_CLOCK = ['core/record/', 'core/shells/'];
const CLOCK_OR_LOTS =
  /\bDate\.now\(|\bnew Date\(\)|\bperformance\.now\(|\bMath\.random\(|\brandomUUID\(|\brandomBytes\(/;

/** Outside these, core touches no file: what keeps the record and its backups, and the fonts a paper carries. */
const MAY_TOUCH_FILES = [
  'core/record/',
  'core/shells/',
  'core/papers/paperFonts.ts',
  'core/use-cases/context.ts',
  'core/use-cases/backUps.ts',
  'core/use-cases/recentRecords.ts',
  'core/use-cases/record', // opening, laying down, restoring
];
const FILES = /from 'node:fs(\/promises)?'|from 'node:child_process'|from 'node:net'|from 'node:http'/;

const withoutComments = (source: string): string =>
  source.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '$1');

const files = readdirSync(join(top, 'core'), { recursive: true, encoding: 'utf8' })
  .map((name) => `core/${name.replaceAll('\\', '/')}`)
  .filter((file) => /\.tsx?$/.test(file) && !/\.test\.tsx?$/.test(file));

const filesThat = (pattern: RegExp, but: readonly string[]): string[] =>
  files
    .filter((file) => !but.some((place) => file.startsWith(place)))
    .filter((file) => pattern.test(withoutComments(readFileSync(join(top, file), 'utf8'))));

test('core asks no clock and draws no lots but in the record and the shells', () => {
  expect(filesThat(CLOCK_OR_LOTS, MAY_READ_THE_CLOCK)).toEqual([]);
  expect(files.length).toBeGreaterThan(60);
});

test('core touches no file but where the record and the papers need it', () => {
  expect(filesThat(FILES, MAY_TOUCH_FILES)).toEqual([]);
});

test('the check can fail', () => {
  expect(CLOCK_OR_LOTS.test(withoutComments('const today = new Date();'))).toBe(true);
  expect(CLOCK_OR_LOTS.test(withoutComments('const day = new Date(ms); // not new Date()'))).toBe(false);
  expect(FILES.test("import { readFileSync } from 'node:fs';")).toBe(true);
  expect(filesThat(FILES, []).length).toBeGreaterThan(3);
});
