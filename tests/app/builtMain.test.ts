import { existsSync, mkdirSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { layLearnedDemo } from '#tests/support/learnedDemo.ts';
import { pdfPages } from '#tests/support/pdfText.ts';
import { top } from '#tests/support/runScript.ts';
import { runMain } from './runMain.ts';

const folder = mkdtempSync(join(tmpdir(), 'built-main-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const ask = (asked: [string, unknown][]) =>
  runMain({ main: join(top, '.build/electron/main.js'), home: folder, asked });

test('the built program serves its page, lays down a record and answers from it', () => {
  const [page, before, made, list] = ask([
    ['record/state', {}],
    ['record/startEmpty', {}],
    ['machines/list', {}],
  ]);
  expect(page).toEqual({ page: 200, holdsRoot: true });
  expect(before).toMatchObject({ ok: true, value: { open: false, today: '2026-11-02' } });
  expect(made).toMatchObject({ ok: true, value: { open: true, path: join(folder, 'shop.hoursandwear') } });
  expect(list).toEqual({ ok: true, value: { asOf: '2026-11-02', forecasting: null, learning: false, machines: [] } });
  expect(existsSync(join(folder, 'shop.hoursandwear'))).toBe(true);
});

test('the built program opens the demo workshop, forecasts it and prints a slip', async () => {
  const dataFolder = join(folder, 'hours-and-wear');
  mkdirSync(dataFolder, { recursive: true });
  await layLearnedDemo(dataFolder);
  const [, opened, list, slip] = ask([
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
