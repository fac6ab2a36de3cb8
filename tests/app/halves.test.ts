import { expect } from 'vitest';
import { machineRead, machineTakeIn } from '#core/contract/machine.ts';
import { shopRead } from '#core/contract/shop.ts';
import { aTakeIn } from '#tests/support/aHitch.ts';
import { emptyShop, expectAxeClean, expectAxeCleanByNight, goTo } from './screens.ts';
import { type OpenedWindow, windowTest } from './windowTest.ts';

async function answered<T>(asked: Promise<{ ok: boolean; value?: unknown; fault?: unknown }>): Promise<T> {
  const answer = await asked;
  if (!answer.ok) expect.fail(JSON.stringify(answer.fault));
  return answer.value as T;
}

async function takeIn(ask: OpenedWindow['ask'], name: string): Promise<number> {
  const { kinds } = shopRead.zReply.parse(await answered(ask('shop/read', {})));
  const kind = kinds.find((one) => one.name === 'Telescopic pick-up hitch')!;
  const form = aTakeIn({ name });
  const assembly = { ...form.assemblies[0]!, kind: kind.name, name: 'Pick-up hitch', positions: kind.positions };
  const reply = await answered(ask('machine/takeIn', { ...form, assemblies: [assembly] }));
  return machineTakeIn.zReply.parse(reply).machineId;
}

windowTest('two hitches exchange their carriers from the machine’s page, and it is taken back', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: '2026-11-02', width: 1280, height: 800 });
  await emptyShop(ask);
  const [one, other] = [await takeIn(ask, 'Tarrow 90'), await takeIn(ask, 'Harrod 118')];
  const sheetOf = async (machineId: number) =>
    machineRead.zReply.parse(await answered(ask('machine/read', { machineId })));
  const before = await sheetOf(one);
  await show();
  await goTo(page, `/machine/${one}`);
  await page.getByRole('tab', { name: 'Assemblies' }).click();
  await page.getByRole('button', { name: 'Move Pick-up hitch' }).click();
  await page.getByText('the carrier alone').click();
  await page.getByRole('combobox', { name: /To which assembly/ }).fill('Harr');
  await page.getByRole('option', { name: /Harrod 118/ }).click();
  await page.getByRole('textbox', { name: 'Dial of Tarrow 90' }).fill('3000');
  await page.getByRole('textbox', { name: 'Dial of Harrod 118' }).fill('4000');
  const going = page.getByRole('region', { name: 'What goes where' }).getByRole('listitem');
  expect(await going.allTextContents()).toEqual([
    'The carrier, items 1, 2, 3, 4, 5, 6, 7, 11, 12, 13, 14: from Pick-up hitch, Tarrow 90 to Pick-up hitch, Harrod 118',
    'The carrier, items 1, 2, 3, 4, 5, 6, 7, 11, 12, 13, 14: from Pick-up hitch, Harrod 118 to Pick-up hitch, Tarrow 90',
  ]);
  await expectAxeCleanByNight(page);
  if (process.env.PICTURES) await page.screenshot({ path: `${process.env.PICTURES}/move.png` });
  await page.getByRole('button', { name: 'Move', exact: true }).click();
  await page.getByRole('button', { name: 'Move Pick-up hitch' }).waitFor();

  const [here, there] = [await sheetOf(one), await sheetOf(other)];
  const strip = before.points.find(({ item }) => item === 1)!;
  expect(there.points.map(({ pointId }) => pointId)).toContain(strip.pointId);
  expect(here.points.map(({ pointId }) => pointId)).not.toContain(strip.pointId);
  expect(here.points).toHaveLength(before.points.length);

  await goTo(page, '/history');
  await page.getByText('Half of an assembly moved').first().waitFor();
  if (process.env.PICTURES) await page.screenshot({ path: `${process.env.PICTURES}/history.png` });
  await page.keyboard.press('u');
  await page.getByRole('button', { name: 'Take it back' }).click();
  await page
    .getByText(/taken back/)
    .first()
    .waitFor();
  await expect
    .poll(async () => (await sheetOf(one)).points.map(({ pointId }) => pointId))
    .toEqual(before.points.map(({ pointId }) => pointId));

  // and put in again
  await page.keyboard.press('i');
  await page.getByText(/would be put in again: half of an assembly moved/).waitFor();
  await expectAxeClean(page);
  if (process.env.PICTURES) await page.screenshot({ path: `${process.env.PICTURES}/redo.png` });
  await page.getByRole('button', { name: 'Put it in again' }).last().click();
  await page.getByText('The entry taken back put in again').waitFor();
  await expect.poll(async () => (await sheetOf(one)).points.map(({ pointId }) => pointId)).not.toContain(strip.pointId);
});
