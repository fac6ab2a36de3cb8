import { readFileSync } from 'node:fs';
import { createRequire } from 'node:module';
import { AxeBuilder } from '@axe-core/playwright';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { hoursAdd } from '#core/contract/hours.ts';
import { machinesList, machineTakeIn } from '#core/contract/machine.ts';
import type { AskOf, Operation, ReplyOf } from '#core/contract/operation.ts';
import { recordOpen, recordStartEmpty, recordState } from '#core/contract/record.ts';
import { shopRead, shopSave } from '#core/contract/shop.ts';
import { stripDownSave, stripDownSheet } from '#core/contract/stripDown.ts';
import type { OpenProgram } from '#core/shells/openProgram.ts';
import { forecastCoarselyAt } from '#tests/support/coarseForecasts.ts';
import { laidOnce } from '#tests/support/laidOnce.ts';
import { atRest } from './steadyPage.ts';
import { recordPathOf } from './windowTest.ts';

/** Goes to a screen by its address and waits until its sheet stands: not that of the screen before, which has one too. */
export async function goTo(page: Page, address: string): Promise<void> {
  await leaveFor(page, address);
  await page.locator('main.sheet h1').first().waitFor();
}

/** The same for an address where no sheet with a title may come to stand. */
export async function leaveFor(page: Page, address: string): Promise<void> {
  await page.evaluate((to) => {
    window.location.hash = to;
  }, address);
  await atRest(page);
}

/** Nothing on the screen that axe knows a rule against. */
export async function expectAxeClean(page: Page, at = '', leftOut: string[] = []): Promise<void> {
  expectNone(await (await axeAt(page)).disableRules(leftOut).analyze(), at);
}

/** axe as its builder finds it, less than half as long to hand over and to read: the builder hands it over twice, with every comment. */
const besideBuilder = createRequire(createRequire(import.meta.url).resolve('@axe-core/playwright'));
const axeSource = readFileSync(besideBuilder.resolve('axe-core/axe.min.js'), 'utf8');

/**
 * axe for a window at rest. It runs in the page itself, which has no frame of another origin, is read in once for each
 * page, and tells of violations only: what passes is not written out, which would take three times as long.
 */
async function axeAt(page: Page): Promise<AxeBuilder> {
  await atRest(page);
  if (!(await page.evaluate(() => 'axe' in window))) await page.evaluate(axeSource);
  return new AxeBuilder({ page, axeSource: ';' }).setLegacyMode(true).options({ resultTypes: ['violations'] });
}

type Found = { violations: { id: string; nodes: { html: string }[] }[] };
function expectNone({ violations }: Found, at: string): void {
  const told = violations.map(({ id, nodes }) => `${id}: ${nodes.map(({ html }) => html.slice(0, 160)).join(' | ')}`);
  expect(told, at).toEqual([]);
}

/** The same by day and by night: what is no matter of colour is the same in both. */
export async function expectAxeCleanDayAndNight(page: Page, at = ''): Promise<void> {
  await page.emulateMedia({ colorScheme: 'light' });
  await expectAxeClean(page, `${at} by day`);
  await page.emulateMedia({ colorScheme: 'dark' });
  expectNone(await (await axeAt(page)).withRules(['color-contrast']).analyze(), `${at} by night`);
  await page.emulateMedia({ colorScheme: 'light' });
}

/**
 * The same by night alone: for what opens on a screen, which by itself is looked at by day and by night in everyScreen.test.ts.
 */
export async function expectAxeCleanByNight(page: Page, at = ''): Promise<void> {
  await page.emulateMedia({ colorScheme: 'dark' });
  await expectAxeClean(page, `${at} by night`);
  await page.emulateMedia({ colorScheme: 'light' });
}

/** What the program answers past the window; a refusal fails the test. */
export async function told<O extends Operation>(
  ask: OpenProgram['ask'],
  operation: O,
  request: AskOf<O>,
): Promise<ReplyOf<O>> {
  const answer = await ask(operation.name, request);
  if (!answer.ok) throw new Error(`${operation.name} refused: ${JSON.stringify(answer.fault)}`);
  return answer.value as ReplyOf<O>;
}

export const SMALL_SHOP = {
  machine: 'Tarrow 90',
  customer: 'Under Crag',
  /** last reading of its meter */
  dialHours: 5600,
  /** sizes of its first strip as last found: front, middle, rear */
  strip: [10.2, 10.6, 10.4],
} as const;

/** The same in a shop that writes its lengths in inches. */
export async function inchShop(ask: OpenProgram['ask']): Promise<{ machineId: number }> {
  const made = await smallShop(ask);
  const { settings } = await told(ask, shopRead, {});
  await told(ask, shopSave, { ...settings, lengths: 'inch' });
  return made;
}

/** A new shop with nothing in it, for a window that has yet to show. */
export async function emptyShop(ask: OpenProgram['ask']): Promise<void> {
  const { today } = await told(ask, recordState, {});
  const open = (path: string) => told(ask, recordOpen, { path });
  await laidOnce({ recordPath: recordPathOf(ask), today, open }, 'an empty shop', async () => {
    await told(ask, recordStartEmpty, {});
    forecastCoarselyAt(recordPathOf(ask));
  });
}

/** One machine with a hitch, read and measured once, its classes learned: enough to type into, and no learning to wait for. */
export async function smallShop(ask: OpenProgram['ask']): Promise<{ machineId: number }> {
  const { today } = await told(ask, recordState, {});
  const open = (path: string) => told(ask, recordOpen, { path });
  return laidOnce({ recordPath: recordPathOf(ask), today, open }, 'a small shop', async () => {
    const made = await laySmallShop(ask);
    await told(ask, machinesList, {}); // waits for what the classes teach, and keeps it
    return made;
  });
}

async function laySmallShop(ask: OpenProgram['ask']): Promise<{ machineId: number }> {
  await told(ask, recordStartEmpty, {});
  forecastCoarselyAt(recordPathOf(ask));
  const { kinds } = await told(ask, shopRead, {});
  const kind = kinds.find(({ name }) => name === 'Telescopic pick-up hitch');
  if (!kind) throw new Error('a new record has the hitch among its kinds');
  const { machineId } = await told(ask, machineTakeIn, {
    customerId: null,
    customer: { name: SMALL_SHOP.customer, place: 'Crag Foot', address: '', phone: '', email: '' },
    machine: {
      name: SMALL_SHOP.machine,
      make: '',
      model: '',
      serial: 'AX-2207',
      builtYear: 2016,
      note: '',
      meterDigits: 5,
      hoursBefore: null,
      workShare: 1,
    },
    dial: { takenOn: '2024-11-04', dialHours: 5000, estimate: false, saidBy: 'Ines' },
    assemblies: [
      { kind: kind.name, name: 'Pick-up hitch', serial: '', fittedMachineHours: 0, positions: kind.positions },
    ],
  });
  const { rows } = await told(ask, stripDownSheet, { machineId });
  const sizes = rows.slice(0, 2).flatMap(({ pointId, stations, gaugeId }) =>
    stations.map(({ station }, i) => ({
      pointId,
      station,
      event: 'as-found' as const,
      sizeMm: SMALL_SHOP.strip[i] ?? 10,
      gaugeId,
      answer: null,
    })),
  );
  await told(ask, stripDownSave, {
    machineId,
    takenOn: '2025-01-10',
    dialHours: 5100,
    fitter: 'Ines',
    note: '',
    sizes,
    renewals: [],
    findings: [],
    dialSure: false,
  });
  const { dialHours } = SMALL_SHOP;
  await told(ask, hoursAdd, {
    machineId,
    takenOn: '2025-11-03',
    kind: 'reading',
    dialHours,
    newDialHours: null,
    errorHours: null,
    saidBy: 'Ines',
    sure: true,
  });
  return { machineId };
}
