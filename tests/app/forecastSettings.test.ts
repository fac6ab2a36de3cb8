import { expect } from 'vitest';
import { forecastSettingsRead } from '#core/contract/forecastSettings.ts';
import { windowTest } from '#tests/app/windowTest.ts';
import { expectAxeClean, goTo, smallShop, told } from './screens.ts';

windowTest('a shop changes what the forecast starts from, is told what moves, and saves it', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: '2026-11-02' });
  await smallShop(ask);
  await show();
  await goTo(page, '/shop');
  await page.getByRole('button', { name: 'How the forecast works' }).click();
  await page.getByRole('heading', { name: 'How the forecast works', level: 1 }).waitFor();
  const drift = page.getByRole('textbox', { name: 'Here, Drift of the law beyond the last size' });
  await drift.fill('3');
  await page.getByText('From 0 to 0.5.').waitFor();
  await drift.fill('0.4');
  await page.getByRole('button', { name: 'Add a kind' }).click();
  await page.getByRole('textbox', { name: 'Kind of work, new kind' }).fill('contract silage');
  await page.getByRole('textbox', { name: 'Wears, times as fast, contract silage' }).fill('1.4');
  await expectAxeClean(page);
  await page.keyboard.press('Control+Enter');
  await page.getByText(/would move by more than a twentieth/).waitFor({ timeout: 250_000 });
  await expectAxeClean(page);
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByText('2 figures').waitFor();
  const { settings, workTypes } = await told(ask, forecastSettingsRead, {});
  expect(settings.find(({ name }) => name === 'driftDelta')?.value).toBe(0.4);
  expect(workTypes.at(-1)).toEqual({ name: 'contract silage', timesAsFast: 1.4 });
  await page.getByRole('button', { name: /^Put back.*Drift of the law/ }).click();
  expect(await drift.inputValue()).toBe('0.15');
  await page.getByRole('button', { name: 'Put back the program’s own' }).click();
  expect(await page.getByRole('textbox', { name: /^Kind of work,/ }).count()).toBe(3);
});

windowTest('the sheet of the forecast’s figures reads in the dark as well', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: '2026-11-02', colorScheme: 'dark' });
  await smallShop(ask);
  await show();
  await goTo(page, '/forecast-settings');
  await page.getByRole('textbox', { name: /^Here, Drift/ }).fill('0.3');
  await expectAxeClean(page);
});
