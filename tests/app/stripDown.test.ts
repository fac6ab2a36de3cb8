import { expect } from 'vitest';
import { entriesList } from '#core/contract/entries.ts';
import { stripDownSheet } from '#core/contract/stripDown.ts';
import { expectAxeClean, goTo, SMALL_SHOP, smallShop, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

const AS_OF = '2025-11-09';
const TITLE = `Strip-down: ${SMALL_SHOP.machine}`;

windowTest('a fitter types a strip-down, is asked, answers, and sees the forecast move', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: AS_OF, width: 1280, height: 800 });
  const { machineId } = await smallShop(ask);
  const saves = async () => {
    const { entries } = await told(ask, entriesList, { beforeEntryId: null, limit: 200 });
    return entries.filter(({ what }) => what === 'stripDown/save').length;
  };
  const before = await saves();
  await show();
  await goTo(page, '/strip-down');

  // found by part of its name, by keys alone
  await page.keyboard.type('crag 22');
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { name: TITLE }).waitFor();
  const { dialHours } = await told(ask, stripDownSheet, { machineId });
  const box = (row: number, station: number) => page.locator('.grid-row').nth(row).locator('input').nth(station);
  await expect.poll(() => box(0, 0).evaluate((input) => input === document.activeElement)).toBe(true);

  // a decimal comma is taken, and echoed as understood once the box is left
  await page.keyboard.type('9,9');
  await page.keyboard.press('Enter');
  expect(await box(0, 0).inputValue()).toBe('9.90');
  await page.keyboard.type('9.7');
  await page.keyboard.press('Tab');
  await page.keyboard.type('9.5');
  await page.keyboard.press('Enter');
  // the worst station of the row is the one underlined
  await expect.poll(() => page.locator('.grid-row').first().locator('td.worst input').inputValue()).toBe('9.50');

  // thicker than last time: asked under the row, while the next box has the focus already
  const [last] = SMALL_SHOP.strip;
  await page.keyboard.type(String(last + 0.9));
  await page.keyboard.press('Enter');
  await page.getByText(`${(last + 0.9).toFixed(2)} mm is thicker than ${last.toFixed(2)} mm`).waitFor();
  expect(await box(1, 1).evaluate((input) => input === document.activeElement)).toBe(true);
  await expectAxeClean(page);
  await page.keyboard.press('k');
  await page.locator('.asked').waitFor({ state: 'detached' });

  // what is seen goes in by letters
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('+');
  await page.getByRole('region', { name: /Something seen at 3/ }).waitFor();
  await page.keyboard.press('b');
  await page.keyboard.press('w');
  await page.keyboard.press('Enter');
  await page.getByText('Bend: watch').waitFor();

  // kept as typed: the window may go, the sheet comes back
  await page.getByText(/^kept \d\d:\d\d/).waitFor();
  await page.reload();
  await page.getByRole('heading', { name: TITLE }).waitFor();
  await expect.poll(() => box(0, 0).inputValue()).toBe('9.90');
  await page.getByText('Bend: watch').waitFor();

  await page.getByLabel('Dial').fill(String(Math.round(dialHours ?? 0) + 4));
  // struck twice, as by a hand in a hurry: it is one look all the same
  await page.evaluate(() => {
    for (let strike = 0; strike < 2; strike++)
      document.activeElement?.dispatchEvent(
        new KeyboardEvent('keydown', { key: 'Enter', ctrlKey: true, bubbles: true, cancelable: true }),
      );
  });
  await page.getByText('What moved in the forecast').first().waitFor();
  await page.getByText('Slide strip, top front, thickness', { exact: true }).waitFor();
  await expectAxeClean(page);

  expect(await saves()).toBe(before + 1);
  const after = await told(ask, stripDownSheet, { machineId });
  expect(after.draft).toBeNull();
  expect(after.rows[0]?.stations.map(({ lastSizeMm }) => lastSizeMm)).toEqual([9.9, 9.7, 9.5]);
  expect(after.rows[1]?.stations[0]?.lastSizeMm).toBeCloseTo(last + 0.9, 9);
});

windowTest('a size in the wrong box changes places with the right one, and nonsense stays out', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: AS_OF });
  const { machineId } = await smallShop(ask);
  await show();
  await goTo(page, `/strip-down/${machineId}`);
  const box = (row: number, station: number) => page.locator('.grid-row').nth(row).locator('input').nth(station);
  await box(0, 0).waitFor();
  await box(0, 0).fill('10.1');
  await box(0, 1).focus();
  await page.keyboard.press('s');
  await page.keyboard.press('ArrowLeft');
  await page.keyboard.press('Enter');
  expect([await box(0, 0).inputValue(), await box(0, 1).inputValue()]).toEqual(['', '10.10']);

  await box(1, 0).fill('ten');
  await box(1, 1).focus();
  await page.getByText('"ten": A size is a figure in mm').waitFor();
  await page.getByText(/1 not read as a size/).waitFor();
  await page.getByText(/^kept \d\d:\d\d/).waitFor();
  const { draft } = await told(ask, stripDownSheet, { machineId });
  expect(draft?.sizes.map(({ sizeMm }) => sizeMm)).toEqual([10.1]);

  // thrown away only when asked twice
  await page.getByRole('button', { name: 'Throw away what was typed' }).click();
  await page.getByRole('button', { name: 'Throw it away' }).click();
  await expect.poll(() => box(0, 1).inputValue()).toBe('');
  expect((await told(ask, stripDownSheet, { machineId })).draft).toBeNull();
});

windowTest('a dial that went back is asked about before anything is saved', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: AS_OF });
  const { machineId } = await smallShop(ask);
  await show();
  await goTo(page, `/strip-down/${machineId}`);
  await page.locator('.grid-row input').first().fill('11.5');
  await page.getByLabel('Dial').fill('120');
  await page.getByText(/120 h now: the dial went back/).waitFor();
  await page.keyboard.press('Control+Enter');
  await page.getByText('Nothing was saved, and nothing typed is lost.').waitFor();
  expect(await page.locator('.grid-row input').first().inputValue()).toBe('11.50');
  await page.getByRole('button', { name: 'New meter' }).click();
  await page.getByRole('region', { name: 'Hours' }).waitFor();
  expect(await page.getByLabel('New meter shows').inputValue()).toBe('120');
});
