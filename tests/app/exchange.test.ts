import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, expect } from 'vitest';
import { jobsState } from '#core/contract/jobs.ts';
import { machinesList } from '#core/contract/machine.ts';
import { filesOfZip } from '#core/exchange/zipFiles.ts';
import { orRefuse } from '#core/outcome.ts';
import { aWorkbook } from '#tests/support/aWorkbook.ts';
import { expectAxeClean, SMALL_SHOP, smallShop, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

const folder = mkdtempSync(join(tmpdir(), 'exchange-window-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

const DAY = '2026-11-02';
/** A picture of each state is kept when a folder for them is named. */
const picture = async (page: { screenshot(options: object): Promise<unknown> }, name: string) => {
  if (process.env.PICTURES) await page.screenshot({ path: join(process.env.PICTURES, `${name}.png`), fullPage: true });
};

windowTest(
  'a sheet with heads of its own comes in: looked at, confirmed, tried, brought in, remembered',
  async ({ prepare }) => {
    const { page, ask, show } = await prepare({ asOf: DAY });
    await smallShop(ask);
    await show();
    await page.getByRole('link', { name: 'In and out' }).click();
    await page.getByRole('heading', { name: 'Bring in and take out' }).waitFor();
    await picture(page, 'exchange');

    const sheet = join(folder, 'Stunden.csv');
    const rows = [
      'Fahrzeug;Datum;Zählerstand (h);Mechaniker',
      `${SMALL_SHOP.machine};30.10.2026;6300,5;Jo`,
      'Nobody 1;31.10.2026;88;Jo',
    ];
    writeFileSync(sheet, rows.join('\r\n'));
    const choose = page.getByLabel('Choose a file', { exact: true }).and(page.locator('input'));
    await choose.setInputFiles(sheet);
    await page.getByText('Stunden.csv: 2 rows').waitFor();
    expect(await page.getByRole('radio', { name: 'a meter reading' }).isChecked()).toBe(true);
    expect(await page.getByRole('radio', { name: '12.10.2026' }).isChecked()).toBe(true);
    expect(await page.getByRole('radio', { name: '12,5' }).isChecked()).toBe(true);
    expect(await page.getByLabel('Column of the sheet for Machine').inputValue()).toBe('0');
    await page.getByText('Not brought in: Mechaniker').waitFor();
    await picture(page, 'columns');
    await expectAxeClean(page);

    await page.getByRole('button', { name: 'Try it' }).click();
    await page.getByText('1 row or cell cannot be read. Nothing was brought in.').waitFor();
    const fault = page.getByRole('row', { name: /Stunden.csv 3/ });
    expect(await fault.textContent()).toMatch(/3Fahrzeug\s*Nobody 1\s*a machine/);
    await picture(page, 'faults');

    writeFileSync(sheet, rows.join('\r\n').replace('Nobody 1;31.10.2026;88', `${SMALL_SHOP.machine};01.11.2026;6302`));
    await page.getByLabel('Another file', { exact: true }).and(page.locator('input')).setInputFiles(sheet);
    await page.getByText('Stunden.csv: 2 rows').waitFor();
    await page.getByRole('button', { name: 'Try it' }).click();
    await page.getByText('All 2 rows can be read. Nothing is brought in yet.').waitFor();
    await page.getByText('New: 2 meter readings.').waitFor();
    await picture(page, 'ready');
    await page.getByRole('button', { name: 'Bring it in' }).click();
    await page.getByText('Brought in.', { exact: true }).waitFor();
    const { machines } = await told(ask, machinesList, {});
    expect(machines.find(({ name }) => name === SMALL_SHOP.machine)?.hours).toMatchObject({ readOn: '2026-11-01' });

    await page.getByRole('button', { name: 'Leave it' }).click();
    await choose.setInputFiles(sheet);
    await page.getByText('Read as the last sheet with these heads was.').waitFor();
    await page.getByRole('button', { name: 'Try it' }).click();
    await page.getByText('Nothing new in this sheet: all of it is in the record already.').waitFor();
  },
);

windowTest('what a sheet does not tell is asked: days two ways, a column that is missing', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: DAY, colorScheme: 'dark' });
  await smallShop(ask);
  await show();
  await page.getByRole('link', { name: 'In and out' }).click();
  const book = join(folder, 'readings.xlsx');
  writeFileSync(
    book,
    await aWorkbook([
      ['Day', 'Hours'],
      ['03.04.2026', 6100],
    ]),
  );
  await page.getByLabel('Choose a file', { exact: true }).and(page.locator('input')).setInputFiles(book);
  await page.getByText('Still needed: Machine.').waitFor();
  const tryIt = page.getByRole('button', { name: 'Try it' });
  expect(await tryIt.isDisabled()).toBe(true);
  await page.getByLabel('Column of the sheet for Machine').selectOption('every-row');
  await page.getByLabel('What every row says for Machine').fill(SMALL_SHOP.machine);
  await page.getByText('Say how days and decimals are written.').waitFor();
  await picture(page, 'asked-dark');
  await page.getByText('12.10.2026', { exact: true }).click();
  await tryIt.click();
  await page.getByText(/New: 1 meter reading\./).waitFor();
  await expectAxeClean(page);

  writeFileSync(book, 'PK\u0003\u0004 no workbook');
  await page.getByLabel('Another file', { exact: true }).and(page.locator('input')).setInputFiles(book);
  await page.getByText('This workbook cannot be read').waitFor();
});

windowTest('a long sheet is broken off by X, and by leaving for another screen', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: DAY });
  await smallShop(ask);
  await show();
  await page.getByRole('link', { name: 'In and out' }).click();
  const sheet = join(folder, 'long.csv');
  // so many that they are not read before the key is pressed
  const rows = Array.from({ length: 80_000 }, (_, row) => `${SMALL_SHOP.machine};30.10.2026;${6300 + (row % 9)},5`);
  writeFileSync(sheet, ['Machine;Measured on;Meter h', ...rows].join('\r\n'));
  await page.getByLabel('Choose a file', { exact: true }).and(page.locator('input')).setInputFiles(sheet);
  await page.getByText('Try it').click();
  await page.getByRole('button', { name: 'Break off' }).waitFor();
  await page.keyboard.press('x');
  await page.getByText('Broken off. The record is as it was.').waitFor();
  expect(await told(ask, jobsState, { jobId: 'job-1' })).toMatchObject({ state: 'cancelled', account: null });

  await page.getByText('Try it').click();
  await page.getByRole('button', { name: 'Break off' }).waitFor();
  await page.getByRole('link', { name: 'Machines' }).click();
  await expect.poll(async () => (await told(ask, jobsState, { jobId: 'job-2' })).state).toBe('cancelled');
});

windowTest(
  'the record goes out as a zip and as a workbook, and comes back as a record of its own',
  async ({ prepare }) => {
    const { page, ask, show } = await prepare({ asOf: DAY });
    await smallShop(ask);
    await show();
    await page.getByRole('link', { name: 'In and out' }).click();
    const zip = join(folder, 'out.zip');
    const [download] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'The whole record, as CSV files' }).click(),
    ]);
    expect(download.suggestedFilename()).toBe('hours-and-wear-2026-11-02.zip');
    await download.saveAs(zip);
    const names = orRefuse(filesOfZip(new Uint8Array(readFileSync(zip)))).map(({ name }) => name);
    expect(names).toEqual(expect.arrayContaining(['machines.csv', 'sizes.csv', 'record/all-sizes.csv']));

    const [book] = await Promise.all([
      page.waitForEvent('download'),
      page.getByRole('button', { name: 'A workbook for people' }).click(),
    ]);
    expect(book.suggestedFilename()).toBe('hours-and-wear-2026-11-02.xlsx');

    await page.getByLabel('Choose the zip', { exact: true }).and(page.locator('input')).setInputFiles(zip);
    await page.getByText(/holds the export again, .* rows, and is open\./).waitFor();
    await picture(page, 'back');
    const state = (await ask('record/state', {})) as { ok: true; value: { path: string } };
    // beside the record it came from
    expect(state.value.path).toMatch(/shop 2\.hoursandwear$/);
  },
);
