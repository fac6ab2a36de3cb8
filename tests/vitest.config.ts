import { join } from 'node:path';
import { defineConfig } from 'vitest/config';

const UNITS = ['core', 'electron', 'renderer', 'demo-data', 'tests/house', 'tests/reference', 'tests/support'];
const testsIn = (folder: string) => `${folder}/**/*.test.{ts,tsx}`;
const common = { testTimeout: 120_000, hookTimeout: 120_000, pool: 'forks' as const };

/** All tests of the project: unit tests beside the code, the rest under tests/. */
export default defineConfig({
  root: join(import.meta.dirname, '..'),
  test: {
    pool: 'forks',
    maxWorkers: 2,
    projects: [
      // pure, or with records of their own: one process goes from file to file, and loads the program once
      { test: { ...common, name: 'parts', isolate: false, include: UNITS.map(testsIn) } },
      { test: { ...common, name: 'whole', include: [testsIn('tests')], exclude: UNITS.map(testsIn) } },
    ],
  },
});
