import { spawnSync } from 'node:child_process';
import { join } from 'node:path';
import { expect } from 'vitest';
import { top } from '#tests/support/runScript.ts';

type Run = {
  /** the built main process */
  main: string;
  /** the person's own folder of program data */
  home: string;
  asked: [string, unknown][];
  /** folder it is started in */
  standingIn?: string;
};

/**
 * Runs a built main process, core and all, under Node with a stand-in for Electron.
 * @returns what its page was served as, then what each request was answered
 */
// biome-ignore lint/suspicious/noExplicitAny: replies as they came, looked into by the test
export function runMain({ main, home, asked, standingIn = top }: Run): any[] {
  const run = spawnSync(
    process.execPath,
    [
      ...['--import', join(top, 'tests/app/electronStandIn.ts'), main],
      ...['--record', join(home, 'shop.hoursandwear'), '--as-of', '2026-11-02'],
    ],
    {
      encoding: 'utf8',
      cwd: standingIn,
      timeout: 110_000,
      env: { ...process.env, INIT_CWD: home, XDG_DATA_HOME: home, APPDATA: home, ASKED: JSON.stringify(asked) },
    },
  );
  expect(run.stderr).toBe('');
  expect(run.status).toBe(0);
  return run.stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
}
