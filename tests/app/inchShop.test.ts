import { expect } from 'vitest';
import { expectAxeClean, goTo, inchShop } from './screens.ts';
import { windowTest } from './windowTest.ts';

windowTest(
  'in a shop that writes inches the chart counts in round inches, and what stays in mm says so',
  async ({ prepare }) => {
    const { page, ask, show } = await prepare({ asOf: '2025-11-09', width: 1280, height: 800 });
    const { machineId } = await inchShop(ask);
    await show();
    await goTo(page, `/machine/${machineId}`);
    const labels = page.locator('.wear-labels text');
    await labels.filter({ hasText: /^in$/ }).waitFor();
    const figures = (await labels.allTextContents()).filter((text) => /^\d\.\d+$/.test(text)).map(Number);
    const ticks = figures.filter((size) => Math.abs(size * 200 - Math.round(size * 200)) < 1e-9);
    expect(ticks.length).toBeGreaterThan(3);
    expect(new Set(ticks.slice(1).map((size, i) => Math.round((size - ticks[i]!) * 1e4))).size).toBe(1);
    await goTo(page, '/fits');
    await page.getByText('1 in is 25.4 mm.').waitFor();
    await goTo(page, '/shop-figures');
    await page.getByText('1 in is 25.4 mm.').waitFor();
    await expectAxeClean(page);
  },
);
