import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { machineRead, machinesList } from '#core/contract/machine.ts';
import { rebuildTakeIn } from '#core/contract/rebuild.ts';
import { recordStartEmpty } from '#core/contract/record.ts';
import { slipMake } from '#core/contract/slip.ts';
import type { OpenProgram } from '#core/shells/openProgram.ts';
import { routes } from '#renderer/screens/routes.tsx';
import { frameWords } from '#renderer/words/frameWords.ts';
import { longRun } from '#tests/support/counts.ts';
import { expectAxeCleanDayAndNight, leaveFor, smallShop, told } from './screens.ts';
import { atRest } from './steadyPage.ts';
import { windowTest } from './windowTest.ts';

const MACHINE = 1;

/** These stand at once: boxes to be filled in, keys to be pressed, and what the frame knows already. */
const STAND_AT_ONCE = new Set(['/phone', '/take-in', '/take-in/:machineId', '/shop', '/exchange', '/fits', '/start']);

/** What the addresses name: of a machine with a slide, with a slip and a job made for it. */
async function namedThings(ask: OpenProgram['ask']): Promise<Record<string, string>> {
  const { points } = await told(ask, machineRead, { machineId: MACHINE });
  const { machines } = await told(ask, machinesList, { atOnce: true });
  const withSlide = machines.find((line) => line.assemblies.some((name) => /pick-up hitch/i.test(name)));
  if (!withSlide) throw new Error('the demo has a machine with a pick-up hitch');
  const slides = (await told(ask, machineRead, { machineId: withSlide.machineId })).assemblies;
  const { slipId } = await told(ask, slipMake, { machineId: MACHINE, by: 'Ines' });
  const { rebuildId } = await told(ask, rebuildTakeIn, {
    machineId: MACHINE,
    takenInOn: '2026-11-02',
    wantedBy: null,
    complaint: 'It knocks.',
    dialHours: null,
    comeback: true,
    by: 'Ines',
  });
  return {
    machineId: String(MACHINE),
    assemblyId: String(slides.find(({ name }) => /pick-up hitch/i.test(name))?.assemblyId),
    positionId: String(points[0]?.positionId),
    pointId: String(points[0]?.pointId),
    takenOn: points[0]?.visits.at(-1)?.takenOn ?? '',
    panel: 'why',
    choice: 'bush',
    stripDownId: '1',
    customerId: '1',
    rebuildId: String(rebuildId),
    slipId: String(slipId),
    paper: 'job-card',
    of: String(MACHINE),
  };
}

/** Nothing is still being drawn, read or worked out, and a sheet with a title stands. */
async function settled(page: Page): Promise<boolean> {
  await atRest(page);
  const stands = () =>
    document.querySelector('.filling') === null && (document.querySelector('main h1')?.textContent ?? '') !== '';
  return page.waitForFunction(stands, null, { timeout: 60_000 }).then(
    () => true,
    () => false,
  );
}

/** What looks as if a press did something, and is no key, link or box: nobody without a pointer could press it. */
const pressedByPointerOnly = (page: Page) =>
  page.evaluate(() => {
    const pressed =
      'a[href], button, input, select, textarea, label, summary, option, [tabindex], [role="option"], [role="row"], [role="tab"]';
    return (
      [...document.querySelectorAll<HTMLElement>('body *')]
        .filter((element) => getComputedStyle(element).cursor === 'pointer' && element.closest(pressed) === null)
        // a ring of a sketch stands for a row, which is reached by its item number; an empty cell for none
        // a row that is pressed anywhere has its own link or key
        .filter((element) => !element.closest('tr')?.querySelector('a[href], button'))
        .filter((element) => element.closest('svg') === null && (element.textContent ?? '') !== '')
        .map((element) => element.outerHTML.slice(0, 120))
    );
  });

/**
 * At 200 % of a window of 1280 by 800: what runs off to the side, what has to be pushed sideways to be read or is cut off though
 * it is neither a table nor a picture in a box of its own, and keys and boxes that no scrolling brings in sight.
 *
 * @source WCAG 2.2, success criteria 1.4.4 Resize Text and 1.4.10 Reflow: "except for parts of the content which require
 * two-dimensional layout for usage or meaning", by its note data tables, maps, diagrams among them
 */
async function lostWhenZoomed(page: Page): Promise<string[]> {
  await atRest(page);
  return page.evaluate(() => {
    const named = (element: Element): string => element.outerHTML.slice(0, 140);
    const lost = [...document.querySelectorAll<HTMLElement>('a[href], button, input, select, textarea, summary, h1')]
      .filter((element) => element.checkVisibility({ visibilityProperty: true }) && element.getClientRects().length > 0)
      // read out, not shown: its label or its row stands for it
      .filter(
        (element) =>
          element.getBoundingClientRect().width > 2 &&
          element.closest('.said, [aria-hidden="true"], [data-react-aria-top-layer]') === null,
      )
      .filter((element) => {
        element.scrollIntoView({ block: 'nearest', inline: 'nearest' });
        const { left, right, top, bottom } = element.getBoundingClientRect();
        return right <= 0 || left >= window.innerWidth || bottom <= 0 || top >= window.innerHeight;
      });

    const isOwnBox = ({ children }: Element): boolean =>
      [...children].every((child) => child.matches('table, [role="grid"], svg, img, iframe'));
    const wider = [document.documentElement, ...document.querySelectorAll<HTMLElement>('body *')]
      .filter(({ clientWidth, scrollWidth }) => clientWidth > 1 && scrollWidth > clientWidth + 1)
      // words laid over the picture of a paper, to be marked and copied: not seen
      .filter((box) => !box.matches('.textLayer'));
    const sideways = wider.filter((box) => {
      if (box === document.documentElement) return true;
      const { overflowX, textOverflow } = getComputedStyle(box);
      // a line that ends in an ellipsis is whole elsewhere
      if (['hidden', 'clip'].includes(overflowX)) return textOverflow !== 'ellipsis';
      return overflowX !== 'visible' && !(isOwnBox(box) && box.matches(':not(.sheet-body)'));
    });
    return [...lost.map((element) => `lost: ${named(element)}`), ...sideways.map((box) => `sideways: ${named(box)}`)];
  });
}

windowTest(
  'every screen: nothing axe knows a rule against by day or night, all by keys, nothing lost at 200 %',
  async ({ open }) => {
    const { page, ask } = await open({ asOf: '2026-11-02', demo: 'open', width: 1280, height: 800 });
    const named = await namedThings(ask);
    // the pages of marks are no screens: marksPage.test.ts looks at them
    const screens = routes.filter(({ free }) => !free);
    const addresses = screens.map(({ path }) =>
      path.replace(/:(\w+)/g, (_, name: string) => named[name] ?? `no ${name}`),
    );
    // an address whose name nobody gave a thing for would be a screen not looked at
    expect(addresses.filter((address) => /no |\/$/.test(address))).toEqual([]);
    const faults: string[] = [];
    const whole = async (address: string) => {
      await page.setViewportSize({ width: 1280, height: 800 });
      await expectAxeCleanDayAndNight(page, address).catch((fault: Error) => faults.push(fault.message.slice(0, 1500)));
      faults.push(...(await pressedByPointerOnly(page)).map((element) => `${address} pointer only: ${element}`));
    };
    const zoomed = async (address: string) => {
      await page.setViewportSize({ width: 640, height: 400 });
      faults.push(...(await lostWhenZoomed(page)).map((lost) => `${address} at 200 %: ${lost}`));
      if (longRun)
        await expectAxeCleanDayAndNight(page, `${address} at 200 %`).catch((fault: Error) =>
          faults.push(fault.message.slice(0, 1500)),
        );
    };
    for (const [n, address] of addresses.entries()) {
      await leaveFor(page, address);
      if (!(await settled(page))) faults.push(`${address}: nothing stands there`);
      // a screen opens at the size the one before was left at: at each change of it everything is laid out anew
      for (const look of n % 2 === 0 ? [whole, zoomed] : [zoomed, whole]) await look(address);
    }
    expect(faults).toEqual([]);
  },
  { timeoutMs: 900_000 },
);

if (longRun)
  windowTest('every screen of an empty record: nothing axe knows a rule against, at 200 % too', async ({ open }) => {
    const { page, ask } = await open({ asOf: '2026-11-02' });
    await told(ask, recordStartEmpty, {});
    await page.reload();
    const faults: string[] = [];
    for (const { path } of routes.filter(({ free, path }) => !free && !path.includes(':'))) {
      await page.setViewportSize({ width: 1280, height: 800 });
      await leaveFor(page, path);
      if (!(await settled(page))) faults.push(`${path}: nothing stands there`);
      for (const [size, width, height] of [['', 1280, 800] as const, ['at 200 %', 640, 400] as const]) {
        await page.setViewportSize({ width, height });
        await expectAxeCleanDayAndNight(page, `${path} ${size}`).catch((fault: Error) =>
          faults.push(fault.message.slice(0, 1500)),
        );
        faults.push(...(await lostWhenZoomed(page)).map((lost) => `${path} ${size}: ${lost}`));
      }
    }
    expect(faults).toEqual([]);
  });

windowTest(
  'an address of something that is not on record has its heading, says so, and has a way on',
  async ({ prepare }) => {
    const { page, ask, show } = await prepare({ asOf: '2026-11-02' });
    await told(ask, recordStartEmpty, {});
    await show();
    const named: Record<string, string> = { panel: 'why', choice: 'bush', paper: 'job-card', takenOn: '2025-01-10' };
    const paths = routes.filter(({ free, path }) => !free && path.includes(':')).map(({ path }) => path);
    const faults: string[] = [];
    for (const path of paths) {
      const address = path.replace(/:(\w+)/g, (_, name: string) => named[name] ?? '999999');
      await leaveFor(page, address);
      await settled(page);
      const heading = (await page.locator('main h1').allTextContents()).join('');
      const said = await page.locator('main [role=alert]').count();
      const keys = await page.locator('main [role=alert] button').allTextContents();
      if (heading === '' || said !== 1 || !keys.some((key) => /^(To the|Back|Another)/.test(key)))
        faults.push(`${address}: "${heading}", ${said} said, keys ${keys.join(', ')}`);
    }
    expect(faults).toEqual([]);
    expect(paths.length).toBeGreaterThan(12);
  },
);

windowTest('while the core is busy every screen has its heading and says what is waited for', async ({ open }) => {
  const { page, ask } = await open({ asOf: '2025-11-09' });
  const { machineId } = await smallShop(ask);
  const { points, assemblies } = await told(ask, machineRead, { machineId });
  const { slipId } = await told(ask, slipMake, { machineId, by: 'Ines' });
  const named: Record<string, string> = {
    ...{
      machineId: `${machineId}`,
      assemblyId: `${assemblies[0]?.assemblyId}`,
      slipId: `${slipId}`,
      of: `${machineId}`,
    },
    ...{
      positionId: `${points[0]?.positionId}`,
      pointId: `${points[0]?.pointId}`,
      takenOn: '2025-01-10',
      panel: 'why',
    },
    ...{ choice: 'bush', stripDownId: '1', customerId: '1', rebuildId: '1', paper: 'job-card' },
  };
  // the frame itself knows which record is open; whatever a screen asks for is not answered
  await page.route('**/op/**', (route) =>
    /\/op\/(record\/state|shop\/read)$/.test(route.request().url()) ? route.continue() : undefined,
  );
  await page.reload();
  const faults: string[] = [];
  for (const { path } of routes.filter(({ free, path }) => !free && !STAND_AT_ONCE.has(path))) {
    const address = path.replace(/:(\w+)/g, (_, name: string) => named[name] ?? '');
    await page.evaluate((to) => {
      window.location.hash = to;
      return new Promise((next) => requestAnimationFrame(() => requestAnimationFrame(() => setTimeout(next))));
    }, address);
    // the screen itself, not the frame's word that its code is on the way
    const stands = (code: string) =>
      (document.querySelector('main h1')?.textContent ?? '') !== '' &&
      [...document.querySelectorAll('main .filling')].some(({ textContent: said }) => said !== '' && said !== code);
    await page.waitForFunction(stands, frameWords.fetching, { timeout: 20_000 }).catch(() => faults.push(address));
  }
  expect(faults).toEqual([]);
});
