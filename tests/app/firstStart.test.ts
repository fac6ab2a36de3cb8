import { mkdtempSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';
import { exchangeExportFolder } from '#core/contract/exchange.ts';
import { machineRead } from '#core/contract/machine.ts';
import { recordBackUp } from '#core/contract/record.ts';
import { findingAdd } from '#core/contract/stripDown.ts';
import { expectAxeClean, goTo, smallShop, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

const csv = (name: string, text: string) => ({ name, mimeType: 'text/csv', buffer: Buffer.from(text) });

const MACHINES =
  'machine,customer,make,model,serial,built_year,meter_digits,hours_before,work_share\nTarrow 90,Under Crag,,,,,5,,\n';
const HOURS =
  'machine,date,dial_hours,event,new_dial_hours,hours_error\nTarrow 90,2024-01-10,4120,reading,,\nTarrow 90,2026-01-12,';

windowTest('first start offers six ways, and the demo is one key away', async ({ open }) => {
  const { page } = await open({ asOf: '2026-11-02', demo: 'at hand', width: 1280, height: 800 });
  for (const way of [
    'Open the demo workshop',
    'Start empty',
    'Bring in CSV files',
    'Bring an export back',
    'Open an existing record',
    'Restore a backup',
  ]) {
    await page.getByRole('button', { name: way }).waitFor();
  }
  await expectAxeClean(page);
  await page.keyboard.press('d');
  await page.getByRole('link', { name: 'Strip-down' }).waitFor();
});

windowTest(
  'files with a fault are accounted for row by row and change nothing; put right they come in',
  async ({ open }) => {
    const { page, ask } = await open({ asOf: '2026-11-09', width: 1280, height: 800 });
    await page.getByRole('button', { name: 'Bring in CSV files' }).waitFor();
    await page.keyboard.press('c');
    const picker = page.locator('input[type=file]');
    await picker.setInputFiles([csv('machines.csv', MACHINES), csv('hours.csv', `${HOURS}812,reading,,\n`)]);
    await page.getByText(/row cannot be read\. Nothing was brought in\./).waitFor();
    const fault = page.getByRole('row').filter({ hasText: 'hours.csv' });
    expect(await fault.getByRole('cell').allTextContents()).toEqual([
      'hours.csv',
      '3',
      'dial_hours',
      '812',
      expect.stringContaining('4120'),
    ]);
    await expectAxeClean(page);
    expect(await ask('record/state', {})).toMatchObject({ ok: true, value: { counts: { machines: 0 } } });

    await picker.setInputFiles([csv('machines.csv', MACHINES), csv('hours.csv', `${HOURS}5812,reading,,\n`)]);
    await page.getByText('All rows can be read. Nothing is brought in yet.').waitFor();
    await page.getByText('1 customer, 1 machine, 2 meter readings').waitFor();
    await page.keyboard.press('b');
    await page.getByRole('link', { name: 'Strip-down' }).waitFor();
    expect(await ask('record/state', {})).toMatchObject({ ok: true, value: { open: true, counts: { machines: 1 } } });
  },
);

windowTest('an export is brought back from the first screen, where no record is open', async ({ open }) => {
  const { ask } = await open({ asOf: '2026-11-09' });
  await smallShop(ask);
  const { zipBase64 } = await told(ask, exchangeExportFolder, { toFolder: null });
  const fresh = await open({ asOf: '2026-11-09', width: 1280, height: 800 });
  await fresh.page.getByRole('button', { name: 'Bring an export back' }).waitFor();
  await fresh.page.keyboard.press('x');
  await fresh.page.getByRole('region', { name: 'Choose the zip' }).waitFor();
  await expectAxeClean(fresh.page);
  if (process.env.PICTURES) await fresh.page.screenshot({ path: `${process.env.PICTURES}/start.png` });
  const zip = { name: 'out.zip', mimeType: 'application/zip', buffer: Buffer.from(zipBase64!, 'base64') };
  await fresh.page.locator('input[type=file]').setInputFiles(zip);
  await fresh.page.waitForURL(/#\/machines$/);
  expect(await fresh.ask('record/state', {})).toMatchObject({
    ok: true,
    value: { open: true, counts: { machines: 1 } },
  });
});

windowTest('a record is opened by its path, and one that is none is refused with what is safe', async ({ open }) => {
  const { page, ask, folder } = await open({ asOf: '2026-11-09' });
  await page.getByRole('button', { name: 'Open an existing record' }).waitFor();
  await page.keyboard.press('o');
  await page.keyboard.type(`${folder}/nothing here.hoursandwear`);
  await page.keyboard.press('Enter');
  await page.getByRole('alert').waitFor();
  expect(await ask('record/state', {})).toMatchObject({ ok: true, value: { open: false } });
});

windowTest('a record that cannot be opened says why, and the six ways stand below', async ({ open }) => {
  const folder = mkdtempSync(join(tmpdir(), 'broken-record-'));
  const recordPath = join(folder, 'shop.hoursandwear');
  writeFileSync(recordPath, 'no record at all, only words '.repeat(40));
  const { page } = await open({ asOf: '2026-11-09', recordPath });
  await page.getByText(`${recordPath} is not a record of this program.`).waitFor();
  await page.getByRole('button', { name: 'Open an existing record' }).waitFor();
  await expectAxeClean(page);
  rmSync(folder, { recursive: true, force: true });
});

windowTest('what a backup would lose is said before it takes the record’s place', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: '2025-11-09' });
  const { machineId } = await smallShop(ask);
  await told(ask, recordBackUp, {});
  await told(ask, findingAdd, {
    assemblyId: 1,
    positionId: null,
    kind: 'bent',
    severity: 'watch',
    note: '',
    takenOn: '2025-11-03',
    by: 'Ines',
  });
  await show();
  await goTo(page, '/start');
  await page.keyboard.press('r');
  await page.getByRole('region', { name: 'Backups of this record' }).getByRole('button').first().click();
  await page.getByText('1 entry made since would go: 1 finding.').waitFor();
  await page.getByRole('button', { name: 'Put it in place' }).click();
  await page.waitForURL(/#\/machines$/);
  expect((await told(ask, machineRead, { machineId })).findings).toEqual([]);
});
