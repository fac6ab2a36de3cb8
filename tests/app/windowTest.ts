import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { type Browser, chromium, type Page } from 'playwright-core';
import { expect, test } from 'vitest';
import { type OpenProgram, openProgram } from '#core/shells/openProgram.ts';
import { serveLoopback } from '#core/shells/web.ts';
import { BROWSER_FLAGS, INSTALL_LINE, testBrowserPath } from '#tests/support/browser.ts';
import { layLearnedDemo } from '#tests/support/learnedDemo.ts';
import { makeSteady } from './steadyPage.ts';

const PAGE_FOLDER = join(import.meta.dirname, '../../.build/renderer');

export type OpenOptions = {
  /** absent: a new one, in an empty folder that is taken away afterwards */
  recordPath?: string;
  /** absent: the new folder */
  dataFolder?: string;
  /** ISO day taken as today */
  asOf?: string;
  /** the demo workshop, learned already: there to be opened, or open when the window shows */
  demo?: 'at hand' | 'open';
  /** the first-run tour is offered, as to somebody new */
  isNewHere?: boolean;
  width?: number;
  height?: number;
  colorScheme?: 'light' | 'dark';
  /** the window's clock and number formats, as in "de-DE" */
  locale?: string;
};

export type OpenedWindow = {
  page: Page;
  /** asks the same program past the window, to prepare or to check */
  ask: OpenProgram['ask'];
  address: string;
  recordPath: string;
  folder: string;
};

/** A window in which nothing stands yet: the program can be asked first, and what the window shows begins with that. */
export type PreparedWindow = OpenedWindow & { show(): Promise<unknown> };

export type WindowTools = {
  open(options?: OpenOptions): Promise<OpenedWindow>;
  prepare(options?: OpenOptions): Promise<PreparedWindow>;
};
type WindowTest = (tools: WindowTools) => Promise<void>;
type TestOptions = {
  /** the test provokes errors in the console and looks at them itself */
  expectErrors?: boolean;
  timeoutMs?: number;
};

/** Ample for a slow or busy computer: a window test judges what is shown, never how fast. */
const WINDOW_TEST_MS = 300_000;
const ONE_STEP_MS = 90_000;

/**
 * A test of the program in a real window: the loopback shell, the built page, Chromium. An error that the page logs
 * or throws fails the test. Without a browser it is skipped and counted; with CI set it fails.
 *
 * @example windowTest('a fitter finds a machine', async ({ open }) => { const { page } = await open(); ... });
 * @example const { ask, show } = await prepare(); await smallShop(ask); await show(); // no window drawn for nothing
 */
export function windowTest(
  title: string,
  body: WindowTest,
  { expectErrors = false, timeoutMs = WINDOW_TEST_MS }: TestOptions = {},
): void {
  const browserPath = testBrowserPath();
  if (browserPath === undefined) {
    const missing = () => expect.fail(`no Chromium for the window tests; install one: ${INSTALL_LINE}`);
    if (process.env.CI) test(title, missing);
    else test.skip(`${title} (no Chromium; install one: ${INSTALL_LINE})`, missing);
    return;
  }
  test(title, { timeout: timeoutMs }, async () => {
    const endings: (() => Promise<unknown>)[] = [];
    const errors: string[] = [];
    try {
      const browser = await testBrowser(browserPath);
      const prepare: WindowTools['prepare'] = (options = {}) => prepareWindow(browser, options, endings, errors);
      const open: WindowTools['open'] = async (options) => {
        const prepared = await prepare(options);
        await prepared.show();
        return prepared;
      };
      await body({ open, prepare });
      if (!expectErrors) expect(errors).toEqual([]);
    } finally {
      for (const end of endings.reverse()) await end();
    }
  });
}

/** One browser serves all files of a process, and ends with it: each window has nothing of the others' in it. */
let running: Promise<Browser> | null = null;
export function testBrowser(executablePath: string): Promise<Browser> {
  running ??= chromium.launch({ executablePath, args: BROWSER_FLAGS });
  return running;
}

/** Where each opened program would lay down its record. */
const recordPaths = new WeakMap<OpenProgram['ask'], string>();
export const recordPathOf = (ask: OpenProgram['ask']): string => recordPaths.get(ask) ?? '';

async function prepareWindow(
  browser: Browser,
  options: OpenOptions,
  endings: (() => Promise<unknown>)[],
  errors: string[],
): Promise<PreparedWindow> {
  const folder = mkdtempSync(join(tmpdir(), 'window-test-'));
  endings.push(async () => rmSync(folder, { recursive: true, force: true }));
  const recordPath = options.recordPath ?? join(folder, 'shop.hoursandwear');
  if (options.demo) await layLearnedDemo(folder);
  const program = await openProgram({
    recordPath,
    dataFolder: options.dataFolder ?? folder,
    ...(options.asOf !== undefined && { asOf: options.asOf }),
    log: ({ operation, error }) => errors.push(`${operation}: ${error.stack ?? error.message}`),
  });
  endings.push(() => program.close());
  recordPaths.set(program.ask, recordPath);
  if (options.demo === 'open') await program.ask('record/openDemo', {});
  const loopback = await serveLoopback({ ask: program.ask, pageFolder: PAGE_FOLDER });
  endings.push(() => loopback.close());

  const context = await browser.newContext({
    viewport: { width: options.width ?? 1360, height: options.height ?? 860 },
    colorScheme: options.colorScheme ?? 'light',
    locale: options.locale ?? 'en-GB',
    reducedMotion: 'reduce',
    acceptDownloads: true,
  });
  endings.push(() => context.close());
  if (!options.isNewHere) {
    await context.addInitScript(
      () => window.localStorage.getItem('tour') ?? window.localStorage.setItem('tour', 'out'),
    );
  }
  const page = await context.newPage();
  page.setDefaultTimeout(ONE_STEP_MS);
  await makeSteady(page);
  page.on('console', (message) => {
    if (message.type() === 'error') errors.push(`console: ${message.text()}`);
  });
  page.on('pageerror', (error) => errors.push(`page: ${error.stack ?? error.message}`));
  const { address } = loopback;
  return { page, ask: program.ask, address, recordPath, folder, show: () => page.goto(address) };
}
