import { expect } from 'vitest';
import { customersList } from '#core/contract/machine.ts';
import { expectAxeClean, goTo, smallShop, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

windowTest('a machine is taken in from nothing, and a refusal loses no word of it', async ({ open }) => {
  const { page, ask } = await open({ asOf: '2026-11-09', width: 1280, height: 800 });
  await page.getByRole('button', { name: 'Start empty' }).waitFor();
  await page.keyboard.press('e');
  await expect.poll(async () => (await ask('record/state', {})).ok).toBe(true);
  await page.getByRole('link', { name: 'Shop' }).waitFor();
  await goTo(page, '/take-in');

  await page.keyboard.type('Under Crag');
  await page.getByLabel('Telephone').fill('0100 22');
  await page.getByLabel('Dial shows').fill('6 838,5');
  await page.locator('h1').click();
  await page.keyboard.press('2');
  await page.getByRole('table', { name: /Positions and measuring points of/ }).waitFor();
  await expectAxeClean(page);
  const kindName = await page.locator('.assembly-part').getByLabel('Called').inputValue();

  // a limit on the wrong side and no name: both said, nothing lost
  const renewAt = page.locator('input[data-column="renewAt"]').filter({ visible: true });
  const row = await renewAt.evaluateAll((inputs) =>
    inputs.findIndex((input) => (input as HTMLInputElement).value !== ''),
  );
  const limit = renewAt.nth(row);
  const right = await limit.inputValue();
  const newSize = await page.locator('input[data-column="newSize"]').nth(row).inputValue();
  await limit.fill(newSize);
  await page.keyboard.press('Control+Enter');
  await page.getByText('2 things stand in the way.').waitFor();
  await page.getByText('Needed').waitFor();
  await page.getByText(/a limit lies (below|above) that/).waitFor();
  await expectAxeClean(page);
  expect(await page.getByLabel('Telephone').inputValue()).toBe('0100 22');

  await limit.fill(right);
  const called = page.getByRole('region', { name: 'Machine' }).getByLabel('Called');
  await called.fill('Tarrow 90');
  // another screen and back: the form is as it was left
  await goTo(page, '/shop');
  await goTo(page, '/take-in');
  await page.getByText('As you left it.').waitFor();
  expect(await called.inputValue()).toBe('Tarrow 90');
  await page.keyboard.press('Control+Enter');
  await page.waitForURL(/#\/machine\/1$/);

  const answer = await ask('machine/read', { machineId: 1 });
  expect(answer).toMatchObject({
    ok: true,
    value: {
      name: 'Tarrow 90',
      customer: { name: 'Under Crag', phone: '0100 22' },
      hours: { dialHours: 6838.5 },
      assemblies: [{ name: kindName, kind: kindName }],
    },
  });
});

windowTest('a customer on record is found by part of the name', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: '2025-11-09' });
  await smallShop(ask);
  await show();
  await goTo(page, '/take-in');
  const before = await told(ask, customersList, {});
  await page.keyboard.type('crag');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await page.getByText('already on record').waitFor();
  await page.getByRole('region', { name: 'Machine' }).getByLabel('Called').fill('Tarrow 91');
  await page.keyboard.press('Control+Enter');
  await page.waitForURL(/#\/machine\/\d+$/);
  expect(await told(ask, customersList, {})).toEqual(before);
});
