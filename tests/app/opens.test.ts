import { expect } from 'vitest';
import { goTo } from './screens.ts';
import { windowTest } from './windowTest.ts';

windowTest('the window opens on a first start, under its policy, and reports nothing', async ({ open }) => {
  const { page, ask, address } = await open({ asOf: '2026-11-02' });
  await page.locator('#root > *').first().waitFor();
  expect(await page.title()).toContain('Hours and Wear');
  // the token is out of the address before anything is drawn
  expect(page.url()).not.toContain('token');
  expect(address).toContain('#token=');
  expect(await ask('record/state', {})).toMatchObject({ ok: true, value: { open: false, today: '2026-11-02' } });
});

windowTest('the frame stands while screens come and go, and leaves them the keys', async ({ open }) => {
  const { page } = await open({ asOf: '2026-11-02', demo: 'open' });
  const chosen = page.locator('.machine-row[aria-selected="true"]');
  await page.locator('.machine-row').first().waitFor({ timeout: 120_000 });
  await goTo(page, '/strip-down/1');
  const frame = await page.locator('header.tabs').elementHandle();
  const drawnInIt = await frame?.evaluateHandle((header) => {
    const drawn: Node[] = [];
    new MutationObserver((changes) => drawn.push(...changes.flatMap(({ addedNodes }) => [...addedNodes]))).observe(
      header,
      { subtree: true, childList: true },
    );
    return drawn;
  });
  await goTo(page, '/machine/1');
  await page.locator('.wear-chart').waitFor({ timeout: 120_000 });
  expect(await frame?.evaluate((header) => header.isConnected)).toBe(true);
  expect(await drawnInIt?.evaluate((drawn) => drawn.length)).toBe(0);

  // a tab that was pressed keeps no key from the list
  await page.getByRole('link', { name: 'Machines', exact: true }).click();
  await page.keyboard.press('End');
  const last = await chosen.textContent();
  await page.keyboard.press('ArrowUp');
  expect(await chosen.textContent()).not.toBe(last);

  // what was typed to find something is given up where another screen is gone to
  await goTo(page, '/machine/1');
  const find = page.getByRole('combobox', { name: 'Find' });
  await page.keyboard.press('/');
  await find.fill('loader');
  await page.keyboard.press('Alt+V');
  await page.locator('main.sheet h1').first().waitFor();
  await expect.poll(() => find.inputValue()).toBe('');
  expect(await find.evaluate((box) => box === document.activeElement)).toBe(false);
});
