import { join } from 'node:path';
import type { Browser, Page } from 'playwright-core';
import { afterAll, beforeAll, describe, expect, test } from 'vitest';
import { serveLoopback } from '#core/shells/web.ts';
import { expectAxeClean } from '#tests/app/screens.ts';
import { INSTALL_LINE, testBrowserPath } from '#tests/support/browser.ts';
import { testBrowser } from './windowTest.ts';

/** The marks and the machine's picture in a real browser, as built, under the loopback shell's own content policy. */
const browserPath = testBrowserPath();
let browser: Browser;
let shell: Awaited<ReturnType<typeof serveLoopback>>;
let errors: string[] = [];

let shown: Page | null = null;

/** All tests look at one window, of the size and colours asked for, at a sheet newly drawn. */
async function openPage(
  hash: string,
  { width = 1280, height = 800, scheme = 'light' as 'light' | 'dark' } = {},
): Promise<Page> {
  shown ??= await newPage();
  await goTo(shown, '/nowhere');
  await shown.setViewportSize({ width, height });
  await shown.emulateMedia({ colorScheme: scheme });
  await goTo(shown, hash);
  return shown;
}

async function newPage(): Promise<Page> {
  const context = await browser.newContext({ reducedMotion: 'reduce' });
  const page = await context.newPage();
  page.on('console', (message) => message.type() === 'error' && errors.push(message.text()));
  page.on('pageerror', (error) => errors.push(String(error)));
  await page.goto(shell.address);
  return page;
}

async function goTo(page: Page, hash: string): Promise<void> {
  await page.evaluate((to) => {
    window.location.hash = to;
  }, hash);
  if (hash === '/nowhere') {
    await page.locator('.marks-page, .fields, .machine-picture').waitFor({ state: 'detached' });
    return;
  }
  const standing = { '/marks': '.marks-page', '/marks/controls': '.fields' }[hash] ?? '.machine-picture';
  await page.locator(standing).waitFor();
  if (standing === '.machine-picture') await page.getByText(hash.split('/').at(-1) ?? '', { exact: true }).waitFor();
  await page.evaluate(() => document.fonts.ready);
}

type Edges = { left: number; right: number; top: number; bottom: number };

/** Lines of text have some air above their letters. */
const meet = (a: Edges, b: Edges): boolean =>
  a.left < b.right && b.left < a.right && a.top + 3 < b.bottom && b.top + 3 < a.bottom;

/** Where the elements of one kind stand, to see what touches what. */
const boxesOf = (page: Page, selector: string) =>
  page.locator(selector).evaluateAll((elements): Edges[] =>
    elements.map((element) => {
      const { left, right, top, bottom } = element.getBoundingClientRect();
      return { left, right, top, bottom };
    }),
  );

describe.skipIf(browserPath === undefined && !process.env.CI)(`in a browser (none: ${INSTALL_LINE})`, () => {
  beforeAll(async () => {
    if (browserPath === undefined) throw new Error(`no Chromium for the window tests; install one: ${INSTALL_LINE}`);
    shell = await serveLoopback({
      ask: async () => ({ ok: false, fault: { code: 'no-record', facts: {} } }),
      pageFolder: join(import.meta.dirname, '../../.build/renderer'),
    });
    browser = await testBrowser(browserPath);
  });
  afterAll(async () => {
    await shown?.context().close();
    await shell?.close();
  });

  test('every mark stands on the page twice, light and dark, and no hatch shares an id', async () => {
    errors = [];
    const page = await openPage('/marks', { height: 1100 });
    const marks = await page
      .locator('[data-mark]')
      .evaluateAll((items) => items.map((item) => item.getAttribute('data-mark')));
    expect(marks.length).toBeGreaterThanOrEqual(46);
    for (const mark of new Set(marks)) expect(marks.filter((name) => name === mark)).toHaveLength(2);
    const drawn = await page
      .locator('[data-mark] > svg')
      .evaluateAll((pictures) => pictures.map((svg) => (svg as SVGSVGElement).getBBox().width));
    expect(Math.min(...drawn)).toBeGreaterThan(10);
    const ids = await page.locator('pattern').evaluateAll((patterns) => patterns.map((pattern) => pattern.id));
    expect(new Set(ids).size).toBe(ids.length);
    expect(ids.length).toBeGreaterThan(10);
    const sheets = await page
      .locator('.marks-half')
      .evaluateAll((halves) => halves.map((half) => getComputedStyle(half).backgroundColor));
    expect(sheets).toEqual(['rgb(250, 251, 248)', 'rgb(21, 27, 28)']);
    expect(errors).toEqual([]);
  });

  test.each([
    ['light', ['/marks', '/marks/picture/ordinary', '/marks/controls']],
    ['dark', ['/marks/picture/forty-positions']],
  ] as const)('axe finds nothing against the marks and the picture, %s', async (scheme, hashes) => {
    const page = await openPage('/marks', { scheme });
    for (const hash of hashes) {
      await goTo(page, hash);
      await expectAxeClean(page, hash, ['page-has-heading-one', 'region']);
    }
  });

  test('a reading stands at the same pixel in the chart as its hours on the axis above', async () => {
    errors = [];
    for (const width of [1280, 1919, 1105]) {
      const page = await openPage('/marks/picture/ordinary', { width });
      // what recharts drew of the curve through the readings: its first point is the renewal, its last present hours
      const curve = await page
        .locator('.wear-fitted-middle path')
        .first()
        .evaluate((path) => {
          const line = path as SVGPathElement;
          const matrix = line.getScreenCTM();
          const at = (length: number) =>
            matrix ? line.getPointAtLength(length).matrixTransform(matrix) : new DOMPoint();
          return { first: at(0).x, last: at(line.getTotalLength()).x };
        });
      const dots = await boxesOf(page, '[data-reading-x] circle');
      const centres = dots.map((dot) => (dot.left + dot.right) / 2);
      const now = await boxesOf(page, '.picture-ground .l-now');
      const nowX = ((now[0]?.left ?? 0) + (now[0]?.right ?? 0)) / 2;
      const fittedAt = await boxesOf(page, '[role="option"][aria-selected="true"] .row-marks path.ink');
      const renewalX = ((fittedAt[0]?.left ?? 0) + (fittedAt[0]?.right ?? 0)) / 2;
      expect(Math.abs(curve.last - nowX)).toBeLessThan(0.5);
      expect(Math.abs(curve.first - renewalX)).toBeLessThan(0.5);
      expect(Math.abs(Math.max(...centres) - nowX)).toBeLessThan(0.5);
      expect(Math.abs(Math.min(...centres) - renewalX)).toBeLessThan(0.5);
    }
    expect(errors).toEqual([]);
  });

  test('the bar in the chart hangs where the fan meets the limit, under the bar of its row', async () => {
    const page = await openPage('/marks/picture/ordinary');
    const [row] = await boxesOf(page, '[role="option"][aria-selected="true"] .row-marks .bar-own');
    const [hung] = await boxesOf(page, '.wear-labels .bar-own');
    expect(hung?.left).toBeCloseTo(row?.left ?? 0, 1);
    expect(hung?.right).toBeCloseTo(row?.right ?? 0, 1);
  });

  test('figures of the rule and names of winters never touch, from a little used machine to one of 60 000 h', async () => {
    const page = await openPage('/marks/picture/ordinary');
    for (const sample of ['ordinary', 'forty-positions', 'little-used', 'sixty-thousand-hours']) {
      await goTo(page, `/marks/picture/${sample}`);
      for (const width of [1100, 1280, 1920, 640]) {
        await page.setViewportSize({ width, height: 800 });
        await page
          .locator(
            `.picture-head svg[width="${await page.locator('.machine-picture').evaluate((box) => box.clientWidth)}"]`,
          )
          .waitFor();
        const words = await boxesOf(page, '.picture-head text');
        const meeting = words.flatMap((a, i) =>
          words
            .slice(i + 1)
            .filter((b) => meet(a, b))
            .map((b) => [a, b]),
        );
        expect(meeting, `${sample} at ${width}`).toEqual([]);
        expect(words.length).toBeGreaterThan(5);
      }
    }
  });

  test('rows are chosen by arrows, by item number and by pointer, and each is one sentence to a screen reader', async () => {
    const page = await openPage('/marks/picture/ordinary');
    const chosen = page.locator('[role="option"][aria-selected="true"]');
    expect(await chosen.locator('.said').textContent()).toBe(
      '3 Slide strip, bottom front: 1\u2009210 to 2\u2009720 hours left, likely 1\u2009860; 3 own readings, 14 like parts; leave',
    );
    await page.locator('[role="listbox"]').focus();
    await page.keyboard.press('ArrowDown');
    expect(await chosen.locator('.said').textContent()).toMatch(/^4 Slide strip, bottom rear: 150 to 880 hours left/);
    await page.keyboard.press('End');
    expect(await chosen.locator('.said').textContent()).toMatch(/^12 /);
    await page.waitForTimeout(900);
    await page.keyboard.type('11');
    expect(await chosen.locator('.said').textContent()).toMatch(/^11 .*DO NOT USE: crack at weld toe, 34 mm/);
    await page.locator('[role="option"]').nth(1).click();
    expect(await chosen.locator('.said').textContent()).toMatch(/^2 /);
  });

  test('forty rows scroll under a rule that stays, and no row is cut through', async () => {
    const page = await openPage('/marks/picture/forty-positions');
    const before = await page.locator('.picture-head').boundingBox();
    await page.locator('[role="listbox"]').focus();
    await page.keyboard.press('End');
    const scroll = await page.locator('.picture-scroll').boundingBox();
    const last = await page.locator('[role="option"]').last().boundingBox();
    expect(await page.locator('.picture-head').boundingBox()).toEqual(before);
    expect((last?.y ?? 0) + (last?.height ?? 0)).toBeLessThanOrEqual((scroll?.y ?? 0) + (scroll?.height ?? 0) + 1);
    expect(((scroll?.height ?? 0) - 4) % 24).toBe(0);
  });

  test('at 200 % zoom everything is still reached by scrolling down, nothing runs off to the side', async () => {
    const page = await openPage('/marks/picture/ordinary', { width: 640, height: 400 });
    const body = await page.evaluate(() => ({
      wide: document.documentElement.scrollWidth,
      high: document.documentElement.scrollHeight,
    }));
    expect(body.wide).toBeLessThanOrEqual(640);
    expect(body.high).toBeGreaterThan(900);
  });

  test('a letter presses its key, but not while a box has the focus; with Alt it does there too', async () => {
    const page = await openPage('/marks/controls');
    await page.keyboard.press('s');
    await page.getByText('pressed: Save').waitFor();
    await page.getByLabel('Name').fill('');
    await page.getByLabel('Name').press('t');
    expect(await page.getByLabel('Name').inputValue()).toBe('t');
    expect(await page.getByText('pressed: Save').count()).toBe(1);
    await page.keyboard.press('Alt+t');
    await page.getByText('pressed: Throw away').waitFor();
    await page.getByLabel('Name').blur();
    await page.keyboard.press('c');
    expect(await page.getByText('pressed: Nothing to save').count()).toBe(0);
    await page.keyboard.press('k');
    await page.locator('.question').waitFor({ state: 'detached' });
  });

  test('Enter or the space bar held down press a key once', async () => {
    const page = await openPage('/marks/controls');
    await page.evaluate(() => {
      const counting = Object.assign(window, { presses: 0 });
      window.addEventListener('click', () => counting.presses++, true);
    });
    await page.getByRole('button', { name: 'Save', exact: true }).focus();
    for (const key of ['Enter', 'Space']) {
      for (let times = 0; times < 3; times++) await page.keyboard.down(key);
      await page.keyboard.up(key);
    }
    expect(await page.evaluate(() => (window as unknown as { presses: number }).presses)).toBe(2);
  });

  test('what is typed is echoed as understood, and questioned where it can be read two ways', async () => {
    const page = await openPage('/marks/controls');
    await page.getByLabel('Bottom rear').fill('10,2');
    await page.getByText('10.20\u00A0mm', { exact: true }).waitFor();
    await page.getByLabel('Dial').fill('4.120');
    await page.getByText('Thousands or decimals? Write 4120 or 4.12').waitFor();
    await page.getByLabel('Dial').fill('4120');
    await page.getByText('4\u2009120\u00A0h', { exact: true }).waitFor();
    await page.getByLabel('Read on').fill('12 oct');
    await page.getByText('12 Oct 2026', { exact: true }).waitFor();
    await page.getByLabel('Read on').fill('1.1.2027');
    await page.getByText('That day has not come yet').waitFor();
    await page.getByRole('combobox', { name: 'Machine' }).fill('tarn');
    await page.getByRole('option', { name: 'Tarn loader' }).click();
    expect(await page.getByRole('combobox', { name: 'Machine' }).inputValue()).toBe('Tarn loader');
  });

  test('keys are 31 px high in the office and 48 at the bench, which is always light', async () => {
    const page = await openPage('/marks/controls', { scheme: 'dark' });
    const save = page.getByRole('button', { name: 'Save', exact: false }).last();
    expect((await save.boundingBox())?.height).toBe(31);
    await page.keyboard.press('b');
    await page.locator('main[data-bench]').waitFor();
    expect((await save.boundingBox())?.height).toBe(48);
    expect(await page.locator('main').evaluate((sheet) => getComputedStyle(sheet).backgroundColor)).toBe(
      'rgb(250, 251, 248)',
    );
  });
});
