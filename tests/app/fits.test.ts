import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { emptyShop, expectAxeCleanByNight, goTo } from './screens.ts';
import { type WindowTools, windowTest } from './windowTest.ts';

/** The screen of fits over an empty record. */
async function fitsScreen({ prepare }: WindowTools): Promise<Page> {
  const { page, ask, show } = await prepare();
  await emptyShop(ask);
  await show();
  await page.locator('main.sheet h1').first().waitFor();
  await goTo(page, '/fits');
  await page.getByText('presses in hard').waitFor();
  return page;
}
/** All the sheet says, its gaps between figure and unit as plain ones. */
const shown = async (page: Page): Promise<string> =>
  ((await page.locator('main').textContent()) ?? '').replaceAll('\u00A0', ' ');
const type = (page: Page, label: string, text: string) => page.getByLabel(label, { exact: true }).fill(text);

windowTest(
  'a fitter reads limits, range and feel of a fit, and a fit that cannot be read says what to write',
  async (tools) => {
    const page = await fitsScreen(tools);
    // the first box has the focus: nothing to click
    await page.keyboard.press('Control+a');
    await page.keyboard.type('50 H7/g6');
    await page.getByText('slides freely').waitFor();
    const text = await shown(page);
    for (const figure of ['50.025', '50.000', '49.991', '49.975', '+0.025', '−0.009', '0.009 to 0.050'])
      expect(text).toContain(figure);
    await page.getByRole('img', { name: /Tolerance zones of 50 H7\/g6/ }).waitFor();
    await page.getByText('nothing presses').waitFor();

    await type(page, 'Size and fit', '50 C11/g6');
    await page.getByText('The letter C is not worked out here.').waitFor();
    await type(page, 'Size and fit', '');
    await page.getByText('No fit yet').waitFor();
    await goTo(page, '/shop');
    await page.getByRole('button', { name: 'Fits and press' }).click();
    await page.getByText('Size and fit').waitFor();
  },
);

windowTest('a bush is pressed: force, bore once in, heat, and yield is said', async (tools) => {
  const page = await fitsScreen(tools);
  await page.getByText('Enter outside, bore and length').waitFor();
  // by keys alone: to the part, and into its first box
  await page.keyboard.press('Alt+p');
  await page.keyboard.type('80');
  expect(await page.getByLabel('Outside of the boss', { exact: true }).inputValue()).toBe('80');
  await type(page, 'Outside of the boss', '80');
  await type(page, 'Bore of the bush', '40');
  await type(page, 'Length in the boss', '45');
  await page.getByText('Pressing it in').waitFor();
  // Lamé by hand: 36.2 MPa, 0.059 mm; 40 E6 closes in to 40.012 to 40.054
  const text = await shown(page);
  for (const figure of ['0.018', '0.059', '40.012', '40.054', 'Heat the boss to 210 °C'])
    expect(text).toContain(figure);
  await page.getByText('Never heat a closed hollow section').waitFor();
  await page.getByText('licensed practice prevail').first().waitFor();
  await expectAxeCleanByNight(page, 'a bush is pressed');
  // a small bush is squeezed far more by the same class
  await type(page, 'Size and fit', '10 H7/s6');
  await type(page, 'Bore of the bush', '6');
  await page.getByText('The bush is pressed past its yield stress').waitFor();
  await type(page, 'Size and fit', '50 H7/s6');
  await type(page, 'Outside of the boss', '45');
  await page.getByText('has no wall around').waitFor();
});

windowTest(
  'a repaired joint is held beside its drawing: worn pin and side slop bend the pin 16 % more',
  async (tools) => {
    const page = await fitsScreen(tools);
    const drawn: Record<string, string> = {
      ...{ pin: '50', 'gap each side': '0.5' },
      ...{
        'eye, bore': '50',
        'eye, thickness': '60',
        'eye, across the pull': '100',
        'eye, middle of bore to end': '50',
      },
      ...{ 'fork plate, bore': '50', 'fork plate, thickness': '25', 'fork plate, across the pull': '100' },
      'fork plate, bore to end': '50',
    };
    for (const [size, mm] of Object.entries(drawn)) await type(page, `${size}, as drawn`, mm);
    await page.getByText('No figure is worse than as drawn').waitFor();
    await type(page, 'pin, repaired', '49');
    await type(page, 'gap each side, repaired', '3');
    await page.getByText('Worse than as drawn, most of all: pin, bending').waitFor();
    // worked by hand for this joint: 68.4 and 79.2 MPa
    expect(await shown(page)).toContain('116 %, worse');
    await type(page, 'Pull on the joint', '60');
    await page.getByText('the published rules for new structures').waitFor();
    const text = await shown(page);
    for (const figure of ['68.4', '79.2']) expect(text).toContain(figure);
    await type(page, 'eye, bore, repaired', '100');
    await page.getByText('Nothing is left of the eye').waitFor();
  },
);

windowTest('a bar is straightened; a hook is not, until the maker’s written procedure is there', async (tools) => {
  const page = await fitsScreen(tools);
  // closed before anything is measured
  await page.getByText('a crack is seen or suspected').click();
  await page.getByText('Not to be straightened').waitFor();
  await page.getByText('a crack is seen or suspected').click();
  await page.getByText('Enter section, yield stress and span').waitFor();
  await type(page, 'Width', '60');
  await type(page, 'Depth, along the push', '80');
  await type(page, 'Between the supports', '500');
  await page.getByText('goes on bending').waitFor();
  // 4 Mp / L by hand: 272.6 kN, 27.8 tonne-force
  const text = await shown(page);
  for (const figure of ['181.8', '272.6', '27.8']) expect(text).toContain(figure);
  await page.getByText('a crack is seen or suspected').click();
  await page.getByText('Not to be straightened').waitFor();
  expect(await page.getByText('goes on bending').count()).toBe(0);
  await expectAxeCleanByNight(page, 'a bar is not straightened');
  await page.getByText('a crack is seen or suspected').click();
  await page.getByText('goes on bending').waitFor();

  await page.getByRole('combobox', { name: 'The part is' }).fill('a hook');
  await page.getByRole('option', { name: 'a hook' }).click();
  await page.getByText('it is forged or heat-treated').waitFor();
  await type(page, 'Who gave it', 'Maker’s technical office');
  await type(page, 'Its reference', 'WPS 114-B');
  await page.getByText('goes on bending').waitFor();
});
