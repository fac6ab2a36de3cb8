import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { customersSheet } from '#core/contract/customer.ts';
import { expectAxeCleanByNight, goTo, SMALL_SHOP, smallShop, told } from './screens.ts';
import { atRest } from './steadyPage.ts';
import { windowTest } from './windowTest.ts';

/** From now on no list that begins with this can be drawn, until it is mended: the browser's own `map` throws on it. */
async function breakListsBeginning(page: Page, first: readonly [string, number] | { value: string }): Promise<void> {
  await page.evaluate(
    (first) => {
      const { map } = Array.prototype;
      const isIt = (one: unknown): boolean =>
        Array.isArray(first)
          ? Array.isArray(one) && one[0] === first[0] && one[1] === first[1]
          : typeof one === 'object' &&
            one !== null &&
            !(one instanceof Element) &&
            'value' in one &&
            one.value === first.value;
      Array.prototype.map = function (this: unknown[], ...rest: Parameters<typeof map>) {
        if (isIt(this[0])) throw new Error('planted while drawing');
        return map.apply(this, rest);
      } as typeof map;
      document.addEventListener('mend', () => {
        Array.prototype.map = map;
      });
    },
    first as readonly [string, number] & { value: string },
  );
}
const mend = (page: Page) => page.evaluate(() => document.dispatchEvent(new Event('mend')));

windowTest(
  'a form whose screen breaks or is loaded anew has what was typed put back, answers and all, once it is opened again',
  async ({ prepare }) => {
    const { page, ask, show } = await prepare({ asOf: '2025-11-09', width: 1280, height: 800 });
    await smallShop(ask);
    await show();
    await goTo(page, '/customers');
    const openForm = async () => {
      await page.getByRole('button', { name: `Open ${SMALL_SHOP.customer}`, exact: true }).click();
      await page.getByRole('button', { name: /^Change/ }).click();
    };
    const box = (name: string) => page.getByRole('textbox', { name, exact: true });
    await openForm();
    await box('Telephone').fill('01632 960 402');
    await box('Address').fill('Nether Lane\nCrag Foot');
    await breakListsBeginning(page, ['name', 120]);
    await box('E-mail').pressSequentially('i');
    await page.getByRole('heading', { name: 'This screen could not be drawn.' }).waitFor();
    await page.getByText(/what you had typed here is kept/).waitFor();
    await page.getByText('Telephone: 01632 960 402').waitFor();
    await expectAxeCleanByNight(page);
    // another screen stands meanwhile, and is offered nothing
    await goTo(page, '/recall');
    expect(await page.getByText('Telephone: 01632 960 402').count()).toBe(0);

    await mend(page);
    await goTo(page, '/customers');
    // no form stands yet: nothing is lost by asking for it
    await page.getByRole('button', { name: 'Put it back' }).click();
    await openForm();
    expect(await box('Telephone').inputValue()).toBe('');
    await page.getByRole('button', { name: 'Put it back' }).click();
    await expect.poll(() => page.getByText('You had typed this').count()).toBe(0);
    await page.getByRole('button', { name: 'Save' }).click();
    await expect
      .poll(async () => (await told(ask, customersSheet, {})).customers[0])
      .toMatchObject({ phone: '01632 960 402', address: 'Nether Lane\nCrag Foot', email: 'i' });
    await goTo(page, '/customers');

    // an answer that brings a box of its own is given first
    const { customers } = await told(ask, customersSheet, {});
    await goTo(page, `/phone/${customers[0]?.customerId}`);
    await page.keyboard.press('a');
    const answers = page.getByRole('radiogroup', { name: 'Answer' });
    await answers.getByText('booked', { exact: true }).click();
    await page.getByLabel('Comes in on').fill('8.12.2025');
    await breakListsBeginning(page, { value: 'none' });
    await page.getByLabel('Spoken with').pressSequentially('T');
    await page.getByText('Comes in on: 8.12.2025').waitFor();
    await mend(page);
    await page.getByRole('button', { name: 'Try again' }).click();
    await page.getByRole('heading', { name: SMALL_SHOP.machine }).waitFor();
    await page.keyboard.press('a');
    await answers.waitFor();
    await page.getByRole('button', { name: 'Put it back' }).click();
    await expect.poll(() => page.getByText('You had typed this').count()).toBe(0);
    expect(await answers.getByRole('radio', { name: 'booked' }).isChecked()).toBe(true);
    expect(await page.getByLabel('Comes in on').inputValue()).toBe('8.12.2025');
    expect(await page.getByLabel('Spoken with').inputValue()).toBe('T');

    // the window is loaded anew: what stands typed comes over it, and is offered only on its own screen
    await page.reload();
    await page.getByText('Comes in on: 8.12.2025').waitFor();
    await goTo(page, '/customers');
    expect(await page.getByText('You had typed this').count()).toBe(0);
    await openForm();
    await box('Telephone').fill('01632 960 403');
    await page.getByRole('textbox', { name: /^Find/ }).fill('Crag');
    await page.reload();
    await page.getByText('Telephone: 01632 960 403').waitFor();
    // what only finds is nobody's work
    expect(await page.locator('.typed-lines li').count()).toBe(1);
    await expectAxeCleanByNight(page);
    await openForm();
    await page.getByRole('button', { name: 'Put it back' }).click();
    await page.getByRole('button', { name: 'Save' }).click();
    await expect.poll(async () => (await told(ask, customersSheet, {})).customers[0]?.phone).toBe('01632 960 403');
    await atRest(page); // the window knows it is saved
    await page.reload();
    await page.locator('main h1').waitFor();
    expect(await page.getByText('You had typed this').count()).toBe(0);

    // a long form that keeps itself stands as it was, and nothing is offered beside it
    await goTo(page, '/take-in');
    await page.getByLabel('Called').fill('Tarrow 120');
    await page.reload();
    await expect.poll(() => page.getByLabel('Called').inputValue()).toBe('Tarrow 120');
    expect(await page.getByText('You had typed this').count()).toBe(0);

    // a window opened afresh is another one: nothing of it is left
    const afresh = await page.context().newPage();
    await afresh.goto(page.url());
    expect(await afresh.evaluate(() => window.sessionStorage.getItem('over-reload'))).toBeNull();
  },
  { expectErrors: true },
);
