import { execFileSync } from 'node:child_process';
import { readFileSync } from 'node:fs';
import { join } from 'node:path';
import { expect, test } from 'vitest';

const top = join(import.meta.dirname, '..', '..');

test('tests and scripts run on Node 24, whichever Node the computer itself has', () => {
  // the SQLite binding of this project crashes older ones without a word
  expect(process.versions.node.split('.')[0]).toBe('24');
  expect(process.features.typescript).toBe('strip');
  const inScripts = execFileSync('npm', ['exec', '--', 'node', '--version'], {
    cwd: top,
    encoding: 'utf8',
    shell: process.platform === 'win32',
  });
  expect(inScripts).toMatch(/^v24\./);
});

test('the same Node is pinned for every platform that has it', () => {
  const { optionalDependencies } = JSON.parse(readFileSync(join(top, 'package.json'), 'utf8')) as {
    optionalDependencies: Record<string, string>;
  };
  expect(new Set(Object.values(optionalDependencies)).size).toBe(1);
  expect(readFileSync(join(top, '.nvmrc'), 'utf8').trim()).toBe('24');
});
