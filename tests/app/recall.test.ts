import { readFileSync } from 'node:fs';
import ICAL from 'ical.js';
import type { Page } from 'playwright-core';
import { expect } from 'vitest';
import { contactTermsSave, phoneRead, recallRead } from '#core/contract/recall.ts';
import { findingAdd, stripDownSheet } from '#core/contract/stripDown.ts';
import { filesOfZip } from '#core/exchange/zipFiles.ts';
import { pdfPages } from '#tests/support/pdfText.ts';
import { expectAxeClean, goTo, SMALL_SHOP, smallShop, told } from './screens.ts';
import { windowTest } from './windowTest.ts';

const TODAY = '2025-11-10';

/** What a press gives to be kept, as bytes and its name. */
async function downloaded(page: Page, press: () => Promise<void>): Promise<{ name: string; bytes: Uint8Array }> {
  const [download] = await Promise.all([page.waitForEvent('download'), press()]);
  return { name: download.suggestedFilename(), bytes: readFileSync(await download.path()) };
}

windowTest('from the list by slip, mail and message to the answer, and off the list', async ({ prepare }) => {
  const { page, ask, show } = await prepare({ asOf: TODAY, width: 1280, height: 900 });
  const { machineId } = await smallShop(ask);
  await told(ask, recallRead, {});
  await show();
  await goTo(page, '/recall');
  const { machine, customer } = SMALL_SHOP;
  const row = page.getByRole('row').filter({ hasText: machine });
  await row.getByText(/deciding hours/).waitFor();
  expect(await row.textContent()).toContain(customer);
  await expectAxeClean(page);

  // one press: the slip, made, numbered and in the downloads
  await page.keyboard.press('Enter');
  await page.getByText('To read aloud').waitFor();
  const slip = await downloaded(page, () => page.keyboard.press('s'));
  expect(slip.name).toMatch(/^forecast-slip-2025-001-/);
  const [paper] = await pdfPages(slip.bytes);
  expect(paper!.text).toContain(customer);

  // the mail hands over to the mail program, the message is short, the words for the telephone stand there
  await page.keyboard.press('e');
  const mail = page.getByRole('link', { name: 'Open in the mail program' });
  const address = new URL((await mail.getAttribute('href')) ?? '');
  expect(address.protocol).toBe('mailto:');
  expect(address.searchParams.get('body')).toContain(machine);
  await page.keyboard.press('p');
  await page.getByText('What does the meter show today?').waitFor();
  await page.keyboard.press('m');
  const message = (await page.locator('.letter-text pre').textContent()) ?? '';
  expect(message.length).toBeLessThan(160);
  expect(message).toContain(machine);
  await expectAxeClean(page);

  // sent: it waits for an answer
  await page.keyboard.press('y');
  await page.getByRole('status').filter({ hasText: 'Noted.' }).waitFor();
  await page.getByText('Sent, no answer yet').waitFor();
  await page.getByText('sent 10 Nov 2025', { exact: true }).waitFor();
  // taken back it is as before, and noted once more
  await page.keyboard.press('u');
  await page.getByText('Taken back: it counts no more, and stays in the record.').waitFor();
  await page.getByText('To contact, in this order').waitFor();

  // the answer takes it off the list
  await page.getByRole('button', { name: `Open ${machine}` }).click();
  await page.getByText('To read aloud').waitFor();
  await page.keyboard.press('a');
  await page.getByRole('radiogroup', { name: 'Answer' }).getByText('booked', { exact: true }).click();
  await page.getByLabel('Comes in on').fill('8.12.2025');
  await page.getByLabel('Spoken with').fill('The son');
  await page.getByRole('button', { name: 'Note it' }).click();
  await page.getByText('booked, up to 8 Dec 2025').waitFor();
  const list = await told(ask, recallRead, {});
  expect(list).toMatchObject({ toContact: [], waiting: [] });
  expect(list.held[0]!.machines[0]!.lastContact).toMatchObject({ answer: 'booked', saidBy: 'The son' });

  // the visit and the due date are in the calendar file, as another program reads it
  const calendar = await downloaded(page, () => page.keyboard.press('k'));
  const events = new ICAL.Component(ICAL.parse(Buffer.from(calendar.bytes).toString())).getAllSubcomponents('vevent');
  const days = events.map((event) => String(event.getFirstPropertyValue('dtstart')));
  expect(days[0]).toBe('2025-12-08');
  expect(events).toHaveLength(2);

  // a crack found since brings it back, first and struck
  const { rows } = await told(ask, stripDownSheet, { machineId });
  const hook = rows.find(({ safety }) => safety)!;
  await told(ask, findingAdd, {
    ...{ assemblyId: hook.assemblyId, positionId: hook.positionId, kind: 'crack', severity: 'do-not-use' },
    ...{ note: '', photoIds: [], takenOn: TODAY, by: 'Ines' },
  });
  // told when the window opens again, in the window itself where the desktop shows no notices
  await goTo(page, '/machines');
  await page.reload();
  await page.getByRole('heading', { name: '1 machine became due since 10 Nov 2025' }).waitFor();
  await expectAxeClean(page);
  await page.getByRole('button', { name: 'To the recall list' }).click();
  await page.getByText('To contact, in this order').waitFor();
  await row.getByText('DO NOT USE').first().waitFor();
  await expectAxeClean(page);
  await page.emulateMedia({ colorScheme: 'dark' });
  await expectAxeClean(page);

  // all slips at once: laid out beside the program, as one PDF and as files
  await page.keyboard.press('b');
  await page.getByLabel('Made by').fill('Ines');
  await page.getByRole('button', { name: 'Make the slips' }).click();
  await page.getByText('1 slip is made.').waitFor();
  const all = await downloaded(page, () => page.getByRole('button', { name: 'Save as one PDF' }).click());
  const pages = await pdfPages(all.bytes);
  expect(pages).toHaveLength(1);
  expect(pages[0]!.text).toContain('DO NOT USE');
  const each = await downloaded(page, () => page.getByRole('button', { name: 'Save as separate files' }).click());
  const zip = filesOfZip(each.bytes);
  expect(zip.ok && zip.value).toHaveLength(1);

  // who asked not to be contacted is in no list
  const { farm } = (await told(ask, recallRead, {})).waiting[0]!;
  await told(ask, contactTermsSave, { customerId: farm.customerId, ...farm.terms, noContact: true, by: '' });
  await page.reload();
  await page.getByText('1 farm asked not to be contacted and is in no list.').waitFor();
  expect(await page.getByRole('row').count()).toBe(0);
});

windowTest(
  'a farmer rings: found, the dial entered while he talks, the answer, and when to ring back',
  async ({ prepare }) => {
    const { page, ask, show } = await prepare({ asOf: TODAY, width: 1280, height: 800 });
    await smallShop(ask);
    await show();
    await page.getByRole('heading', { level: 1 }).first().waitFor();
    const { machine, customer } = SMALL_SHOP;

    // from anywhere by its key; a part of the plate's number is enough
    await page.keyboard.press('v');
    await page.getByLabel('Who rings').waitFor();
    await page.keyboard.type('no such farm');
    await page.getByText('Nobody with “no such farm”.').waitFor();
    await page.getByLabel('Who rings').fill('x-22');
    await page.getByRole('button', { name: customer }).waitFor();
    await expectAxeClean(page);
    await page.keyboard.press('Enter');
    await page.getByRole('heading', { level: 1, name: customer }).waitFor();
    const sentence = page.locator('.spoken');
    await sentence.waitFor();
    const left = async () => (await told(ask, phoneRead, { customerId: 1 })).machines[0]!.comeInBy!.decidingHoursLeft;
    const before = await left();
    await expectAxeClean(page);

    // the dial while he talks: odd at first, and asked about
    await page.keyboard.press('d');
    const strip = page.getByRole('region', { name: 'Hours' });
    await strip.getByLabel('Dial shows').fill('5500');
    await page.keyboard.press('Enter');
    await strip.getByRole('button', { name: /typed/i }).click();
    await strip.getByLabel('Dial shows').fill('6050');
    await page.keyboard.press('Enter');
    const keep = strip.getByRole('button', { name: /right/i });
    await strip
      .getByText(/kept, 6.050 machine hours/)
      .or(keep)
      .first()
      .waitFor();
    if (await keep.isVisible()) await keep.click();
    await strip.getByText(/kept, 6.050 machine hours/).waitFor();
    await page.keyboard.press('Escape');
    expect(await left()).toBeLessThan(before);

    // the call and the day to ring back
    await page.keyboard.press('a');
    await page.getByLabel('Ring back on').fill('1.12.2025');
    await page.getByLabel('Spoken with').fill('Mrs Tarn');
    await page.getByLabel('Note', { exact: true }).fill('Wants it before lambing.');
    await page.getByRole('button', { name: 'Note it' }).click();
    await page.getByText('10 Nov 2025, on the telephone with Mrs Tarn; ring back 1 Dec 2025').waitFor();

    // how far it is, and a quiet period
    await page.keyboard.press('r');
    await page.getByLabel('By road, one way').fill('12,5');
    await page.getByLabel('Their season ends').fill('15.10.');
    await page.getByLabel('From', { exact: true }).fill('1.3.2026');
    await page.getByLabel('To', { exact: true }).fill('20.3.2026');
    await page.getByRole('button', { name: 'Add a quiet period' }).click();
    await page.getByText('1 Mar 2026 to 20 Mar 2026').waitFor();
    await page.getByRole('button', { name: 'Save', exact: true }).click();
    await page.getByText('13 km').waitFor();
    const { farm, contacts } = await told(ask, phoneRead, { customerId: 1 });
    expect(farm).toMatchObject({ terms: { distanceKm: 12.5, seasonTo: '10-15' }, quiet: [{ fromOn: '2026-03-01' }] });
    expect(contacts[0]).toMatchObject({ callBackOn: '2025-12-01', machine });
    await page.emulateMedia({ colorScheme: 'dark' });
    await expectAxeClean(page);

    // struck, it is gone from the sheet, not from the record
    await page.getByRole('button', { name: /^Strike: 10 Nov 2025/ }).click();
    await page.getByLabel('Why it never was').fill('another farm');
    await page.getByRole('button', { name: 'Strike it' }).click();
    await page.getByText('Nothing yet.').waitFor();
  },
);
