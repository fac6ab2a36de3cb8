import { spawnSync } from 'node:child_process';
import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { pdfPages } from '#tests/support/pdfText.ts';
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
      timeout: 110_000,
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

test('the built program brings in the demo workshop, forecasts it and prints a slip', async () => {
  const [, opened, list, slip] = runBuiltMain([
    ['record/openDemo', {}],
    ['machines/list', {}],
    ['slip/preview', { machineId: 1 }],
  ]);
  expect(opened).toMatchObject({ ok: true, value: { open: true, isDemo: true } });
  expect(list.value.machines.length).toBeGreaterThanOrEqual(30);
  expect(list.value.machines.some((machine: { first: unknown }) => machine.first !== null)).toBe(true);
  expect(slip.ok).toBe(true);
  const pages = await pdfPages(Buffer.from(slip.value.pdfBase64, 'base64'));
  expect(pages).toHaveLength(1);
  expect(pages[0]?.text).toContain(slip.value.slip.machine.name);
});
