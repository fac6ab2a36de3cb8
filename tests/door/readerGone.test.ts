import { spawn } from 'node:child_process';
import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { builtScript } from '#tests/support/builtScript.ts';
import { top } from '#tests/support/runScript.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'reader-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** Runs a command whose reader has gone before anything is printed; `| head -1` goes a little later. */
function withReaderGone(script: string, args: string[]): Promise<{ code: number | null; err: string }> {
  return new Promise((done) => {
    const child = spawn(process.execPath, [join(top, script), ...args], { cwd: top });
    let err = '';
    child.stderr.on('data', (chunk) => {
      err += chunk;
    });
    child.stdout.destroy();
    child.once('close', (code) => done({ code, err }));
  });
}

test('a command whose reader goes away ends quietly', async () => {
  writeFileSync(join(folder, 'machines.csv'), 'machine\nM1\n');
  const forecast = ['--import', folder, '--json', '--as-of', '2026-11-09'];
  expect(await withReaderGone('core/shells/forecast.ts', forecast)).toEqual({ code: 0, err: '' });
  const cli = await builtScript('core/shells/cli.ts');
  expect(await withReaderGone(cli, [])).toEqual({ code: 0, err: '' });
  const call = ['record/state', '{}', '--record', join(folder, 'none.hoursandwear')];
  expect(await withReaderGone(cli, call)).toEqual({ code: 0, err: '' });
});
