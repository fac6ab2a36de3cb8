import type { Page } from 'playwright-core';
import { describe, expect } from 'vitest';
import { machineTakeIn } from '#core/contract/machine.ts';
import { oldSheetsRead } from '#core/contract/oldSheets.ts';
import { zAssemblyKind } from '#core/contract/shop.ts';
import { pickUpHitch } from '#core/shop/assembly-kinds/pickUpHitch.ts';
import { emptyShop, expectAxeCleanByNight, goTo, told } from '#tests/app/screens.ts';
import { atRest } from '#tests/app/steadyPage.ts';
import { type OpenedWindow, type PreparedWindow, windowTest } from '#tests/app/windowTest.ts';

/** Old paper, typed by keys alone, as a person at a desk would with the sheet beside the keyboard. */

/** Types by keys and counts them; a key held with another counts as one more. */
function counting(page: Page) {
  const count = { keys: 0 };
  const key = async (name: string) => {
    count.keys += name.split('+').filter((part) => part !== '').length || 1;
    await page.keyboard.press(name);
  };
  const type = async (text: string) => {
    count.keys += text.length;
    await page.keyboard.type(text);
  };
  const enter = async (text: string) => {
    await type(text);
    await key('Enter');
  };
  return { count, key, type, enter };
}

const focused = (page: Page) =>
  page.evaluate(() => {
    const box = document.activeElement;
    return box?.getAttribute('aria-label') ?? (box as HTMLInputElement | null)?.labels?.[0]?.textContent ?? '';
  });

async function aShopWithAHitch({ ask }: OpenedWindow): Promise<number> {
  await emptyShop(ask);
  const machine = { make: '', model: '', serial: '', builtYear: null, note: '', meterDigits: 5, hoursBefore: null };
  const { positions } = zAssemblyKind.parse(pickUpHitch);
  const { machineId } = await told(ask, machineTakeIn, {
    customerId: null,
    customer: { name: 'Hollin Top', place: '', address: '', phone: '', email: '' },
    machine: { ...machine, name: 'Vessel 118', workShare: 1 },
    dial: { takenOn: '2012-03-01', dialHours: 0, estimate: false, saidBy: '' },
    assemblies: [{ kind: null, name: 'Pick-up hitch', serial: '', fittedMachineHours: 0, positions }],
  });
  return machineId;
}

async function openDesk({ page, show }: PreparedWindow) {
  await show();
  await goTo(page, '/old-sheets');
  await expect.poll(() => focused(page)).toBe('Machine');
}

/** What stands on the paper: 28 sizes, in the order of the sheet. */
const SIZES = [
  ...['11.8', '11.7', '11.6', '11.9', '11.8', '11.7', '11.6', '11.5', '11.7', '11.8', '11.6', '11.4'],
  ...['7.9', '7.8', '7.8', '7.7'],
  ...['29.95', '29.92', '31.9', '31.85'],
  // the slack of each pivot is worked out from its hole and pin: its box stays empty
  ...['40.2', '40.18', '39.95', '', '40.22', '40.16', '39.94', ''],
  ...['0.4', '4.3'],
];
/** Enter after each size, a size of four keys, and what the sheet says once: a sheet should cost no more. */
const MOST_KEYS = 190;
/** Unhurried typing of figures, keys a second; common practice, no source. */
const KEYS_A_SECOND = 2;

describe('old sheets', () => {
  windowTest('a sheet of 28 sizes is typed by keys alone, with few of them', async ({ prepare }) => {
    const opened = await prepare({ asOf: '2026-11-09' });
    await aShopWithAHitch(opened);
    const { page, ask } = opened;
    await openDesk(opened);
    await atRest(page);
    const asked: string[] = [];
    page.on('request', (request) => asked.push(new URL(request.url()).pathname));
    const startedAt = performance.now();
    const { count, key, type, enter } = counting(page);
    await enter('ves');
    await expect.poll(() => focused(page)).toBe('Day on the sheet');
    await enter('12.10.14');
    await enter('812');
    await enter('J. Tarn');
    await expect.poll(() => focused(page)).toContain('Slide strip, top front');
    for (const size of SIZES.slice(0, -1)) await enter(size);
    await type(SIZES.at(-1)!);
    await key('Control+Enter');
    await page.getByText('1 sheet in this batch').waitFor();
    const seconds = (performance.now() - startedAt) / 1000;
    console.log(
      `A sheet of 28 sizes: ${count.keys} keys; ${seconds.toFixed(1)} s driven, ` +
        `${Math.round(count.keys / KEYS_A_SECOND)} s at ${KEYS_A_SECOND} keys a second.`,
    );
    expect(SIZES.filter((size) => size !== '')).toHaveLength(28);
    expect(count.keys).toBeLessThanOrEqual(MOST_KEYS);
    // three minutes at an unhurried pace, with a third of them left to read the paper
    expect(count.keys / KEYS_A_SECOND).toBeLessThan(120);

    const { sheets } = await told(ask, oldSheetsRead, {});
    expect(sheets).toMatchObject([{ sizes: 28, parked: 0, takenOn: '2014-10-12', fitter: 'J. Tarn' }]);
    // the next sheet of the same machine is one key away: its day is asked for, its fitter stands
    await expect.poll(() => focused(page)).toBe('Day on the sheet');
    await enter('3.5.16');
    await enter('1480');
    await expect.poll(() => focused(page)).toContain('Slide strip, top front');
    await enter('11.5');
    await key('Control+Shift+Enter');
    await page.getByText('2 sheets in this batch').waitFor();
    await expect.poll(() => focused(page)).toBe('Machine');
    // what was saved is typed no more, and no forecast was asked for
    expect((await told(ask, oldSheetsRead, {})).drafts).toEqual([]);
    expect(asked).toContain('/op/oldSheets/save');
    expect(asked.filter((path) => /^\/op\/.*(machines\/list|machine\/read|forecast|classes)/.test(path))).toEqual([]);
  });

  windowTest('a machine and a point that are not on record are taken in on the way', async ({ prepare }) => {
    const opened = await prepare({ asOf: '2026-11-09' });
    const { page, ask } = opened;
    await emptyShop(ask);
    await openDesk(opened);
    const { key, enter } = counting(page);
    await enter('Loft 40');
    await expect.poll(() => focused(page)).toBe('Customer');
    await enter('Hill End');
    await key('Enter'); // the first assembly kind
    await key('Enter'); // age of its parts not known
    await expect.poll(() => focused(page)).toBe('Day on the sheet');
    await enter('4 May 2012');
    await enter('2300');
    await enter('Bo');
    await expect.poll(() => focused(page)).toMatch(/^1 /);
    await key('a');
    await expect.poll(() => focused(page)).toBe('Position');
    await enter('Jack pad');
    for (let i = 0; i < 2; i++) await key('Enter'); // thickness, called so
    await enter('20');
    await enter('15');
    for (let i = 0; i < 3; i++) await key('Enter'); // one station, a class of its own, does not tow
    await expect.poll(() => focused(page)).toContain('Jack pad');
    await enter('18.2');
    await key('Control+Enter');
    await page.getByText('1 sheet in this batch').waitFor();
    const { machines, sheets } = await told(ask, oldSheetsRead, {});
    expect(machines).toMatchObject([{ name: 'Loft 40', customer: 'Hill End' }]);
    expect(sheets).toMatchObject([{ sizes: 1 }]);
  });

  windowTest('what is doubtful holds nothing up, what was typed survives, and the batch ends', async ({ prepare }) => {
    const opened = await prepare({ asOf: '2026-11-09' });
    await aShopWithAHitch(opened);
    const { page, ask } = opened;
    await openDesk(opened);
    const { key, enter } = counting(page);
    await enter('ves');
    await expect.poll(() => focused(page)).toBe('Day on the sheet');
    await enter('12.10.14');
    await enter('812');
    await enter('Bo');
    await enter('118'); // ten times too thick
    await enter('11,7');
    await page.getByText('1 questioned').waitFor();
    await page.getByText(/^kept \d\d:\d\d/).waitFor();

    // the window is closed half-way: the sheet is there again
    await page.reload();
    await goTo(page, '/old-sheets');
    await page.getByRole('button', { name: 'Vessel 118' }).click();
    await page.getByText('Typed and not saved: the sheet of 12 Oct 2014.').waitFor();
    await expect.poll(() => page.getByLabel(/1 Slide strip, top front, front/).inputValue()).toBe('118.00');
    await key('Control+Enter');
    await page.getByText('1 sheet in this batch').waitFor();
    await page.getByText('2 sizes, 1 waits').waitFor();

    // answered later, beside the next sheet
    await page.locator('.waiting-size').click();
    await page.getByText('118.00 mm is far out; 11.80 mm would fit.').waitFor();
    await page.getByLabel('Size on the sheet').fill('11.8');
    await page.getByRole('button', { name: 'Put right' }).click();
    await page.getByText('nothing waits for an answer').waitFor();

    await page.getByRole('button', { name: 'End the batch' }).click();
    await page.getByText('Batch ended: 1 sheet in').waitFor();
    await page.getByRole('row', { name: /Vessel 118/ }).waitFor();
    expect((await told(ask, oldSheetsRead, {})).sheets).toEqual([]);
  });

  windowTest('the last sheet goes back into its boxes; the history takes back what came last', async ({ prepare }) => {
    const opened = await prepare({ asOf: '2026-11-09' });
    await aShopWithAHitch(opened);
    const { page } = opened;
    await openDesk(opened);
    const { key, enter } = counting(page);
    await enter('ves');
    await expect.poll(() => focused(page)).toBe('Day on the sheet');
    await enter('12.10.14');
    await enter('812');
    await enter('Bo');
    await enter('11.8');
    await enter('11.7');
    await key('Control+Enter');
    await page.getByText('1 sheet in this batch').waitFor();
    await key('Alt+u');
    await expect.poll(() => page.getByLabel(/1 Slide strip, top front, front/).inputValue()).toBe('11.80');

    // front and rear were mixed up on the paper: whole points change round, not typed again
    await page.getByLabel(/1 Slide strip, top front, front/).focus();
    await key('w');
    await page.getByText('2 Slide strip, top rear, front').first().waitFor();
    await key('Enter');
    await key('Enter');
    await key('Enter');
    await expect.poll(() => page.getByLabel(/2 Slide strip, top rear, front/).inputValue()).toBe('11.80');
    await expect.poll(() => page.getByLabel(/1 Slide strip, top front, front/).inputValue()).toBe('');
    await key('Control+Enter');
    await page.getByText('1 sheet in this batch').waitFor();

    await goTo(page, '/history');
    await page.getByRole('button', { name: /Take back the last entry/ }).click();
    await page.getByText('The last entry would be taken back: old sheet, Vessel 118, 12 Oct 2014.').waitFor();
    await page.getByText('With it 2 sizes, 1 meter reading.').waitFor();
    await page.getByLabel('Taken back by').fill('Ada');
    await page.getByRole('button', { name: 'Take it back' }).click();
    await page.getByText(/taken back .* by Ada/).waitFor();
    // the sheet taken back into its boxes stands there too
    expect(await page.getByText(/taken back /).count()).toBe(2);
  });

  windowTest('what opens on its desk stands without a fault that axe knows', async ({ prepare }) => {
    const opened = await prepare({ asOf: '2026-11-09' });
    await aShopWithAHitch(opened);
    const { page } = opened;
    await openDesk(opened);
    const { key, enter } = counting(page);
    await enter('ves');
    await expect.poll(() => focused(page)).toBe('Day on the sheet');
    await enter('12.10.14');
    await enter('812');
    await enter('Bo');
    await enter('118');
    await page.getByText('1 questioned').waitFor();
    await expectAxeCleanByNight(page);
    const strips = [
      ['w', 'Change round'],
      ['a', 'Add a measuring point'],
    ] as const;
    for (const [letter, strip] of strips) {
      await key(letter);
      await page.getByRole('region', { name: strip }).waitFor();
      await expectAxeCleanByNight(page);
      await key('Escape');
    }
    await key('Control+Shift+Enter');
    await page.getByText('1 sheet in this batch').waitFor();
    await page.locator('.waiting-size').click();
    await page.getByRole('combobox', { name: 'Machine', exact: true }).focus();
    await enter('Loft 40');
    await page.getByRole('region', { name: 'Take in Loft 40' }).waitFor();
    await expectAxeCleanByNight(page);
    // its other screens stand in everyScreen.test.ts
    await goTo(page, '/old-sheets');
    await page.getByRole('button', { name: 'End the batch' }).click();
    await page.getByText('Batch ended: 1 sheet in').waitFor();
    await page.getByRole('row', { name: /Vessel 118/ }).waitFor();
    await expectAxeCleanByNight(page);
  });
});
