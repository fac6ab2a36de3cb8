import { spawnSync } from 'node:child_process';
import { mkdirSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { join, relative } from 'node:path';
import { ensureTestBrowser, INSTALL_LINE } from './support/browser.ts';

/**
 * `npm test`: gets a browser for the window tests, runs every test, and closes with the line "N passed, N failed". `npm run
 * test:long`: the files that try more cases when there is time for it, each case they have, and before that line what each file
 * took. Arguments are handed on to the test runner, as in `npm test -- core/fit`.
 */

const top = join(import.meta.dirname, '..');
const report = join(top, '.build', 'tests', `report-${process.pid}.json`);
const isLong = process.argv.includes('--long');
const asked = process.argv.slice(2).filter((argument) => argument !== '--long');
const handedOn = isLong && asked.length === 0 ? filesThatTryMore() : asked;

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
if (isLong) console.log(`\n${accountOf(report).join('\n')}`);
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
  testResults: {
    name: string;
    startTime: number;
    endTime: number;
    status: string;
    assertionResults: { status: string; fullName: string }[];
  }[];
};

function readReport(file: string): Report | null {
  try {
    return JSON.parse(readFileSync(file, 'utf8')) as Report;
  } catch {
    return null;
  }
}

/** Test files whose counts are larger in the long run: those that go by tests/support/counts.ts. */
function filesThatTryMore(): string[] {
  return ['core', 'tests'].flatMap((folder) =>
    readdirSync(join(top, folder), { recursive: true, encoding: 'utf8' })
      .filter((name) => name.endsWith('.test.ts'))
      .map((name) => join(folder, name))
      .filter((path) => readFileSync(join(top, path), 'utf8').includes('support/counts.ts')),
  );
}

/** A line a file, the longest first: minutes, how many of its tests passed, and those that did not by name. */
function accountOf(file: string): string[] {
  const results = readReport(file)?.testResults ?? [];
  const lines = results
    .toSorted((a, b) => b.endTime - b.startTime - (a.endTime - a.startTime))
    .map(({ name, startTime, endTime, assertionResults }) => {
      const minutes = ((endTime - startTime) / 60_000).toFixed(1).padStart(6);
      const of = (status: string) => assertionResults.filter((test) => test.status === status);
      const failed = of('failed').map(({ fullName }) => `\n        FAILED ${fullName}`);
      return `${minutes}  ${String(of('passed').length).padStart(6)}  ${relative(top, name)}${failed.join('')}`;
    });
  return ['minutes  passed  file (several run at once)', ...lines];
}

/** Tests counted one by one; a file that could not be read at all counts as one that failed. */
function countsOf(file: string): { passed: number; failed: number; skipped: number } {
  const read = readReport(file);
  if (!read) return { passed: 0, failed: 0, skipped: 0 };
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
