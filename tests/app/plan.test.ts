import { expect } from 'vitest';
import { machineRead, machineTakeIn } from '#core/contract/machine.ts';
import { planRead } from '#core/contract/plan.ts';
import { stripDownSave } from '#core/contract/stripDown.ts';
import { aSize, aTakeIn } from '#tests/support/aHitch.ts';
import { emptyShop, expectAxeClean, expectAxeCleanByNight, goTo, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

windowTest('a winter is proposed, moved by keys, agreed, split and asked what if', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: '2026-11-09', width: 1280, height: 800 });
  await emptyShop(ask);
  await show();
  await goTo(page, '/winter');
  await page.getByRole('heading', { name: 'No machine on record yet' }).waitFor();
  for (const [name, stripMm] of [
    ['Hollin 90', 9.6],
    ['Tarrow 80', 9.55],
  ] as const) {
    const takeIn = aTakeIn({ name });
    const customer = { ...takeIn.customer!, name: `Farm of ${name}` };
    const { machineId } = await told(ask, machineTakeIn, { ...takeIn, customer });
    const [strip, pin] = (await told(ask, machineRead, { machineId })).points;
    await told(ask, stripDownSave, {
      ...{ machineId, takenOn: '2026-03-01', dialHours: 3000, fitter: 'Bo', note: '', renewals: [], findings: [] },
      ...{ dialSure: true, sizes: [aSize(strip!.pointId, stripMm, 'front'), aSize(pin!.pointId, 29.05)] },
    });
  }
  await page.reload();
  await page.getByRole('heading', { name: 'No winter planned yet' }).waitFor();
  await expectAxeClean(page);

  await page.keyboard.press('a');
  const visit = page.getByRole('button', { name: /^Hollin 90.*week of 23 Nov 2026/ });
  await visit.waitFor();
  await page.getByText('no plan of weeks does less harm').waitFor();
  await expectAxeCleanByNight(page);

  // by keys to the week after, which says what that costs; taken back; dragged by a press on the week
  await visit.click();
  await page
    .getByText(/good until/)
    .first()
    .waitFor();
  await page.keyboard.press('m');
  await page.keyboard.press('ArrowDown');
  await page.keyboard.press('Enter');
  await page.getByText('That costs nothing more.').waitFor();
  await page.getByRole('button', { name: /^Hollin 90.*week of 30 Nov 2026.*held by hand/ }).waitFor();
  await page.keyboard.press('u');
  await visit.waitFor();
  await page.keyboard.press('m');
  await page.getByRole('button', { name: /hours of the week of 4 Jan 2027/ }).click();
  const moved = page.getByRole('button', { name: /^Hollin 90.*week of 4 Jan 2027/ });
  await moved.click();

  // agreed: no plan moves it
  await page.keyboard.press('g');
  await page.getByRole('textbox', { name: 'Agreed with' }).fill('the farmer');
  await page.getByRole('button', { name: 'Write it down' }).click();
  const agreed = page.getByRole('button', { name: /^Hollin 90.*week of 4 Jan 2027.*agreed with the farmer/ });
  await agreed.waitFor();
  await page.keyboard.press('a');
  await page.locator('.plan-working').waitFor({ state: 'visible' });
  await page.locator('.plan-working').waitFor({ state: 'hidden' });
  await page.getByText(/1 settled by hand/).waitFor();
  await agreed.waitFor();

  // the other is split, and half of it left out
  await page
    .getByRole('button', { name: /^Tarrow 80/ })
    .first()
    .click();
  await page.keyboard.press('s');
  await page.getByRole('checkbox').first().check();
  await page.getByRole('button', { name: 'Split it' }).click();
  await page.getByText(/in all over the winters planned/).waitFor();
  await page.getByRole('heading', { name: /Not placed/ }).waitFor();

  // a week shut, and what if
  await page.getByRole('button', { name: /hours of the week of 21 Dec 2026/ }).click();
  await page.getByRole('textbox', { name: 'Bench hours of this week' }).fill('0');
  await page.getByRole('textbox', { name: 'Why' }).fill('Christmas');
  await page.getByRole('button', { name: 'Save', exact: true }).click();
  await page.getByText('shut, Christmas').waitFor();
  await page.keyboard.press('w');
  await page.getByRole('textbox', { name: 'Bench hours a week' }).fill('1');
  await page.getByRole('button', { name: 'Try it' }).click();
  await page.getByRole('row', { name: /^All costs of the winters planned/ }).waitFor();
  await expectAxeClean(page);
  await page.keyboard.press('b');
  await page.getByRole('textbox', { name: 'Here, A breakdown in season' }).waitFor();
  await expectAxeClean(page);
  expect((await told(ask, planRead, {})).visits.length).toBeGreaterThan(2);
});
