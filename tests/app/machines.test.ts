import { expect } from 'vitest';
import { machinesList } from '#core/contract/machine.ts';
import { hoursLeftFigure } from '#core/words/quantityText.ts';
import { expectAxeClean } from './screens.ts';
import { windowTest } from './windowTest.ts';

windowTest('a manager opens the demo, sees every machine on one scale, and finds one by name', async ({ open }) => {
  const { page, ask } = await open({ asOf: '2026-11-02', demo: 'at hand' });
  const codeOf: string[] = [];
  page.on('request', (request) => codeOf.push(request.url().match(/assets\/(\w+)-.*\.js$/)?.[1] ?? ''));
  await page.getByRole('button', { name: /demo/i }).first().click();
  const grid = page.getByRole('grid', { name: 'Machines, soonest first' });
  await grid.waitFor({ timeout: 120_000 });
  const answer = await ask('machines/list', {});
  if (!answer.ok) expect.fail(JSON.stringify(answer.fault));
  const { machines } = machinesList.zReply.parse(answer.value);
  const groups = new Set(machines.map((line) => line.group));

  // heads, column heads and machines are counted for those who cannot see the list, only those in sight are drawn
  expect(await grid.getAttribute('aria-rowcount')).toBe(String(machines.length + groups.size + 1));
  expect(await grid.getByRole('row').count()).toBeLessThan(machines.length + groups.size + 1);

  // the finding that forbids use stands in place of the bar, and comes first
  const rows = page.locator('.machine-row');
  const first = machines.find((line) => line.group === 'do-not-use');
  expect(await rows.first().textContent()).toContain(first?.name);
  expect(await rows.first().textContent()).toContain('DO NOT USE');

  // the figures are those of the reply, the one that decides is the heavy one
  const line = machines.find((its) => its.group === 'may-be-passed' && its.first?.pastLimitMm === null);
  const row = rows.filter({ has: page.getByText(line?.name ?? '', { exact: true }) });
  const figures = await row.locator('.figure').allTextContents();
  const { low, middle, high } = line?.first?.hoursLeft ?? {};
  expect(figures.slice(0, 3)).toEqual([low, middle, high].map((hours) => hoursLeftFigure(hours ?? 0)));
  expect(await row.locator('.figure.deciding').textContent()).toBe(
    hoursLeftFigure(line?.first?.hoursLeft[line.first.decides] ?? 0),
  );
  expect(await row.getByRole('img').getAttribute('aria-label')).toMatch(/hours|passed/);

  // one scale: the line of now stands at one place in all rows
  const nows = await page
    .locator('.machine-row .l-now')
    .evaluateAll((lines) => lines.map((now) => Math.round(now.getBoundingClientRect().left)));
  expect(nows.length).toBeGreaterThan(8);
  expect(new Set(nows).size).toBe(1);

  // "/" and a few letters narrow the list, Enter opens what is left
  await page.keyboard.press('/');
  const wanted = machines.at(-3);
  await page.keyboard.type(wanted?.name ?? '');
  await page.getByRole('status').filter({ hasText: 'shown' }).waitFor();
  expect(await page.locator('.machine-row').first().textContent()).toContain(wanted?.name);
  await page.keyboard.press('Enter');
  await page.getByRole('heading', { level: 1, name: wanted?.name ?? '' }).waitFor({ timeout: 120_000 });

  // coming back the list stands where it was; arrows move, Enter opens
  await page.goBack();
  await grid.waitFor();
  expect(await page.locator('.machine-row[aria-selected="true"]').textContent()).toContain(wanted?.name);
  await page.keyboard.press('Home');
  await page.keyboard.press('ArrowDown');
  const second = await page.locator('.machine-row[aria-selected="true"] .machine-name').textContent();
  expect(await page.locator('.machine-row').nth(1).textContent()).toContain(second);
  expect(await grid.getAttribute('aria-activedescendant')).toBe(
    await page.locator('.machine-row[aria-selected="true"]').getAttribute('id'),
  );

  // a name nobody has: what was looked through, and the way back
  await page.keyboard.press('/');
  await page.keyboard.type('nobody of this name');
  await page.getByText('Names, farms, places, makes and serials were looked through.', { exact: false }).waitFor();
  await page.keyboard.press('Escape');
  await page.locator('.machine-row').first().waitFor();

  // hands are still: the code of the strip-down, nowhere opened, comes by itself (when, is fetchNext.test.ts's)
  await expect.poll(() => codeOf).toContain('StripDown');
});

windowTest('an empty record says what to do first', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: '2026-11-02' });
  await ask('record/startEmpty', {});
  await show();
  await page.getByRole('heading', { name: 'No machine on record yet' }).waitFor();
  await expectAxeClean(page);
  await page.keyboard.press('n');
  await page.waitForFunction(() => window.location.hash.endsWith('/take-in'));
});
