import { spawnSync } from 'node:child_process';
import { mkdirSync, readFileSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { ensureTestBrowser, INSTALL_LINE } from './support/browser.ts';

/**
 * `npm test` and `npm run test:long`: gets a browser for the window tests, runs every test, and closes with the line
 * "N passed, N failed". Arguments are handed on to the test runner, as in `npm test -- core/fit`.
 */

const top = join(import.meta.dirname, '..');
const report = join(top, '.build', 'tests', `report-${process.pid}.json`);
const isLong = process.argv.includes('--long');
const handedOn = process.argv.slice(2).filter((argument) => argument !== '--long');

const browser = ensureTestBrowser();
if (!browser && process.env.CI) {
  console.error(`CI is set and there is no Chromium for the window tests. Install one: ${INSTALL_LINE}`);
}

mkdirSync(join(top, '.build', 'tests'), { recursive: true });
const run = spawnSync(
  process.execPath,
  [
    join(top, 'node_modules', 'vitest', 'vitest.mjs'),
    'run',
    '--config',
    join(top, 'tests', 'vitest.config.ts'),
    '--reporter=default',
    '--reporter=json',
    `--outputFile.json=${report}`,
    ...handedOn,
  ],
  {
    cwd: top,
    stdio: 'inherit',
    env: { ...process.env, ...(browser && { CHROMIUM: browser }), ...(isLong && { HOURS_LONG: '1' }) },
  },
);

const counts = countsOf(report);
rmSync(report, { force: true });
if (!browser) {
  console.log(`\nNO BROWSER: the window tests did not run (${counts.skipped} skipped). Install one: ${INSTALL_LINE}`);
} else if (counts.skipped > 0) {
  console.log(`\n${counts.skipped} skipped`);
}
// a run that broke off without naming a test, or that ran none, is a failed one
const failed = counts.failed > 0 ? counts.failed : run.status === 0 && counts.passed > 0 ? 0 : 1;
console.log(`\n${counts.passed} passed, ${failed} failed`);
process.exitCode = failed > 0 ? 1 : 0;

type Report = {
  numPassedTests: number;
  numPendingTests: number;
  testResults: { status: string; assertionResults: { status: string }[] }[];
};

/** Tests counted one by one; a file that could not be read at all counts as one that failed. */
function countsOf(file: string): { passed: number; failed: number; skipped: number } {
  let read: Report;
  try {
    read = JSON.parse(readFileSync(file, 'utf8')) as Report;
  } catch {
    return { passed: 0, failed: 0, skipped: 0 };
  }
  const failedIn = ({ status, assertionResults }: Report['testResults'][number]): number => {
    const tests = assertionResults.filter((test) => test.status === 'failed').length;
    return tests === 0 && status === 'failed' ? 1 : tests;
  };
  return {
    passed: read.numPassedTests,
    failed: read.testResults.reduce((sum, result) => sum + failedIn(result), 0),
    skipped: read.numPendingTests,
  };
}
