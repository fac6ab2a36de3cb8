import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { homedir, tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect, test } from 'vitest';
import { logInto } from './logFile.ts';

const at = () => new Date('2026-11-02T07:30:00Z');

test('a defect is written down with its time and place, without the name of the home folder', () => {
  const folder = mkdtempSync(join(tmpdir(), 'log-'));
  const error = new Error('Broken invariant: series is sorted by partHours');
  error.stack = `Error: Broken invariant\n    at fitPart (${homedir()}/program/core/fit/fitPart.ts:12:3)`;
  logInto(join(folder, 'new'), at)({ operation: 'forecast/all', error });
  expect(readFileSync(join(folder, 'new/log.txt'), 'utf8')).toBe(
    '2026-11-02T07:30:00.000Z forecast/all\nError: Broken invariant\n    at fitPart (~/program/core/fit/fitPart.ts:12:3)\n\n',
  );
  rmSync(folder, { recursive: true });
});

test('a log that has grown large is set aside, and only one such is kept', () => {
  const folder = mkdtempSync(join(tmpdir(), 'log-'));
  writeFileSync(join(folder, 'log.txt'), 'x'.repeat(1_000_001));
  writeFileSync(join(folder, 'log-older.txt'), 'from long ago');
  logInto(folder, at)({ operation: 'hours/add', error: new Error('disk') });
  expect(readFileSync(join(folder, 'log-older.txt'), 'utf8')).toHaveLength(1_000_001);
  expect(readFileSync(join(folder, 'log.txt'), 'utf8')).toMatch(/^2026-11-02T07:30:00.000Z hours\/add\nError: disk/);
  rmSync(folder, { recursive: true });
});

test('what could not be parsed is not written down: it may be a name', () => {
  const folder = mkdtempSync(join(tmpdir(), 'log-'));
  let thrown: unknown;
  try {
    JSON.parse('Under Crag, Crag Foot');
  } catch (error) {
    thrown = error;
  }
  logInto(folder, at)({ operation: 'machine/read', error: thrown as Error });
  const log = readFileSync(join(folder, 'log.txt'), 'utf8');
  expect(log).toContain('SyntaxError');
  expect(log).not.toContain('Crag');
  rmSync(folder, { recursive: true });
});
