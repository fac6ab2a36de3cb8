import { readFileSync } from 'node:fs';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { machineRead } from '#core/contract/machine.ts';
import { pdfPages } from '#tests/support/pdfText.ts';
import { emptyShop, expectAxeClean, expectAxeCleanByNight, goTo } from './screens.ts';
import { windowTest } from './windowTest.ts';

/** Share of a canvas that is not white: nought before the page is drawn. */
const inkOf = (page: Page): Promise<number> =>
  page
    .locator('.paper-page canvas')
    .first()
    .evaluate((element) => {
      const canvas = element as HTMLCanvasElement;
      const pixels = canvas.getContext('2d')?.getImageData(0, 0, canvas.width, canvas.height).data ?? [];
      let dark = 0;
      for (let i = 0; i < pixels.length; i += 4) if ((pixels[i] ?? 255) < 128 && (pixels[i + 3] ?? 0) > 128) dark++;
      return dark / (canvas.width * canvas.height);
    });

windowTest(
  'a slip is looked at, made, saved as one A4 page, and found again',
  async ({ open }) => {
    const { page, ask } = await open({ asOf: '2026-11-02', demo: 'open', width: 1280, height: 900 });
    const answer = await ask('machine/read', { machineId: 1 });
    if (!answer.ok) expect.fail(JSON.stringify(answer.fault));
    const sheet = machineRead.zReply.parse(answer.value);
    await goTo(page, '/machine/1');
    await page.getByRole('heading', { level: 1, name: sheet.name }).waitFor({ timeout: 120_000 });
    await page.keyboard.press('p');

    // the preview is the paper itself, drawn in the window, its words there to be read out
    await page.locator('.textLayer span').first().waitFor({ timeout: 120_000 });
    await expect.poll(() => inkOf(page), { timeout: 90_000 }).toBeGreaterThan(0.01);
    expect(await page.locator('.paper-page').count()).toBe(1);
    const words = (await page.locator('.textLayer').textContent()) ?? '';
    expect(words).toContain(sheet.name);
    expect(words).toContain('preview');
    await expectAxeCleanByNight(page);

    // made: numbered and kept
    await page.getByLabel('Made by').fill('J. Orrin');
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: /^Forecast slip 2026-/ }).waitFor({ timeout: 120_000 });
    const heading = await page.getByRole('heading', { level: 1 }).textContent();
    const number = heading?.replace('Forecast slip ', '') ?? '';

    // saved: one A4 page, with its number and the machine on it
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'Save PDF' }).click(),
    ]);
    expect(download.suggestedFilename()).toContain(number);
    const pages = await pdfPages(readFileSync(await download.path()));
    expect(pages).toHaveLength(1);
    expect(pages[0]?.widthMm).toBeCloseTo(210, 0);
    expect(pages[0]?.heightMm).toBeCloseTo(297, 0);
    expect(pages[0]?.text).toContain(number);
    expect(pages[0]?.text).toContain(sheet.name);

    // printed: the sheet stands alone while the dialog is open, and is gone afterwards
    await page.evaluate(() => {
      window.print = () => {
        const canvas = document.querySelector<HTMLCanvasElement>('.print-sheets canvas');
        document.title = `printed ${canvas?.width} ${document.documentElement.classList.contains('prints-sheets')}`;
      };
    });
    await page.keyboard.press('p');
    await page.waitForFunction(() => document.title.startsWith('printed'), null, { timeout: 90_000 });
    expect(await page.title()).toMatch(/^printed 2\d{3} true$/);
    expect(await page.locator('.print-sheets').count()).toBe(0);

    // found again in the list, and opened as it was made
    await page.getByRole('link', { name: 'Slips', exact: true }).click();
    const row = page.getByRole('row').filter({ hasText: number });
    await row.waitFor();
    expect(await row.textContent()).toContain(sheet.name);
    await expectAxeClean(page);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: `Forecast slip ${number}` }).waitFor();
    await page.locator('.textLayer span').first().waitFor({ timeout: 120_000 });
    expect(await page.locator('.textLayer').textContent()).toContain(number);
  },
  { timeoutMs: 400_000 },
);

windowTest('without a slip made, the list says how one is', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: '2026-11-02' });
  await emptyShop(ask);
  await show();
  await page.getByRole('link', { name: 'Slips', exact: true }).click();
  await page.getByRole('heading', { name: 'No slip made yet' }).waitFor();
  await expectAxeClean(page);
});
