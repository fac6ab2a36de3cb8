import { spawn } from 'node:child_process';
import { join } from 'node:path';
import { createInterface } from 'node:readline';
import { type Browser, type CDPSession, chromium, type Page } from 'playwright-core';
import { BROWSER_FLAGS, testBrowserPath } from '#tests/support/browser.ts';
import { BENCH_FOLDER } from './build.ts';
import { quantile } from './measure.ts';

const PAGE_FOLDER = join(import.meta.dirname, '../../.build/renderer');
/** One page's time by the clock lies as its frames fall: so many sizes are saved after each other, and the middle is told. */
const SAVES = 7;

/** What a real browser makes of a record, over the loopback shell: the program's process started anew for it. */
export type InWindow = {
  /** from the start of the program to rows that can be read and pressed [ms] */
  usableMs: number;
  /** tasks that blocked the window for over 50 ms, while the list opened, scrolled, and a size was saved, the most of one save; the longest [ms] */
  longTasks: { opening: number; scrolling: number; saving: number; longestMs: number };
  /** share of the frames of a scroll that came within 20 ms of the one before, of 60 in a second */
  framesInTime: number;
  /** the same of a bare page of that height in the same browser */
  bareFramesInTime: number;
  /** null: nothing was saved */
  saving: Saving | null;
  /** peak memory of the program's process [MB] */
  peakMb: number;
};

/** A machine's page opened from the list, then one of its sizes typed at the bench and saved, and its page again, time after time: each to its last change. */
export type Saving = {
  /** its page drawn for the first time, from the key [ms] */
  firstMs: number;
  /** from the key that saves to the page that says what moved: the middle of the saves [ms] */
  savedMs: number;
  /** its page drawn anew with what the size has moved, from the key: the middle of the saves, and the worst [ms] */
  machineMs: number;
  machineWorstMs: number;
  /** what of that the window's own thread worked: the middle of the saves [ms of the processor] */
  machineCpuMs: number;
};

/** Null: there is no Chromium to look with. */
export async function inWindow(recordPath: string, kept: boolean): Promise<InWindow | null> {
  const executablePath = testBrowserPath();
  if (executablePath === undefined) return null;
  const browser = await chromium.launch({ executablePath, args: BROWSER_FLAGS });
  try {
    return await looked(browser, recordPath, kept);
  } finally {
    await browser.close();
  }
}

async function looked(browser: Browser, recordPath: string, kept: boolean): Promise<InWindow> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 }, locale: 'en-GB' });
  await context.addInitScript(() => window.localStorage.setItem('tour', 'out'));
  await context.addInitScript(watchTheWindow);
  await context.addInitScript(leaveOutIcon);
  const page = await context.newPage();
  const bareFramesInTime = await barePage(browser); // before the program starts: a new record must not be learned meanwhile
  const from = performance.now();
  const program = spawn(process.execPath, [join(BENCH_FOLDER, 'serve.js'), recordPath, PAGE_FOLDER], {
    stdio: ['pipe', 'pipe', 'inherit'],
  });
  try {
    const lines = createInterface({ input: program.stdout })[Symbol.asyncIterator]();
    await page.goto((await lines.next()).value as string);
    await page.locator('.machine-row .machine-name').first().waitFor({ timeout: 300_000 });
    const usableMs = performance.now() - from;
    const opening = await longTasks(page);
    const framesInTime = await scrolled(page, '.machines-list');
    const scrolling = await longTasks(page);
    const { saving, whileSaving } = kept ? await saved(page) : { saving: null, whileSaving: [[]] };
    program.stdin.write('\n');
    const peakMb = Number((await lines.next()).value);
    const longestMs = Math.max(0, ...opening, ...scrolling, ...whileSaving.flat());
    return {
      ...{ usableMs, framesInTime, bareFramesInTime, saving, peakMb },
      longTasks: {
        ...{ opening: opening.length, scrolling: scrolling.length, longestMs },
        saving: Math.max(...whileSaving.map((tasks) => tasks.length)),
      },
    };
  } finally {
    program.kill();
  }
}

type Watched = Window & { tasks: number[]; keyAt: number; changedAt: number };

/** Runs in the page: notes long tasks, the last key and the last change of what stands in it. */
function watchTheWindow(): void {
  const watched = window as unknown as Watched;
  Object.assign(watched, { tasks: [], keyAt: 0, changedAt: 0 });
  new PerformanceObserver((list) => {
    for (const { duration } of list.getEntries()) watched.tasks.push(duration);
  }).observe({ type: 'longtask', buffered: true });
  window.addEventListener('keydown', () => (watched.keyAt = performance.now()), true);
  new MutationObserver(() => {
    requestAnimationFrame(() => (watched.changedAt = performance.now()));
  }).observe(document, { subtree: true, childList: true, attributes: true, characterData: true });
}

/** Runs in the page: a window of a test's browser fetches the icon anew, and draws it, at each address; the program's own has none. */
function leaveOutIcon(): void {
  document.addEventListener('DOMContentLoaded', () => {
    document.querySelector('link[rel="icon"]')?.setAttribute('href', 'data:,');
  });
}

/** Long tasks since this was last asked [ms]. */
const longTasks = (page: Page): Promise<number[]> =>
  page.evaluate(() => (window as unknown as Watched).tasks.splice(0));

/** A steady scroll of four seconds, about twelve rows a second at first and two hundred at last: the share of frames in time. */
const scrolled = (page: Page, box: string): Promise<number> =>
  page.evaluate(async (selector) => {
    const list = document.querySelector(selector);
    const frames: number[] = [];
    let before = await new Promise<number>(requestAnimationFrame);
    for (let frame = 0; frame < 240; frame++) {
      list?.scrollBy(0, 8 + frame / 2);
      const now = await new Promise<number>(requestAnimationFrame);
      frames.push(now - before);
      before = now;
    }
    return frames.filter((ms) => ms < 20).length / frames.length;
  }, box);

/** The same scroll of a page as high as the list that holds stripes alone: what this browser on this computer can do at best. */
async function barePage(browser: Browser): Promise<number> {
  const context = await browser.newContext({ viewport: { width: 1280, height: 800 } });
  const page = await context.newPage();
  await page.setContent(
    '<body style="margin:0"><div id="box" style="height:100vh;overflow:auto"><div style="height:205000px;background:repeating-linear-gradient(#fff 0 40px,#888 40px 41px)"></div></div>',
  );
  await page.waitForTimeout(500);
  const share = await scrolled(page, '#box');
  await context.close();
  return share;
}

const MACHINE = '.machine-picture-room';

/** By keys alone, as at a bench; the long tasks of each save beside it, the page's first drawing among those of the first. */
async function saved(page: Page): Promise<{ saving: Saving; whileSaving: number[][] }> {
  const worked = await threadOf(page);
  const firstMs = await quiet(page, 'Enter', MACHINE);
  const saves: { savedMs: number; machineMs: number; machineCpuMs: number }[] = [];
  const whileSaving: number[][] = [];
  for (let save = 0; save < SAVES; save++) {
    saves.push(await savedOnce(page, worked));
    whileSaving.push(await longTasks(page));
  }
  const middle = (of: (save: (typeof saves)[number]) => number) => quantile(saves.map(of), 0.5);
  return {
    saving: {
      firstMs,
      savedMs: middle(({ savedMs }) => savedMs),
      machineMs: middle(({ machineMs }) => machineMs),
      machineWorstMs: Math.max(...saves.map(({ machineMs }) => machineMs)),
      machineCpuMs: middle(({ machineCpuMs }) => machineCpuMs),
    },
    whileSaving,
  };
}

/** From the machine's page, at rest, through the bench and what moved to the same page at rest. */
async function savedOnce(page: Page, worked: () => Promise<number>) {
  await page.keyboard.press('s');
  const box = page.locator('.grid-row input').first();
  await box.waitFor();
  await box.fill((await box.getAttribute('placeholder')) || '11');
  await page.keyboard.press('Enter');
  await page.waitForTimeout(1500); // it is kept as typed, and asked what is odd about it
  if (await page.locator('.asked').count()) await page.keyboard.press('k');
  const savedMs = await quiet(page, 'Control+Enter', '.sheet-head .key.first:has-text("M")');
  const before = await worked();
  const machineMs = await quiet(page, 'm', MACHINE);
  return { savedMs, machineMs, machineCpuMs: (await worked()) - before };
}

/** What the window's own thread has worked so far, waiting for the processor left out [ms]. */
async function threadOf(page: Page): Promise<() => Promise<number>> {
  const devtools: CDPSession = await page.context().newCDPSession(page);
  await devtools.send('Performance.enable', { timeDomain: 'threadTicks' });
  return async () => {
    const { metrics } = await devtools.send('Performance.getMetrics');
    return 1000 * (metrics.find(({ name }) => name === 'TaskDuration')?.value ?? 0);
  };
}

/** From a key to the last change of the page, once it stands and nothing has changed for a while [ms]. */
async function quiet(page: Page, key: string, until: string): Promise<number> {
  await page.keyboard.press(key);
  await page.locator(until).first().waitFor();
  await page.waitForTimeout(700);
  return page.evaluate(() => {
    const { changedAt, keyAt } = window as unknown as Watched;
    return changedAt - keyAt;
  });
}
