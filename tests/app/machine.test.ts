import { expect } from 'vitest';
import type { MachineSheet, PointSheet } from '#core/contract/machine.ts';
import { machineRead, machinesList } from '#core/contract/machine.ts';
import { hoursLeftFigure, sizeFigure } from '#core/words/quantityText.ts';
import { expectAxeClean, goTo, leaveFor } from './screens.ts';
import { windowTest } from './windowTest.ts';

type Ask = (name: string, request: unknown) => Promise<{ ok: boolean; value?: unknown; fault?: unknown }>;

async function sheetOf(ask: Ask, machineId: number): Promise<MachineSheet> {
  const answer = await ask('machine/read', { machineId });
  if (!answer.ok) expect.fail(JSON.stringify(answer.fault));
  return machineRead.zReply.parse(answer.value);
}

/** Rows as they stand: assembly by assembly, by item number. */
const inOrder = ({ assemblies, points }: MachineSheet): PointSheet[] =>
  assemblies.flatMap(({ assemblyId }) =>
    points.filter((point) => point.assemblyId === assemblyId).sort((a, b) => a.item - b.item),
  );

windowTest(
  'a machine’s page says what the operation says, point by point, and why',
  async ({ open }) => {
    const { page, ask } = await open({ asOf: '2026-11-02', demo: 'open', width: 1280, height: 800 });
    const list = await ask('machines/list', {});
    if (!list.ok) expect.fail(JSON.stringify(list.fault));
    const { machines } = machinesList.zReply.parse(list.value);
    const line = machines.find((its) => its.assemblies.includes('Front loader') && its.group !== 'do-not-use');
    const sheet = await sheetOf(ask, line?.machineId ?? 0);
    const points = inOrder(sheet);
    await goTo(page, `/machine/${sheet.machineId}`);
    await page.getByRole('heading', { level: 1, name: sheet.name }).waitFor({ timeout: 120_000 });

    // every point its row, every row its figures
    const rows = page.getByRole('option');
    expect(await rows.count()).toBe(points.length);
    for (const [i, point] of points.entries()) {
      const text = (await rows.nth(i).textContent()) ?? '';
      expect(text).toContain(point.position);
      const { low, middle } = point.forecast.hoursLeft;
      if (point.forecast.pastLimitMm === null && low !== null && middle !== null) {
        expect(text).toContain(hoursLeftFigure(low));
        expect(text).toContain(hoursLeftFigure(middle));
      }
      expect(text).toContain(`${point.forecast.ownReadings} own reading`.replace(/^0 own/, 'no own'));
    }

    // an item number leads to its position; its sizes stand as text under the picture
    const alone = (point: PointSheet) => points.filter((other) => other.item === point.item).length === 1;
    const measured = points.find((point) => point.visits.length >= 2 && alone(point));
    if (!measured) expect.fail('the demo has a loader with a position measured twice');
    await page.keyboard.type(String(measured.item));
    await page.locator('[role="option"][aria-selected="true"]').filter({ hasText: measured.position }).waitFor();
    await page.keyboard.press('Enter');
    const sizes = page.getByRole('tabpanel').locator('.sizes-table');
    await sizes.waitFor();
    for (const visit of measured.visits) {
      if (visit.governingSizeMm === null || visit.stations.length === 0) continue;
      expect(await sizes.locator('.size-key.governs').allTextContents()).toContain(sizeFigure(visit.governingSizeMm));
    }

    // the chart stands on the rule's own hours: a reading's dot under the same dot of its row
    const inRow = await page
      .locator('[role="option"][aria-selected="true"] .row-marks .dot')
      .evaluateAll((dots) =>
        dots.map((dot) => dot.getBoundingClientRect()).map((box) => Math.round(box.left + box.width / 2)),
      );
    const inChart = await page
      .locator('.wear-labels .dot:not(.open)')
      .evaluateAll((dots) =>
        dots.map((dot) => dot.getBoundingClientRect()).map((box) => Math.round(box.left + box.width / 2)),
      );
    expect(inRow.length).toBeGreaterThan(0);
    for (const x of inRow) expect(inChart.some((other) => Math.abs(other - x) <= 1)).toBe(true);

    // why this number: a sentence for each step, and what the range would be without each source, the narrowest first
    await page.keyboard.press('w');
    const steps = page.locator('.why-steps dt');
    await steps.first().waitFor({ timeout: 120_000 });
    expect(await steps.allTextContents()).toEqual(
      expect.arrayContaining(['Its own sizes', 'Its hours', 'To its limit']),
    );
    const left = (await page.locator('.why-width .share').allTextContents()).map((text) =>
      Number(text.replace(/\D/g, '')),
    );
    expect(left.every((hours) => hours > 0)).toBe(true);
    expect(left).toEqual([...left].sort((a, b) => a - b));

    // along the tabs by arrows, round their end; from them into the panel
    const tab = page.getByRole('tab', { selected: true });
    await page.getByRole('tab', { name: 'Owners' }).click();
    for (const [key, name] of [
      ['ArrowRight', 'Sizes'],
      ['ArrowLeft', 'Owners'],
      ['Home', 'Sizes'],
      ['ArrowRight', 'Limits'],
    ] as const) {
      await page.keyboard.press(key);
      expect(await tab.textContent()).toBe(name);
      expect(await tab.evaluate((its) => its === document.activeElement)).toBe(true);
    }
    await page.keyboard.press('Tab');
    const panel = page.getByRole('tabpanel', { name: 'Limits' });
    expect(await panel.evaluate((its) => its.contains(document.activeElement))).toBe(true);

    for (const tab of ['Sizes', 'Limits', 'Why this number', 'Hours', 'Findings', 'Visits and slips']) {
      await page.getByRole('tab', { name: new RegExp(`^${tab}`) }).click();
      await expectAxeClean(page, tab);
    }
  },
  { timeoutMs: 400_000 },
);

windowTest(
  'a wrong size is put right from the machine’s page: the old one stays in sight, the forecast moves',
  async ({ open }) => {
    const { page, ask } = await open({ asOf: '2026-11-02', demo: 'open', width: 1280, height: 800 });
    const machineId = 1;
    const before = await sheetOf(ask, machineId);
    const point = inOrder(before).find((its) => its.visits.length >= 2 && its.forecast.hoursLeft.middle !== null);
    if (!point) expect.fail('the demo’s first machine has a point measured twice');
    const last = point.visits.at(-1);
    const size = last?.stations.find((station) => station.governs);
    if (!last || !size) expect.fail('its last visit has a size that governs');
    await goTo(page, `/machine/${machineId}`);
    await page.getByRole('heading', { level: 1, name: before.name }).waitFor({ timeout: 120_000 });
    await page.keyboard.type(String(point.item));
    await page.keyboard.press('Enter');
    const spoken = sizeFigure(size.sizeMm);
    await page.locator('.size-key.governs').first().click();
    const right = size.sizeMm + (point.wears === 'down' ? -0.05 : 0.05);
    await page.getByLabel('Right size').fill(right.toFixed(2).replace('.', ','));
    await page.getByLabel('Why', { exact: true }).fill('vernier misread');
    await page.keyboard.press('Enter');
    await page.locator('.sizes-table s', { hasText: spoken }).waitFor({ timeout: 120_000 });
    const after = await sheetOf(ask, machineId);
    const moved = after.points.find((its) => its.pointId === point.pointId);
    expect(moved?.putRight.map((old) => old.sizeMm)).toEqual([size.sizeMm]);
    expect(moved?.forecast.hoursLeft.middle).toBeLessThan(point.forecast.hoursLeft.middle ?? 0);
    const row = page.locator('[role="option"][aria-selected="true"]');
    expect(await row.textContent()).toContain(hoursLeftFigure(moved?.forecast.hoursLeft.middle ?? 0));
  },
  { timeoutMs: 400_000 },
);

windowTest('a finding that forbids use stays over the page, and an address of no machine says so', async ({ open }) => {
  const { page, ask } = await open({ asOf: '2026-11-02', demo: 'open' });
  const list = await ask('machines/list', {});
  if (!list.ok) expect.fail(JSON.stringify(list.fault));
  const stopped = machinesList.zReply.parse(list.value).machines.find((line) => line.group === 'do-not-use');
  await goTo(page, `/machine/${stopped?.machineId}`);
  const banner = page.locator('.stop-banner');
  await banner.waitFor({ timeout: 120_000 });
  expect(await banner.textContent()).toContain('DO NOT USE');
  // the machine's other points keep their bars
  expect(
    await page.locator('.row-marks .bar-part, .row-marks .bar-own, .row-marks .bar-borrowed').count(),
  ).toBeGreaterThan(2);
  await leaveFor(page, '/machine/999999');
  await page.getByRole('alert').waitFor();
  await page.getByRole('button', { name: 'To the machines' }).click();
  await page.getByRole('grid').waitFor();
});
