import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';
import { machinesOrder } from '#core/contract/machine.ts';
import { BENCH_AS_OF } from '#tests/bench/syntheticRecord.ts';
import { layLargeShop } from '#tests/support/aLargeShop.ts';
import { expectAxeCleanByNight, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

/** So many that forecasting them is not over before it is cancelled. */
const MACHINES = 350;
/** Learning and forecasting step back for everything else a busy computer does. */
const BUSY_MS = 250_000;

windowTest(
  'a long list opens at once, is forecast beside it, can be cancelled, and scrolls page by page',
  async ({ open }) => {
    const folder = mkdtempSync(join(tmpdir(), 'long-list-'));
    try {
      const recordPath = join(folder, 'shop.hoursandwear');
      layLargeShop(recordPath, MACHINES);
      const { page, ask } = await open({ recordPath, dataFolder: folder, asOf: BENCH_AS_OF });
      const asked: string[] = [];
      page.on('request', (request) => asked.push(request.url().split('/op/')[1] ?? ''));

      // never learned from: machines are there by name, and can be opened
      const grid = page.getByRole('grid', { name: 'Machines, soonest first' });
      await grid.waitFor();
      await page.getByText('Machines can be opened meanwhile', { exact: false }).waitFor();
      expect(await page.locator('.machine-row').first().textContent()).toContain('Bench 1');

      // then forecast beside it; C breaks that off, F begins it again where it was
      await page.getByText('Forecasting again beside your work', { exact: false }).waitFor({ timeout: BUSY_MS });
      await page.keyboard.press('c');
      await page.getByText('Forecasting was cancelled', { exact: false }).waitFor();
      const heldOff = await told(ask, machinesOrder, { atOnce: true });
      expect(heldOff).toMatchObject({ heldOff: { fault: null }, forecasting: null });
      expect(heldOff.older).toBeGreaterThan(0);
      await expectAxeCleanByNight(page);
      await page.keyboard.press('f');
      await page.locator('.list-beside').waitFor({ state: 'detached', timeout: BUSY_MS });

      // only lines in sight were asked for, and End, the page keys and Home bring the others
      const { groups } = await told(ask, machinesOrder, { atOnce: true });
      const inOrder = groups.flatMap(({ machineIds }) => machineIds);
      expect(inOrder).toHaveLength(MACHINES);
      expect(asked).not.toContain('machines/list');
      const chosen = page.locator('.machine-row[aria-selected="true"] .machine-name');
      await page.keyboard.press('End');
      await expectName(inOrder.at(-1));
      await page.keyboard.press('ArrowUp');
      await expectName(inOrder.at(-2));
      await page.keyboard.press('Home');
      await expectName(inOrder[0]);

      // Enter opens what was typed, however fast
      await page.keyboard.press('/');
      await page.keyboard.type('bench 118');
      await page.keyboard.press('Enter');
      await page.getByRole('heading', { level: 1, name: 'Bench 118' }).waitFor();

      async function expectName(machineId: number | undefined): Promise<void> {
        await chosen.filter({ hasText: `Bench ${machineId}` }).waitFor();
      }
    } finally {
      rmSync(folder, { recursive: true, force: true });
    }
  },
);
