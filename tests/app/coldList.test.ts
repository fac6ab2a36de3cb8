import { expect } from 'vitest';
import { recordOpenDemo } from '#core/contract/record.ts';
import { windowTest } from '#tests/app/windowTest.ts';
import { told } from './screens.ts';

/** Learning steps back for everything else a busy computer does. */
const BUSY_MS = 250_000;

windowTest('the list of a record never learned from is there at once, says so, and settles', async ({ open }) => {
  const { page, ask } = await open({ asOf: '2026-11-02' });
  await page.locator('#root > *').first().waitFor();
  await told(ask, recordOpenDemo, {});
  await page.reload();
  const learning = page.getByText('From what the trade says; learning');
  await learning.waitFor();
  expect(await page.getByRole('row').count()).toBeGreaterThan(3);
  await learning.waitFor({ state: 'detached', timeout: BUSY_MS });
  expect(await page.getByRole('row').count()).toBeGreaterThan(3);
});
