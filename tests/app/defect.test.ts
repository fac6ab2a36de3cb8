import { expect } from 'vitest';
import { machinesList } from '#core/contract/machine.ts';
import { expectAxeClean, goTo, SMALL_SHOP, smallShop, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

windowTest(
  'a defect in a save says what to do, keeps what was typed, gives details without it, and the save goes in afterwards',
  async ({ prepare }) => {
    const { page, ask, show } = await prepare({ asOf: '2025-11-09', width: 1280, height: 800 });
    await smallShop(ask);
    await show();
    await goTo(page, '/part-classes');
    const fault = { code: 'failed', facts: { operation: 'hours/add', detail: 'Error: planted' } };
    await page.route('**/op/hours/add', (route) => route.fulfill({ json: { ok: false, fault } }));
    await page.evaluate(() => {
      document.addEventListener('copy', () => {
        document.title = (document.activeElement as HTMLTextAreaElement).value;
      });
    });
    await page.keyboard.press('h');
    const strip = page.getByRole('region', { name: 'Hours' });
    await page.keyboard.type('crag');
    await page.keyboard.press('ArrowDown');
    await page.keyboard.press('Enter');
    await page.keyboard.press('Enter');
    await page.keyboard.type('5 640');
    await page.keyboard.press('Enter');
    const alert = page.getByRole('alert').filter({ has: page.getByRole('button', { name: 'Copy details' }) });
    await alert.waitFor();
    expect(await strip.getByLabel('Dial shows').inputValue()).toBe('5 640');
    expect(await strip.getByRole('combobox', { name: 'Machine' }).inputValue()).toBe(SMALL_SHOP.machine);
    await expectAxeClean(page);
    await alert.getByRole('button', { name: 'Copy details' }).click();
    await expect.poll(() => page.title()).toContain('hours/add');
    const details = await page.title();
    for (const private_ of [SMALL_SHOP.machine, SMALL_SHOP.customer, '5 640', '5640'])
      expect(details).not.toContain(private_);

    await page.unroute('**/op/hours/add');
    await strip.getByLabel('Dial shows').focus();
    await page.keyboard.press('Enter');
    await page.getByText(/Tarrow 90: kept/).waitFor();
    expect((await told(ask, machinesList, {})).machines[0]?.hours.dialHours).toBeCloseTo(5640, 6);
  },
);
