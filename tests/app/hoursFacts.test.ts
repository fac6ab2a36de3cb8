import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { hoursAdd } from '#core/contract/hours.ts';
import { machineRead, machinesList } from '#core/contract/machine.ts';
import { expectAxeClean, expectAxeCleanByNight, goTo, SMALL_SHOP, smallShop, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

/** The Hours table of a machine's page. */
async function openHoursTab(page: Page, machineId: number): Promise<void> {
  await goTo(page, `/machine/${machineId}`);
  await page.getByRole('tab', { name: 'Hours' }).click();
  await page.getByRole('region', { name: 'Where its hours come from' }).waitFor();
}

const look = async (page: Page, name: string): Promise<void> => {
  const folder = process.env.HOURS_LOOK;
  if (folder) await page.screenshot({ path: join(folder, `${name}.png`) });
};

windowTest('a trailer is taken in by the machine that pulls it, and speaks that one’s dial', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: '2026-11-09', width: 1280, height: 800 });
  const { machineId } = await smallShop(ask);
  await show();
  await goTo(page, '/take-in');
  await page.getByRole('combobox', { name: 'Name' }).fill('Under Crag');
  await page.keyboard.press('Escape');
  await page.getByRole('region', { name: 'Machine' }).getByLabel('Called').fill('Trailer 14');
  const meter = page.getByRole('region', { name: 'Meter' });
  await meter.getByText('has none').click();
  await meter.getByLabel('Hours, about').fill('400');
  await meter.getByLabel('Day', { exact: true }).fill('2024-11-04');
  await meter.getByText('the machine that pulls it', { exact: true }).click();
  await meter.getByRole('combobox', { name: 'Pulled by' }).fill('tarr');
  await page.getByRole('option', { name: /Tarrow 90/ }).click();
  await page.keyboard.press('Control+Enter');
  await page.getByText('One thing stands in the way.').waitFor();
  await look(page, 'take-in');
  await expectAxeCleanByNight(page);
  await meter.getByLabel('Pulls it in').fill('25');
  await page.keyboard.press('Control+Enter');
  await page.waitForURL(/#\/machine\/\d+$/);
  const trailerId = Number(page.url().split('/').at(-1));

  // no assembly yet: its hours stand there all the same
  await page.getByText('Tarrow 90 pulls it, 25 % of that one’s hours').waitFor();
  await look(page, 'trailer');
  await expectAxeCleanByNight(page);
  const { hours } = await told(ask, machineRead, { machineId: trailerId });
  const tractor = await told(ask, machineRead, { machineId });
  expect(hours.machineHours).toBeCloseTo(400 + 0.25 * (tractor.hours.machineHours! - 5000), 6);

  await goTo(page, '/machines');
  await page.getByText('by Tarrow 90').waitFor();
  await look(page, 'list');

  // the share from another day on, then put right
  await goTo(page, `/machine/${trailerId}`);
  const sources = page.getByRole('region', { name: 'Where its hours come from' });
  await sources.getByRole('button', { name: 'From a day on, otherwise' }).click();
  await sources.getByText('hours a year', { exact: true }).click();
  await sources.getByLabel('From', { exact: true }).fill('2025-11-04');
  await sources.getByRole('button', { name: 'Save' }).click();
  await sources.getByText('from 1 to 8 760 hours were expected').waitFor();
  await look(page, 'source-form');
  await expectAxeCleanByNight(page);
  await sources.getByLabel('About', { exact: true }).fill('300');
  await sources.getByRole('button', { name: 'Save' }).click();
  await sources.getByText(/about 300.h a year, ±50 % a year/).waitFor();
  await sources.getByRole('button', { name: 'Put right what holds from 4 Nov 2025' }).click();
  await sources.getByRole('button', { name: 'It never held: strike it' }).click();
  await sources.getByText('struck: that never held').waitFor();
  await look(page, 'source-struck');
  expect((await told(ask, machineRead, { machineId: trailerId })).hours.dialMachine?.name).toBe('Tarrow 90');

  // a ring is refused in words
  await openHoursTab(page, machineId);
  await page.getByText('It pulls Trailer 14: their hours go by its meter.').waitFor();
  await sources.getByRole('button', { name: 'From a day on, otherwise' }).click();
  await sources.getByRole('combobox', { name: 'Pulled by' }).fill('trail');
  await page.getByRole('option', { name: /Trailer 14/ }).click();
  await sources.getByLabel('Pulls it in').fill('100');
  await sources.getByRole('button', { name: 'Save' }).click();
  await sources.getByText(/their hours would rest on themselves/).waitFor();
  await page.keyboard.press('Escape');
});

windowTest('work and share from a day on, a meter’s clock, a new meter in another unit', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: '2026-11-09', width: 1280, height: 800 });
  const { machineId } = await smallShop(ask);
  await show();
  await openHoursTab(page, machineId);
  const shares = page.getByRole('region', { name: 'What it does, and how much of its hours is work' });
  await shares.getByText('Nobody has said').waitFor();
  await shares.getByRole('button', { name: 'From a day on, another share' }).click();
  await shares.getByLabel('From', { exact: true }).fill('2025-11-04');
  await shares.getByLabel('Work', { exact: true }).fill('silage');
  await shares.getByLabel('Assemblies work').fill('62,5');
  await shares.getByLabel('By').fill('Ines');
  await page.keyboard.press('Enter');
  await shares.getByText('silage, 62.5 % of its hours').waitFor();
  await shares.getByRole('button', { name: 'Put right what holds from 4 Nov 2025' }).click();
  await shares.getByLabel('Assemblies work').fill('50');
  await shares.getByRole('textbox', { name: 'Why' }).fill('asked again');
  await look(page, 'shares');
  await expectAxeClean(page);
  await page.keyboard.press('Enter');
  await shares.getByText('silage, 50 % of its hours').waitFor();
  await shares.getByText('silage, 62.5 % of its hours, put right later').waitFor();
  const sheet = await told(ask, machineRead, { machineId });
  expect(sheet).toMatchObject({ workShare: 0.5, workType: 'silage' });
  expect(sheet.workShares.map(({ madeBy, reason }) => [madeBy, reason])).toEqual([
    ['Ines', ''],
    ['Ines', 'asked again'],
  ]);

  const meter = page.getByRole('region', { name: 'Meter' });
  await meter.getByRole('button', { name: 'Change what is known of the meter' }).click();
  await meter.getByLabel('One hour on the dial is').fill('0,9');
  await meter.getByRole('button', { name: 'Save' }).click();
  await meter.getByText('How is that known?').waitFor();
  await meter.getByLabel('How that is known').fill('fuel bills');
  await look(page, 'meter');
  await meter.getByRole('button', { name: 'Save' }).click();
  await meter.getByText('0.90 machine h: fuel bills').waitFor();
  expect((await told(ask, machineRead, { machineId })).hours.machineHoursRead).toBeCloseTo(
    0.9 * SMALL_SHOP.dialHours,
    6,
  );

  // a new meter that counts clock hours, by keyboard from any screen
  await page.locator('h1').first().click();
  await page.keyboard.press('h');
  const strip = page.getByRole('region', { name: 'Hours', exact: true });
  await strip.getByText('new meter').click();
  await strip.getByLabel('Old meter’s last figure').fill('5700');
  await strip.getByLabel('New meter shows').fill('0');
  await strip.getByLabel('Its hour, in machine hours').fill('0.8');
  await strip.getByLabel('Day').fill('2026-11-09');
  await page.keyboard.press('Enter');
  await strip.getByText('How is that known?').waitFor();
  await strip.getByLabel('How that is known').fill('runs with the key');
  await look(page, 'strip');
  await expectAxeClean(page);
  await page.keyboard.press('Enter');
  await strip.getByText(/kept, 5.130 machine hours/).waitFor();
  await page.keyboard.press('Escape');
  await page.getByText(/one hour of it is 0.80 machine h/).waitFor();
  await look(page, 'dials');
  const [line] = (await told(ask, machinesList, {})).machines;
  expect(line?.hours.dialHours).toBe(0);
  const { kept } = await told(ask, hoursAdd, {
    machineId,
    takenOn: '2026-11-09',
    kind: 'reading',
    dialHours: 10,
    newDialHours: null,
    errorHours: null,
    saidBy: '',
    sure: true,
  });
  expect(kept).toBe(true);
  expect((await told(ask, machineRead, { machineId })).hours.machineHours).toBeCloseTo(5138, 6);
});
