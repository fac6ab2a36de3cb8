import { join } from 'node:path';
import { defineConfig } from 'vitest/config';

/** All tests of the project: unit tests beside the code, the rest under tests/. */
export default defineConfig({
  root: join(import.meta.dirname, '..'),
  test: {
    include: ['{core,electron,renderer,tests,demo-data}/**/*.test.{ts,tsx}'],
    testTimeout: 120_000,
    hookTimeout: 120_000,
    pool: 'forks',
    maxWorkers: 2,
  },
});
