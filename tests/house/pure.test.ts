import { readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const top = join(import.meta.dirname, '..', '..');

/** The same record gives the same answer: outside these two, core reads no clock and draws no lots. */
const MAY_READ_THE_CLOCK = ['core/record/', 'core/shells/', 'core/use-cases/context.ts'];
const CLOCK_OR_LOTS =
  /\bDate\.now\(|\bnew Date\(\)|\bperformance\.now\(|\bMath\.random\(|\brandomUUID\(|\brandomBytes\(/;

const withoutComments = (source: string): string =>
  source.replace(/\/\*[\s\S]*?\*\//g, '').replace(/(^|\s)\/\/.*$/gm, '$1');

test('core asks no clock and draws no lots but in the record and the shells', () => {
  const files = readdirSync(join(top, 'core'), { recursive: true, encoding: 'utf8' })
    .map((name) => `core/${name.replaceAll('\\', '/')}`)
    .filter((file) => /\.tsx?$/.test(file) && !/\.test\.tsx?$/.test(file));
  const found = files
    .filter((file) => !MAY_READ_THE_CLOCK.some((place) => file.startsWith(place)))
    .filter((file) => CLOCK_OR_LOTS.test(withoutComments(readFileSync(join(top, file), 'utf8'))));
  expect(found).toEqual([]);
  expect(files.length).toBeGreaterThan(60);
});

test('the check can fail', () => {
  expect(CLOCK_OR_LOTS.test(withoutComments('const today = new Date();'))).toBe(true);
  expect(CLOCK_OR_LOTS.test(withoutComments('const day = new Date(ms); // not new Date()'))).toBe(false);
});
