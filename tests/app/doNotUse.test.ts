import { expect } from 'vitest';
import { machineRead } from '#core/contract/machine.ts';
import { slipMake, slipPreview } from '#core/contract/slip.ts';
import { findingAdd, findingClose } from '#core/contract/stripDown.ts';
import { expectAxeClean, goTo, SMALL_SHOP, smallShop, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

const AS_OF = '2025-11-09';

windowTest(
  'an open do-not-use finding dominates every screen and slip of its machine, till it is closed',
  async ({ prepare }) => {
    const { page, ask, show } = await prepare({ asOf: AS_OF, width: 1280, height: 800 });
    const { machineId } = await smallShop(ask);
    const { slipId } = await told(ask, slipMake, { machineId, by: 'Ines' });
    const { points, stripDowns } = await told(ask, machineRead, { machineId });
    const { assemblyId, positionId } = points[3]!;
    const crack = { assemblyId, positionId, kind: 'crack' as const, severity: 'do-not-use' as const };
    const seen = { ...crack, note: 'through the weld', takenOn: '2025-11-08', by: 'Ines' };
    const { findingId } = await told(ask, findingAdd, seen);
    await show();
    await goTo(page, '/machines');
    const stops = page.getByText(/do not use/i);
    const found = page.getByText(/crack, through the weld\. Found 8 Nov 2025/);

    // screens of the machine: under the head, with what was found
    const screens = [
      `/machine/${machineId}`,
      `/strip-down/${machineId}`,
      `/slip/${machineId}`,
      `/slips/${slipId}`,
      `/measuring-sheet/${machineId}`,
      `/old-sheets/sheet/${stripDowns[0]!.stripDownId}`,
      `/take-in/${machineId}`,
    ];
    for (const address of screens) {
      await goTo(page, address);
      await page.locator('.stop-banner').waitFor();
      await found.first().waitFor();
      expect(
        await page
          .locator('.stop-banner')
          .boundingBox()
          .then((box) => (box?.y ?? 999) < 200),
      ).toBe(true);
    }
    await expectAxeClean(page);

    // lists in which it stands among others: beside its name
    for (const address of ['/machines', '/slips', '/history']) {
      await goTo(page, address);
      await stops.first().waitFor();
      await expectAxeClean(page);
    }
    await goTo(page, '/customers');
    await page.getByRole('button', { name: `Open ${SMALL_SHOP.customer}` }).click();
    await stops.first().waitFor();
    await page.keyboard.press('/');
    await page.keyboard.type('tarrow');
    await page.getByRole('option', { name: SMALL_SHOP.machine }).getByText('DO NOT USE').waitFor();
    await page.keyboard.press('Escape');

    // the strip of hours, over whatever stands there
    await goTo(page, `/machine/${machineId}`);
    await page.keyboard.press('h');
    await page.locator('.hours-strip .stop-banner').waitFor();
    await page.keyboard.press('Escape');

    // an old slip says that it was made before; the paper of today leads with it
    await goTo(page, `/slips/${slipId}`);
    await page.getByText(/This slip was made before/).waitFor();
    const { slip } = await told(ask, slipPreview, { machineId });
    expect([slip.headline.kind, slip.axis]).toEqual(['do-not-use', null]);

    // the desk for old paper, once the machine is chosen
    await goTo(page, '/old-sheets');
    await page.getByRole('combobox', { name: 'Machine', exact: true }).focus();
    await page.keyboard.type('tarrow');
    await page.getByRole('option', { name: new RegExp(SMALL_SHOP.machine) }).click();
    await page.locator('.stop-banner').waitFor();

    await told(ask, findingClose, { findingId, closedOn: AS_OF, outcome: 'welded', by: 'Ines' });
    await page.reload();
    for (const address of [...screens, '/machines', '/history']) {
      await goTo(page, address);
      expect(await page.locator('.stop-banner').count()).toBe(0);
    }
  },
);
