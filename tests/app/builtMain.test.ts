import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { top } from '#tests/support/runScript.ts';

const folder = mkdtempSync(join(tmpdir(), 'built-main-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** The built main process, core and all, with a stand-in for Electron; gives what each request was answered. */
function runBuiltMain(asked: [string, unknown][]) {
  const run = spawnSync(
    process.execPath,
    [
      '--import',
      join(top, 'tests/app/electronStandIn.ts'),
      join(top, '.build/electron/main.js'),
      '--record',
      join(folder, 'shop.hoursandwear'),
      '--as-of',
      '2026-11-02',
    ],
    {
      encoding: 'utf8',
      timeout: 60_000,
      env: { ...process.env, XDG_DATA_HOME: folder, APPDATA: folder, ASKED: JSON.stringify(asked) },
    },
  );
  expect(run.stderr).toBe('');
  expect(run.status).toBe(0);
  return run.stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
}

test('the built program serves its page, lays down a record and answers from it', () => {
  const [page, before, made, list] = runBuiltMain([
    ['record/state', {}],
    ['record/startEmpty', {}],
    ['machines/list', {}],
  ]);
  expect(page).toEqual({ page: 200, holdsRoot: true });
  expect(before).toMatchObject({ ok: true, value: { open: false, today: '2026-11-02' } });
  expect(made).toMatchObject({ ok: true, value: { open: true, path: join(folder, 'shop.hoursandwear') } });
  expect(list).toEqual({ ok: true, value: { asOf: '2026-11-02', machines: [] } });
  expect(existsSync(join(folder, 'shop.hoursandwear'))).toBe(true);
});
