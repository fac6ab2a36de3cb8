import { copyFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { entriesList } from '#core/contract/entries.ts';
import { machinesList } from '#core/contract/machine.ts';
import { oldSheetsRead } from '#core/contract/oldSheets.ts';
import { recordBackUp, recordOpen } from '#core/contract/record.ts';
import { stripDownSheet } from '#core/contract/stripDown.ts';
import { expectAxeClean, goTo, SMALL_SHOP, smallShop, told } from './screens.ts';
import { makeSteady } from './steadyPage.ts';
import { type OpenedWindow, windowTest } from './windowTest.ts';

const AS_OF = '2025-11-09';

/** Another window on the same program. */
async function secondWindow({ page, address }: OpenedWindow): Promise<Page> {
  const second = await page.context().newPage();
  await makeSteady(second);
  await second.goto(address);
  await second.locator('.machine-row').first().waitFor();
  return second;
}

windowTest(
  'another window opens another record: nothing of the first goes into it, and what was typed stays',
  async ({ open }) => {
    const opened = await open({ asOf: AS_OF, width: 1280, height: 800 });
    const { page, ask, folder, recordPath } = opened;
    const { machineId } = await smallShop(ask);
    const other = join(folder, 'other.hoursandwear');
    copyFileSync((await told(ask, recordBackUp, {})).file, other);
    await page.reload();
    await goTo(page, `/machine/${machineId}`);
    await page.keyboard.press('h');
    const strip = page.getByRole('region', { name: 'Hours' });
    await strip.getByLabel('Dial shows').fill('5 700');

    const second = await secondWindow(opened);
    await goTo(second, '/start');
    await second.keyboard.press('o');
    await second.getByLabel(/path/i).fill(other);
    await second.keyboard.press('Enter');
    await second.locator('.machine-row').first().waitFor();
    const readings = async () => (await told(ask, machinesList, {})).machines[0]?.hours.dialHours;
    const before = await readings();

    await page.bringToFront(); // a window behind another draws once a second
    await strip.getByRole('button', { name: 'Enter hours' }).click();
    const ask1 = page.locator('.question', { hasText: 'Another window opened another record' });
    await ask1.waitFor();
    await strip.getByText('Nothing was entered into either').waitFor();
    expect(await readings()).toBe(before);
    expect(await strip.getByLabel('Dial shows').inputValue()).toMatch(/^5\s?700$/);
    await page.getByRole('heading', { name: SMALL_SHOP.machine }).waitFor();
    await expectAxeClean(page);

    // back to its own: what was typed goes in there
    await ask1.getByRole('button', { name: 'Open shop.hoursandwear again' }).click();
    await ask1.waitFor({ state: 'detached' });
    await strip.getByRole('button', { name: 'Enter hours' }).click();
    await page.getByText(new RegExp(`${SMALL_SHOP.machine}: kept`)).waitFor();
    expect(await readings()).toBeCloseTo(5700, 6);
    await told(ask, recordOpen, { path: other });
    expect(await readings()).toBe(before);

    // the other way: the first window takes up the other record, and offers nothing of what was typed into its own
    await page.keyboard.press('Escape');
    await goTo(page, '/part-classes');
    await page.keyboard.press('h');
    await page.getByRole('button', { name: 'Load other.hoursandwear' }).waitFor();
    await strip.getByLabel('Dial shows').fill('5 800');
    await page.getByRole('button', { name: 'Load other.hoursandwear' }).click();
    await page.locator('.machine-row').first().waitFor();
    expect(await page.getByText('You had typed this').count()).toBe(0);
    expect(await page.locator('.question').count()).toBe(0);
    // its own record opened again, it is offered where it was typed
    await told(ask, recordOpen, { path: recordPath });
    await page.reload();
    await goTo(page, '/part-classes');
    await page.getByText(/5 800/).waitFor();
  },
);

windowTest(
  'a strip-down typed on in two windows: none goes over the other, nor is saved twice, without a word',
  async ({ open }) => {
    const opened = await open({ asOf: AS_OF, width: 1280, height: 800 });
    const { page, ask } = opened;
    const { machineId } = await smallShop(ask);
    const saves = async () => {
      const { entries } = await told(ask, entriesList, { beforeEntryId: null, limit: 200 });
      return entries.filter(({ what }) => what === 'stripDown/save').length;
    };
    const keptSizes = async () =>
      (await told(ask, stripDownSheet, { machineId })).draft?.sizes.map(({ sizeMm }) => sizeMm) ?? [];
    const box = (of: Page, place: number) => of.locator('.grid-row input').nth(place);
    const type = async (of: Page, place: number, size: string) => {
      await of.bringToFront();
      await box(of, place).fill(size);
      await of.keyboard.press('Enter');
    };
    const otherTyped = (of: Page) => of.locator('.question', { hasText: 'Another window typed on this strip-down' });
    const before = await saves();
    await page.reload();
    await goTo(page, `/strip-down/${machineId}`);
    await type(page, 0, '9.9');
    await page.getByText(/^kept \d\d:\d\d/).waitFor();
    const second = await secondWindow(opened);
    await goTo(second, `/strip-down/${machineId}`);
    await expect.poll(() => box(second, 0).inputValue()).toBe('9.90');
    await type(second, 1, '10.1');
    await expect.poll(keptSizes).toEqual([9.9, 10.1]);

    // the first has not seen that: what it types is asked about, and gives way
    await type(page, 2, '10.3');
    await otherTyped(page).getByText('2 sizes were kept from there').waitFor();
    await expectAxeClean(page);
    expect(await keptSizes()).toEqual([9.9, 10.1]);
    await otherTyped(page).getByRole('button', { name: 'Go on with what was typed there' }).click();
    await otherTyped(page).waitFor({ state: 'detached' });
    await expect.poll(() => box(page, 1).inputValue()).toBe('10.10');
    expect(await box(page, 2).inputValue()).toBe('');
    await type(page, 2, '10.2');
    await expect.poll(keptSizes).toEqual([9.9, 10.1, 10.2]);

    // the other way round: what the second types stands
    await type(second, 0, '9.8');
    await otherTyped(second).getByRole('button', { name: 'Go on with what stands here' }).click();
    await otherTyped(second).waitFor({ state: 'detached' });
    await expect.poll(keptSizes).toEqual([9.8, 10.1]);

    // nor does a save put aside what was not seen
    await page.bringToFront();
    await page.keyboard.press('Control+Enter');
    await otherTyped(page).getByRole('button', { name: 'Go on with what stands here' }).click();
    await otherTyped(page).waitFor({ state: 'detached' });
    expect(await saves()).toBe(before);
    await page.keyboard.press('Control+Enter');
    await page.getByText('What moved in the forecast').first().waitFor();
    await second.bringToFront();
    await second.keyboard.press('Control+Enter');
    const question = second.locator('.question', { hasText: 'was saved on this machine since this sheet was opened' });
    await question.waitFor();
    await expectAxeClean(second);
    expect(await saves()).toBe(before + 1);
    await question.getByRole('button', { name: 'The same: throw this sheet away' }).click();
    await question.waitFor({ state: 'detached' });
    await expect.poll(() => box(second, 0).inputValue()).toBe('');
    expect(await saves()).toBe(before + 1);
  },
);

windowTest(
  'an old sheet typed on in two windows: the desk asks which goes on, and saves it once',
  async ({ prepare }) => {
    const opened = await prepare({ asOf: AS_OF, width: 1280, height: 800 });
    const { page, ask, show } = opened;
    const { machineId } = await smallShop(ask);
    await show();
    const keptSizes = async () => (await told(ask, oldSheetsRead, {})).drafts.map(({ sizes }) => sizes);
    const box = (of: Page, place: number) => of.locator('.grid-row input').nth(place);
    const type = async (of: Page, place: number, size: string) => {
      await of.bringToFront();
      await box(of, place).fill(size);
      await of.keyboard.press('Enter');
    };
    const toDesk = async (of: Page) => {
      await of.bringToFront();
      await goTo(of, '/old-sheets');
      await of.getByRole('combobox', { name: 'Machine', exact: true }).focus();
      await of.keyboard.type('tarrow');
      await of.keyboard.press('Enter');
      await box(of, 0).waitFor();
    };
    const otherTyped = (of: Page) => of.locator('.question', { hasText: 'Another window typed on this strip-down' });

    await toDesk(page);
    await page.getByLabel('Day on the sheet').fill('12.10.14');
    await page.keyboard.press('Enter');
    await type(page, 0, '9.9');
    await page.getByText(/^kept \d\d:\d\d/).waitFor();
    const second = await secondWindow(opened);
    await toDesk(second);
    await expect.poll(() => box(second, 0).inputValue()).toBe('9.90');
    await type(second, 1, '10.1');
    await expect.poll(keptSizes).toEqual([2]);

    // the first has not seen that: what it types is asked about, and gives way
    await type(page, 2, '10.3');
    await otherTyped(page).getByText('2 sizes were kept from there').waitFor();
    await expectAxeClean(page);
    await otherTyped(page).getByRole('button', { name: 'Go on with what was typed there' }).click();
    await otherTyped(page).waitFor({ state: 'detached' });
    await expect.poll(() => box(page, 1).inputValue()).toBe('10.10');
    expect(await box(page, 2).inputValue()).toBe('');
    await type(page, 2, '10.2');
    await expect.poll(keptSizes).toEqual([3]);

    // the other way round, on saving: nothing goes in unasked, and what stands there then goes in once
    await second.bringToFront();
    await second.keyboard.press('Control+Enter');
    await otherTyped(second).waitFor();
    expect((await told(ask, oldSheetsRead, {})).sheets).toEqual([]);
    await otherTyped(second).getByRole('button', { name: 'Go on with what stands here' }).click();
    await otherTyped(second).waitFor({ state: 'detached' });
    await second.keyboard.press('Control+Enter');
    await second.getByText('1 sheet in this batch').waitFor();
    const onceSaved = async () =>
      expect((await told(ask, oldSheetsRead, {})).sheets).toMatchObject([
        { machineId, sizes: 2, takenOn: '2014-10-12' },
      ]);
    await onceSaved();

    // the first still has it open: it does not go in a second time
    await page.bringToFront();
    await page.keyboard.press('Control+Enter');
    const question = page.locator('.question', { hasText: 'was saved on this machine since this sheet was opened' });
    await question.waitFor();
    await expectAxeClean(page);
    await onceSaved();
    await question.getByRole('button', { name: 'The same: throw this sheet away' }).click();
    await question.waitFor({ state: 'detached' });
    await expect.poll(() => box(page, 0).inputValue()).toBe('');
    await onceSaved();
    // a second sheet of that day is said to be one, and goes in
    await page.getByLabel('Day on the sheet').fill('12.10.14');
    await page.keyboard.press('Enter');
    await type(page, 0, '9.7');
    await page.keyboard.press('Control+Enter');
    await page.getByText('2 sheets in this batch').waitFor();
  },
);
