import { expect } from 'vitest';
import { machineRead, machinesList } from '#core/contract/machine.ts';
import { expectAxeCleanByNight, goTo, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

windowTest(
  'a question mark at a term answers what is asked of it, by keys, and gives the focus back',
  async ({ open }) => {
    const { page, ask } = await open({ asOf: '2026-11-02', demo: 'open', width: 1280, height: 800 });
    const { machines } = await told(ask, machinesList, { atOnce: true });
    const { machineId } = machines.find(({ name }) => name === 'Durvane 412 no. 2')!;
    const { points } = await told(ask, machineRead, { machineId });
    const { positionId } = points.find(({ position }) => position === 'Boom foot pin, left')!;
    const help = page.getByRole('region', { name: 'Help here' });
    const asks = async (question: string, answer: string) => {
      const mark = page
        .locator('.help-mark')
        .and(page.getByRole('button', { name: question }))
        .first();
      await mark.focus();
      await page.keyboard.press('Enter');
      await help.getByText(answer).waitFor();
      expect(await help.locator('details').count()).toBe(1);
      await page.keyboard.press('Escape');
      await help.waitFor({ state: 'detached' });
      expect(await mark.evaluate((box) => box === document.activeElement)).toBe(true);
    };
    await goTo(page, '/machines');
    await asks('Why is this number wide?', 'The range says how well it is known.');
    await expectAxeCleanByNight(page, 'machines');
    await goTo(page, `/machine/${machineId}`);
    await asks('Why is this number wide?', 'The range says how well it is known.');
    await asks('What are machine hours?', 'Hours the machine has worked since it was new.');
    await asks('What does “2 own readings, 14 like parts” mean?', 'How often this part was measured');
    await goTo(page, `/repair/${positionId}`);
    await asks('What is the clean-up bore?', 'The smallest round hole');
    await asks('How is it known how long a repair lasts?', 'The forecast is worked out again');
    await expectAxeCleanByNight(page, 'repair');
    await page.locator('.help-mark').first().click();
    await help.getByRole('button', { name: 'All that is asked here' }).click();
    await help.getByText('What is the wall left measured against?').waitFor();
    // it stands on the screen it was asked on, and on no other
    await goTo(page, '/forecast-settings');
    await help.waitFor({ state: 'detached' });
    await asks('What happens when I change a figure here?', 'Nothing until you have seen it');
  },
);
