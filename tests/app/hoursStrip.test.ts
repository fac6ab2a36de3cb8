import { expect } from 'vitest';
import { machinesList } from '#core/contract/machine.ts';
import { expectAxeClean, goTo, smallShop, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

windowTest('hours are entered from any screen by one key, and a new meter goes on counting', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: '2025-11-09', width: 1280, height: 800 });
  const { machineId } = await smallShop(ask);
  await show();
  await goTo(page, '/part-classes');
  await page.keyboard.press('h');
  const strip = page.getByRole('region', { name: 'Hours' });
  await strip.waitFor();
  await expectAxeClean(page);
  // the screen stays in sight below it
  await page.getByRole('heading', { name: 'Part classes' }).waitFor();

  await page.keyboard.type('crag');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await page.keyboard.press('Enter');
  await page.keyboard.type('40');
  await page.keyboard.press('Enter');
  await page.getByText(/40 h now: the dial went back/).waitFor();
  await page.keyboard.press('n');
  expect(await strip.getByLabel('New meter shows').inputValue()).toBe('40');
  await page.keyboard.type('5 610');
  await page.keyboard.press('Enter');
  await page.getByText(/Tarrow 90: kept/).waitFor();

  const [machine] = (await told(ask, machinesList, {})).machines;
  expect(machine?.hours.dialHours).toBeCloseTo(40, 6);
  expect(machine?.hours.machineHours).toBeCloseTo(5610, 6);

  await page.keyboard.press('Escape');
  await strip.waitFor({ state: 'detached' });

  // at the bench the same key opens it from inside a size box, on the machine that stands there, and gives the box back
  await goTo(page, `/strip-down/${machineId}`);
  const box = page.locator('.grid-row input').first();
  await box.focus();
  await page.keyboard.press('h');
  await strip.waitFor();
  expect(await strip.getByRole('combobox', { name: 'Machine' }).inputValue()).toBe('Tarrow 90');
  await page.keyboard.press('Escape');
  await strip.waitFor({ state: 'detached' });
  expect(await box.evaluate((input) => input === document.activeElement)).toBe(true);
});

windowTest('what is missing is asked for, and nothing goes in', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: '2025-11-09' });
  await smallShop(ask);
  await show();
  await goTo(page, '/shop');
  await page.locator('h1').click();
  await page.keyboard.press('h');
  const strip = page.getByRole('region', { name: 'Hours' });
  await strip.getByRole('button', { name: 'Enter hours' }).click();
  await page.getByText('What does the dial show?').waitFor();
  await page.getByText('Which machine?').waitFor();
});
