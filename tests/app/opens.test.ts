import { expect } from 'vitest';
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
