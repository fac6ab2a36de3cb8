import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { machinesList } from '#core/contract/machine.ts';
import { recordState } from '#core/contract/record.ts';
import { stripDownSheet } from '#core/contract/stripDown.ts';
import { tourSteps, tourWords } from '#renderer/words/tourWords.ts';
import { expectAxeCleanByNight, goTo, inchShop, smallShop, told } from './screens.ts';
import { atRest } from './steadyPage.ts';
import { windowTest } from './windowTest.ts';

/** Where the tour's keys and words would not be in sight, or something of the step stood off to the side. */
const outOfSight = (page: Page) =>
  page.evaluate(() => {
    const strip = document.querySelector('.help-strip');
    const lost = [...(strip?.querySelectorAll('h2, p, button') ?? [])].filter((element) => {
      const { left, right, top, bottom } = element.getBoundingClientRect();
      return left < 0 || top < 0 || right > window.innerWidth || bottom > window.innerHeight;
    });
    const wide = document.documentElement.scrollWidth > window.innerWidth + 1 ? ['the page runs off to the side'] : [];
    return [...wide, ...lost.map((element) => element.outerHTML.slice(0, 120))];
  });

windowTest(
  'from the first start through the whole tour to a record of one’s own, by keys alone, day, night and at 200 %',
  async ({ open }) => {
    const { page, ask } = await open({
      asOf: '2026-11-02',
      demo: 'at hand',
      isNewHere: true,
      width: 1280,
      height: 800,
    });
    await page.getByRole('button', { name: 'Open the demo workshop' }).waitFor();
    await page.keyboard.press('d');
    const tour = page.getByRole('region', { name: tourWords.region });
    await tour.getByText(tourWords.offerHead).waitFor();
    await expectAxeCleanByNight(page);
    await page.keyboard.press('F2');
    for (const [i, step] of tourSteps.entries()) {
      await tour.getByText(step.head).waitFor();
      expect(new URL(page.url()).hash).toBe(`#${step.at}`);
      await page.locator('main.sheet h1').first().waitFor();
      // its screens are walked by axe in everyScreen.test.ts: here, the strip with all its keys
      if (i === 1) await expectAxeCleanByNight(page, step.at);
      await page.setViewportSize({ width: 640, height: 400 });
      // a sheet that has yet to come puts the cursor in its first box, and that in sight
      await atRest(page);
      await page.evaluate(() => window.scrollTo(0, 0));
      expect(await outOfSight(page), `${step.at} at 200 %`).toEqual([]);
      await page.setViewportSize({ width: 1280, height: 800 });
      if (i < tourSteps.length - 1) await page.keyboard.press('F2');
    }
    await page.keyboard.press('F3');
    await tour.getByText(tourSteps.at(-2)?.head ?? '').waitFor();
    await page.keyboard.press('F2');
    await tour.getByText(tourSteps.at(-1)?.head ?? '').waitFor();
    await page.keyboard.press('F4');
    await tour.waitFor({ state: 'detached' });
    await page.reload();
    await page.locator('main.sheet h1').first().waitFor();
    expect(await tour.count()).toBe(0);

    await page.keyboard.press('F1');
    await page.getByRole('button', { name: 'Take the tour' }).click();
    await tour.getByText(tourSteps[0]?.head ?? '').waitFor();
    await page.keyboard.press('F4');
    // what its last step says comes next
    await goTo(page, '/start');
    await page.keyboard.press('e');
    await page.getByText('No machine on record yet').waitFor();
    expect(await told(ask, recordState, {})).toMatchObject({ isDemo: false, counts: { machines: 0 } });
    expect(await tour.count()).toBe(0);
  },
);

windowTest(
  'help answers where one works, by F1 from inside a box too, and gives the focus back',
  async ({ prepare }) => {
    const { page, ask, show } = await prepare({ asOf: '2026-11-02', demo: 'at hand', width: 1280, height: 800 });
    const { machineId } = await smallShop(ask);
    await show();
    await goTo(page, `/strip-down/${machineId}`);
    const first = page.locator('.grid-row input').first();
    await expect.poll(() => first.evaluate((box) => box === document.activeElement)).toBe(true);
    await page.keyboard.press('F1');
    const help = page.getByRole('region', { name: 'Help here' });
    await page.keyboard.press('Enter');
    await help.getByText('Hours the machine has worked since it was new.').waitFor();
    await expectAxeCleanByNight(page);
    await page.keyboard.press('Escape');
    await help.waitFor({ state: 'detached' });
    expect(await first.evaluate((box) => box === document.activeElement)).toBe(true);

    // on a record of one's own the tour asks before it opens the demo in its place
    await page.keyboard.press('F1');
    await help.getByRole('button', { name: 'Take the tour' }).click();
    await help.getByText('stays as it is').waitFor();
    expect(await told(ask, recordState, {})).toMatchObject({ isDemo: false });
    await help.getByRole('button', { name: 'Open the demo and start' }).click();
    await page
      .getByRole('region', { name: tourWords.region })
      .getByText(tourSteps[0]?.head ?? '')
      .waitFor();
    expect((await told(ask, machinesList, { atOnce: true })).machines.length).toBeGreaterThan(20);
  },
);

windowTest(
  'in a shop that measures in inches sizes are shown and typed in inches, and kept in mm',
  async ({ prepare }) => {
    const { page, ask, show } = await prepare({ asOf: '2025-11-09', width: 1280, height: 800 });
    const { machineId } = await inchShop(ask);
    await show();
    await goTo(page, `/strip-down/${machineId}`);
    await page.getByRole('columnheader', { name: 'Measuring point, in' }).waitFor();
    const first = page.locator('.grid-row input').first();
    await expect.poll(() => first.evaluate((box) => box === document.activeElement)).toBe(true);
    await page.keyboard.type('13/32');
    await page.keyboard.press('Enter');
    await expect.poll(() => first.inputValue()).toBe('0.40625');
    const keptMm = async () => (await told(ask, stripDownSheet, { machineId })).draft?.sizes[0]?.sizeMm;
    await expect.poll(keptMm).toBe(10.3188);
    await goTo(page, `/machine/${machineId}`);
    await page.getByRole('tab', { name: 'Limits' }).click();
    await page
      .getByRole('tabpanel')
      .getByText(/^\d\.\d{2,4}( ±\d\.\d{2,4})?\sin\b/)
      .first()
      .waitFor();
  },
);
