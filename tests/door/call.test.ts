import { existsSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect, test } from 'vitest';
import { builtScript } from '#tests/support/builtScript.ts';
import { runScript } from '#tests/support/runScript.ts';

const folder = mkdtempSync(join(tmpdir(), 'call-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const env = { XDG_DATA_HOME: folder, APPDATA: folder };

const CLI = 'core/shells/cli.ts';
const built = await builtScript(CLI);
/** As a person does it, from the sources. */
const callFromSources = (...args: string[]) => runScript(CLI, args, { standingIn: folder, env }).ended;
const call = (...args: string[]) => runScript(built, args, { standingIn: folder, env }).ended;

test('an operation is called from where the person stands, and its reply is JSON and nothing else', async () => {
  const made = await callFromSources('record/startEmpty', '{}', '--record', 'winter.hoursandwear');
  expect(JSON.parse(made.out)).toMatchObject({
    ok: true,
    value: { open: true, path: join(folder, 'winter.hoursandwear') },
  });
  expect(made.code).toBe(0);
  expect(existsSync(join(folder, 'winter.hoursandwear'))).toBe(true);
  const state = await call('record/state', '{}', '--record', 'winter.hoursandwear', '--as-of', '2026-11-02');
  expect(JSON.parse(state.out)).toMatchObject({
    ok: true,
    value: { open: true, today: '2026-11-02', counts: { machines: 0 } },
  });
});

test('a request that is not as expected comes back as a fault that names the field, with exit code 1', async () => {
  const { code, out } = await call('machine/read', '{"machineId":"one"}', '--record', 'winter.hoursandwear');
  expect(code).toBe(1);
  expect(JSON.parse(out)).toMatchObject({
    ok: false,
    fault: { code: 'not-as-expected', path: 'machineId', facts: { expected: 'a number' } },
  });
});

test('a command line that cannot be read opens nothing and says how it is written, with exit code 2', async () => {
  for (const args of [
    ['record/state', '{broken'],
    ['record/state', '--recrod', 'x'],
  ]) {
    const { code, out, err } = await call(...args);
    expect(code).toBe(2);
    expect(out).toBe('');
    expect(err).toContain('npm run --silent call -- OPERATION');
  }
});

test('without an operation they are all listed', async () => {
  const { code, out } = await call();
  expect(code).toBe(0);
  expect(out).toContain('hours/add  ');
});
