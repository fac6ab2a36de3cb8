import { expect } from 'vitest';
import { machineRead, machineTakeIn } from '#core/contract/machine.ts';
import { stripDownSave, stripDownSheet } from '#core/contract/stripDown.ts';
import { aTakeIn } from '#tests/support/aHitch.ts';
import { emptyShop, expectAxeClean, goTo, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

/** A fitter says at the bench what a renewal was, and the next man finds it. */
windowTest('an oversize pin is said at the bench by keys, and the next man reads its size', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: '2026-11-09', width: 1280, height: 800 });
  await emptyShop(ask);
  const { machineId } = await told(ask, machineTakeIn, aTakeIn());
  await show();
  await goTo(page, `/strip-down/${machineId}`);
  const pin = page.locator('.grid-row').nth(1).locator('input').first();
  await pin.fill('28.7');
  await page.keyboard.press('l');
  await pin.focus();
  await page.keyboard.press('p');
  const strip = page.getByRole('region', { name: 'What was done at Hook pin' });
  await strip.waitFor();
  // by keys alone: the choice has the focus, the arrow takes the next
  await page.keyboard.press('ArrowRight');
  await strip.getByRole('radio', { name: 'new part' }).waitFor();
  await strip.getByText('oversize pin').click();
  await strip.getByLabel('Made to').fill('29');
  await strip.getByText(/^29\.00\s*mm is no larger than the standard here/).waitFor();
  await expectAxeClean(page);
  await strip.getByLabel('Made to').fill('31');
  await strip.getByText('is no larger than the standard here').waitFor({ state: 'detached' });
  await strip.getByRole('radiogroup', { name: 'Size stamped on it' }).getByText('yes').click();
  await strip.getByLabel('Shim put in').focus();
  await page.keyboard.press('Escape');
  expect(await pin.evaluate((input) => input === document.activeElement)).toBe(true);

  // one station of the strip alone, and packing behind it
  const front = page.locator('.grid-row').first().locator('input').first();
  await front.focus();
  await page.keyboard.press('r');
  const stripTop = page.getByRole('region', { name: 'What was done at Strip top' });
  await stripTop.getByLabel('front').check();
  await stripTop.getByLabel('Shim put in').fill('0,5');
  await expectAxeClean(page);
  await page.getByText(/^kept \d\d:\d\d/).waitFor();
  const { draft } = await told(ask, stripDownSheet, { machineId });
  expect(draft?.renewals).toMatchObject([
    { kind: 'new-part', station: 'front', hoursKnown: true },
    { kind: 'oversize', station: '', sizeMm: 31, stamped: true },
  ]);
  expect(draft?.shims).toMatchObject([{ shimMm: 0.5 }]);
  await told(ask, stripDownSave, { ...draft!, dialHours: 3000, dialSure: false });

  await page.reload();
  await goTo(page, `/strip-down/${machineId}`);
  await page.getByText('oversize 31.0, stamped').waitFor();
  await goTo(page, `/machine/${machineId}`);
  await page
    .getByText(/Oversize 31\.0.mm, drawn 30\.0, since 9 Nov(ember)? 2026, stamped/)
    .first()
    .waitFor();
  await expectAxeClean(page);
  const { points } = await told(ask, machineRead, { machineId });
  expect(points[1]).toMatchObject({ limits: { newSizeMm: 31, renewAtMm: 30 } });

  // an earlier pin whose size nobody believes: the question stands on the machine's page, and is answered there
  const pinId = points[1]?.pointId ?? 0;
  const odd = { pointId: pinId, hoursKnown: true, sizeMm: 33, kind: 'new-part' as const };
  const earlier = { ...draft!, takenOn: '2026-11-02', dialHours: 2990, sizes: [], shims: [], renewals: [odd] };
  await told(ask, stripDownSave, { ...earlier, dialSure: true });
  const asked = async () => (await told(ask, machineRead, { machineId })).points[1]?.renewalsQuestioned.length;
  expect(await asked()).toBe(1);
  await page.reload();
  await goTo(page, `/machine/${machineId}/${pinId}/sizes`);
  const putIn = page.getByRole('region', { name: /parts put in that are questioned/ });
  await putIn.getByText('33.00').first().waitFor();
  await expectAxeClean(page);
  await putIn.getByRole('button', { name: 'Right as read' }).click();
  await putIn.waitFor({ state: 'detached' });
  expect(await asked()).toBe(0);

  // an assembly that stands may have its joints said anew
  await page.getByRole('tab', { name: 'Assemblies' }).click();
  await page.getByRole('button', { name: /^Joints/ }).click();
  await page.getByText('Which pin runs in which bores').waitFor();
  await expectAxeClean(page);
});
