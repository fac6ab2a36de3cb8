import { mkdirSync, truncateSync } from 'node:fs';
import { join } from 'node:path';
import { expect } from 'vitest';
import { recordBackUp } from '#core/contract/record.ts';
import { windowTest } from '#tests/app/windowTest.ts';
import { aShopWithAHitch } from '#tests/support/aHitch.ts';
import { aProgram } from '#tests/support/aProgram.ts';
import { goTo } from './screens.ts';

windowTest(
  'a damaged record: the window opens, says what is wrong, and a backup of it is put in its place',
  async ({ open }) => {
    const program = aProgram('2026-11-02');
    try {
      await aShopWithAHitch(program);
      await program.ask(recordBackUp, {});
      const recordPath = program.context.record!.path;
      program.context.close();
      truncateSync(recordPath, 20_000);
      const { page, ask } = await open({ recordPath, dataFolder: program.folder, asOf: '2026-11-02' });
      await page.getByRole('alert').getByText('The record is damaged').waitFor();
      await page.getByRole('button', { name: /Restore a backup/ }).click();
      await page.getByRole('button', { name: /1 machine, 0 sizes/ }).click();
      await page.getByRole('button', { name: 'Put it in place' }).first().click();
      await page.getByText('Tractor 1').first().waitFor();
      expect(await ask('record/state', {})).toMatchObject({ ok: true, value: { open: true, trouble: null } });
    } finally {
      program.end();
    }
  },
);

windowTest('a further folder for backups is chosen on the record’s own page', async ({ prepare }) => {
  const { page, ask, folder, show } = await prepare({ asOf: '2026-11-02' });
  await ask('record/startEmpty', {});
  const stick = join(folder, 'stick');
  mkdirSync(stick);
  await show();
  await goTo(page, '/start');
  await page.getByRole('button', { name: /Restore a backup/ }).click();
  await page.getByLabel('A further folder for every backup').fill(stick);
  await page.getByRole('button', { name: 'Copy backups there too' }).click();
  await page.getByText('The folder you chose').waitFor();
  expect(await ask('record/backups', {})).toMatchObject({
    ok: true,
    value: { folders: [{ chosen: false }, { folder: stick, chosen: true }] },
  });
});

windowTest('a folder that looks copied is warned of until a person says that it is not', async ({ open }) => {
  const program = aProgram('2026-11-02');
  program.end();
  const recordPath = join(program.folder, 'Cloud', 'shop.hoursandwear');
  mkdirSync(join(program.folder, 'Cloud'), { recursive: true });
  const { page, ask } = await open({ recordPath, asOf: '2026-11-02' });
  await ask('record/startEmpty', {});
  await goTo(page, '/start');
  await page.reload();
  await page.getByRole('button', { name: 'Nothing copies this folder' }).click();
  await expect.poll(() => page.getByText('seems to lie in a folder').count()).toBe(0);
  expect(await ask('record/state', {})).toMatchObject({ ok: true, value: { warnings: [] } });
});
