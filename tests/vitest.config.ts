import { join } from 'node:path';
import { defineConfig } from 'vitest/config';
import { longRun } from './support/counts.ts';
import { LongestFirst } from './support/longestFirst.ts';

/** Put another Electron, or other threads, in the place of what the program imports, which a process can do for one file alone. */
const ALONE = ['app/electronMain', 'app/recallNotice', 'record/heedlessThread', 'record/outOfMemory'].map(
  (name) => `tests/${name}.test.ts`,
);
/** Ample for a slow or busy computer: a test judges what comes out, never how fast. */
const common = {
  testTimeout: longRun ? 3_600_000 : 300_000,
  hookTimeout: 300_000,
  expect: { poll: { timeout: 90_000 } },
  pool: 'forks' as const,
  alias: [{ find: /^.*\/threadFile\.ts$/, replacement: join(import.meta.dirname, 'support', 'builtThreadFile.ts') }],
};

/**
 * All tests of the project: unit tests beside the code, the rest under tests/. A process goes from file to file, loads the
 * program once, and starts one browser.
 */
export default defineConfig({
  root: join(import.meta.dirname, '..'),
  test: {
    pool: 'forks',
    globalSetup: 'tests/support/ownTemporaryFolder.ts',
    // one more than the processors of a small computer: windows and disks are waited for
    maxWorkers: 3,
    sequence: { sequencer: LongestFirst },
    projects: [
      { test: { ...common, name: 'alone', include: ALONE } },
      {
        test: {
          ...common,
          name: 'together',
          isolate: false,
          include: ['core', 'electron', 'renderer', 'demo-data', 'tests'].map(
            (folder) => `${folder}/**/*.test.{ts,tsx}`,
          ),
          exclude: ALONE,
        },
      },
    ],
  },
});
