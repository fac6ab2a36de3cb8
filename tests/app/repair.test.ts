import { expect } from 'vitest';
import { machineRead } from '#core/contract/machine.ts';
import { repairRead, repairSaveFacts } from '#core/contract/repair.ts';
import { shopFiguresRead } from '#core/contract/shopFigures.ts';
import type { OpenProgram } from '#core/shells/openProgram.ts';
import { aWornHole } from '#tests/support/aWornHole.ts';
import { expectAxeClean, expectAxeCleanByNight, goTo, smallShop, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

/** A hitch whose right hook-frame pivot has been described by the bench. */
async function aPivot(ask: OpenProgram['ask'], change: Parameters<typeof aWornHole>[1] = {}) {
  const { machineId } = await smallShop(ask);
  const { points } = await told(ask, machineRead, { machineId });
  const pivot = points.find(({ item, measures }) => item === 12 && measures === 'bore');
  if (!pivot) throw new Error('the hitch has a pivot');
  const { positionId } = pivot;
  const { facts } = await told(ask, repairRead, { positionId });
  await told(ask, repairSaveFacts, { positionId, facts: aWornHole(facts, change), by: 'Bo' });
  return { machineId, positionId };
}

windowTest('a fitter sees every choice for a worn pivot, chooses one, and takes it back', async ({ prepare }) => {
  const { page, ask, show } = await prepare();
  const { machineId, positionId } = await aPivot(ask, { mustStayStandard: true });
  await show();
  await goTo(page, `/repair/${positionId}`);
  await page.getByRole('img', { name: /Worn hole to scale/ }).waitFor();
  const shown = async () => ((await page.locator('main').textContent()) ?? '').replaceAll('\u00A0', ' ');
  for (const words of [
    'It interchanges: its hole stays 40.0 mm standard. Bush it back instead.',
    'Old centre Ø 42.11; best centre Ø 41.20, 0.45 to REAR.',
    'The centre may move, by the unworn lip.',
    '46.00 H7, old centre',
    'Local codes',
  ])
    expect(await shown()).toContain(words);
  await expectAxeCleanByNight(page, 'every choice for a pivot');
  // its number, then Enter: no pointer needed
  await page.keyboard.press('3');
  await page.keyboard.press('Enter');
  await page.getByText(/^Chosen, .*\.$/).waitFor();
  expect((await told(ask, repairRead, { positionId })).chosen?.choice).toBe('bush');
  // the figures go along to the slide rule, and back
  await page.keyboard.press('f');
  await page.getByText(/^With the figures of/).waitFor();
  expect(await page.getByLabel('Outside of the boss').inputValue()).toBe('86');
  await page.getByRole('button', { name: /^Back to the joint/ }).click();
  await page.getByRole('img', { name: /Worn hole to scale/ }).waitFor();
  // a key is dead while the choice is being kept
  const takeBack = page.getByRole('button', { name: /^Take the choice back/ });
  await expect.poll(() => takeBack.isEnabled()).toBe(true);
  await page.keyboard.press('t');
  await page.getByRole('button', { name: /^Choose: bore and bush/ }).waitFor();
  expect((await told(ask, repairRead, { positionId })).chosen).toBeNull();
  await page.keyboard.press('m');
  await page.waitForURL(`**/#/machine/${machineId}`);
});

windowTest('a hole nobody has described says what is missing; filled in, its choices stand', async ({ prepare }) => {
  const { page, ask, show } = await prepare();
  const { machineId } = await smallShop(ask);
  await show();
  const { points } = await told(ask, machineRead, { machineId });
  const pivot = points.find(({ item, measures }) => item === 11 && measures === 'bore');
  await goTo(page, `/repair/${pivot?.positionId}`);
  await page.getByText('Not measured enough to say').waitFor();
  const type = (label: string, text: string) => page.getByLabel(label, { exact: true }).fill(text);
  await type('Axis A, front to rear', '41.3');
  await type('Boss outside', '86');
  await type('Boss length', '45');
  await type('Who decides', 'Bo');
  await page.getByRole('button', { name: 'Keep and work out' }).click();
  await page.getByText('Read on 1 of 4 axes. Four at 45 degrees are wanted.').waitFor();
  await page.getByText('Steel not known. Find out what it is first.').first().waitFor();
  await page.getByText('Kept in the record.').waitFor();
});

windowTest('top and bottom front renewed: what that gives back at the hook', async ({ prepare }) => {
  const { page, ask, show } = await prepare();
  const { machineId } = await smallShop(ask);
  const { points } = await told(ask, machineRead, { machineId });
  const strip = points.find(({ item }) => item === 1);
  await show();
  await goTo(page, `/slide/${strip?.assemblyId}`);
  await page.getByText('Enter the two lengths').waitFor();
  const type = (label: string, text: string) => page.getByLabel(label, { exact: true }).fill(text);
  await type('Front and rear strips, over all', '500');
  await type('From the rear strips to the hook', '400');
  await page.getByText('Nothing is done: the play stays.').waitFor();
  await page.getByRole('radiogroup', { name: 'Slide strip, top front' }).getByText('renew', { exact: true }).click();
  // 12.0 new, 10.2 at its front end, a lever of 400 to 500
  await page.getByText(/^Top front renewed: gives back 1\.4.mm at the hook\.$/).waitFor();
  await page.getByRole('button', { name: 'Keep these lengths' }).click();
  await page.getByText('Kept in the record.').waitFor();
  await expectAxeClean(page);
});

windowTest(
  'the shop sets its own figures of repair, each beside the program’s with how that is known',
  async ({ prepare }) => {
    const { page, ask, show } = await prepare();
    await smallShop(ask);
    await show();
    await goTo(page, '/shop-figures');
    const step = page.getByLabel('Here, Oversize pins go up by');
    await step.fill('20');
    await page.getByText('From 0.05 to 10.').waitFor();
    await step.fill('0.25');
    await page.getByRole('button', { name: 'Add bars' }).click();
    await page.getByLabel('Sort').fill('steel round 60');
    await page.getByLabel('Length', { exact: true }).fill('640');
    await expectAxeCleanByNight(page, 'figures of repair');
    await page.keyboard.press('Control+Enter');
    await page.getByText('As saved').waitFor();
    const { figures, rack } = await told(ask, shopFiguresRead, {});
    expect(figures.find(({ name }) => name === 'oversizeStepMm')).toMatchObject({ value: 0.25, usual: 0.5 });
    expect(rack).toEqual([{ bar: 'steel round 60', lengthMm: 640, count: 1 }]);
  },
);
