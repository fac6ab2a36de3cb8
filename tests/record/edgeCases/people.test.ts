import { afterEach, beforeEach, expect, test } from 'vitest';
import { customerExport, customersSheet, machineSellOn, ownerPutRight } from '#core/contract/customer.ts';
import { entriesList } from '#core/contract/entries.ts';
import { forecastAll } from '#core/contract/forecast.ts';
import { machinesList } from '#core/contract/machine.ts';
import { slipMake, slipPreview, slipRead } from '#core/contract/slip.ts';
import { findingAdd, findingDecline, findingStrikeDecline, stripDownSave } from '#core/contract/stripDown.ts';
import { filesOfZip } from '#core/exchange/zipFiles.ts';
import { orRefuse } from '#core/outcome.ts';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import { aShopWithAHitch, aSize } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';
import { pdfPages } from '#tests/support/pdfText.ts';

/** Cases of the trade in which people are the awkward part, through the real record and its one door. */
let program: Program;
let shop: Awaited<ReturnType<typeof aShopWithAHitch>>;
beforeEach(async () => {
  program = aProgram();
  shop = await aShopWithAHitch(program);
  const draft = { ...shop.draft('2026-05-01', 3000), dialSure: false };
  const sizes = [aSize(shop.strip.pointId, 10.8, 'front'), aSize(shop.pin.pointId, 29.6)];
  await program.ask(stripDownSave, { ...draft, sizes });
});
afterEach(() => program.end());

/** A PDF's words in one run, whatever its line breaks. */
const textOf = async (paper: { pdfBase64: string }) =>
  (await pdfPages(Buffer.from(paper.pdfBase64, 'base64')))
    .map(({ text }) => text)
    .join(' ')
    .replace(/\s+/g, ' ');

test('18 customer refuses a safety repair: said in their own words, printed, the rest still forecast, the flag stays', async () => {
  const { assemblyId, positionId } = shop.pin;
  const crack = { assemblyId, positionId, kind: 'crack' as const, severity: 'do-not-use' as const };
  const seen = { ...crack, note: 'across the pin', takenOn: '2026-05-01', by: 'Bo' };
  const { findingId } = await program.ask(findingAdd, seen);
  const said = { saidOn: '2026-05-03', saidBy: 'T. Overton', words: 'It has held so far, it can hold till spring.' };
  await program.ask(findingDecline, { findingId, ...said, by: 'Bo' });

  // recorded, and nothing of the finding softened
  const { findings } = await shop.sheet();
  expect(findings).toMatchObject([{ severity: 'do-not-use', closedOn: null, declined: said, declines: [said] }]);
  const { machines } = await program.ask(machinesList, {});
  expect(machines).toMatchObject([{ group: 'do-not-use', openFindings: [{ declined: said }] }]);

  // printed in full where the farmer reads first, and kept on the slip as made
  const printed = await textOf(await program.ask(slipPreview, { machineId: shop.machineId }));
  expect(printed).toContain('DO NOT USE');
  expect(printed).toContain(`Repair refused by T. Overton on 3 May 2026: “${said.words}”`);
  const { slipId } = await program.ask(slipMake, { machineId: shop.machineId, by: 'Bo' });
  expect((await program.ask(slipRead, { slipId })).slip.headline).toMatchObject({
    kind: 'do-not-use',
    declined: said,
  });

  // the position itself has no forecast, the machine's other points keep theirs, marked
  const { rows } = await program.ask(forecastAll, {});
  const pin = rows.find(({ position }) => position === shop.pin.position)!;
  const strip = rows.find(({ position }) => position === shop.strip.position)!;
  expect(pin.hoursLeft.middle).toBeNull();
  expect(pin.openFindings).toMatchObject([{ severity: 'do-not-use' }]);
  expect(strip.hoursLeft.middle).toEqual(expect.any(Number));
  expect(strip.cautions).toContain('machine-has-do-not-use');

  // noted wrongly: struck with a reason, still in sight; the finding stands as before
  const { declineId } = findings[0]!.declines[0]!;
  await program.ask(findingStrikeDecline, { declineId, reason: 'the neighbour said it', by: 'Ann' });
  expect((await shop.sheet()).findings).toMatchObject([
    { severity: 'do-not-use', closedOn: null, declined: null, declines: [{ ...said, struck: true }] },
  ]);
  const after = await textOf(await program.ask(slipPreview, { machineId: shop.machineId }));
  expect(after).toContain('DO NOT USE');
  expect(after).not.toContain('refused');

  // refused of a finding seen later, of a day to come, of one nobody knows
  const decline = (change: object) => program.answer(findingDecline, { findingId, ...said, by: '', ...change });
  expect(await decline({ saidOn: '2026-04-30' })).toMatchObject({ fault: { code: 'not-as-expected' } });
  expect(await decline({ saidOn: '2026-11-10' })).toMatchObject({ fault: { code: 'not-as-expected' } });
  expect(await decline({ findingId: 99 })).toMatchObject({ fault: { code: 'unknown-finding' } });
});

test('14 two owners or a dealer sells it on: dated, the history stays with the machine, slips with their owner, each told only of his own', async () => {
  const { machineId, customerId: firstOwner } = shop;
  const person = (name: string) => ({ name, place: 'Overby', address: '', phone: '', email: '' });
  const { slipId: oldSlip } = await program.ask(slipMake, { machineId, by: 'Bo' });
  const before = await shop.sheet();
  const sale = { machineId, fromOn: '2026-06-01', customerId: null, customer: person('Moor Machines'), by: 'Ann' };
  const dealer = await program.ask(machineSellOn, sale);
  const resale = { ...sale, fromOn: '2026-09-01', customer: person('Low Scarth') };
  const buyer = await program.ask(machineSellOn, resale);

  // whose it is goes by the day; what was measured on it, and what it forecasts, is as before
  const after = await shop.sheet();
  expect(after.owners.map(({ name, fromOn }) => [name, fromOn])).toEqual([
    ['Hill Farm', null],
    ['Moor Machines', '2026-06-01'],
    ['Low Scarth', '2026-09-01'],
  ]);
  expect(after.customer?.customerId).toBe(buyer.customerId);
  expect({ points: after.points, dialRows: after.dialRows, stripDowns: after.stripDowns }).toEqual({
    ...{ points: before.points, dialRows: before.dialRows, stripDowns: before.stripDowns },
  });
  const record = program.context.record!;
  const ownerOn = (asOf: string) => loadShopLife(record, { asOf }).machines[0]?.customer;
  expect(['2026-05-31', '2026-06-01', '2026-08-31', '2026-09-01'].map(ownerOn)).toEqual([
    ...['Hill Farm', 'Moor Machines', 'Moor Machines', 'Low Scarth'],
  ]);

  // the old owner's slip stays theirs, as printed; a new one is the buyer's
  expect((await program.ask(slipRead, { slipId: oldSlip })).slip.customer.name).toBe('Hill Farm');
  const { slipId: newSlip } = await program.ask(slipMake, { machineId, by: 'Bo' });
  expect((await program.ask(slipRead, { slipId: newSlip })).slip.customer.name).toBe('Low Scarth');
  const { customers } = await program.ask(customersSheet, {});
  expect(customers.map(({ name, slips, owned }) => [name, slips, owned[0]?.untilOn])).toEqual([
    ['Hill Farm', 1, '2026-06-01'],
    ['Low Scarth', 1, null],
    ['Moor Machines', 0, '2026-09-01'],
  ]);

  // what one of them is given of himself tells him nothing of the others
  const textsFor = async (customerId: number) => {
    const { zipBase64 } = await program.ask(customerExport, { customerId });
    const files = orRefuse(filesOfZip(new Uint8Array(Buffer.from(zipBase64, 'base64'))));
    return files.map(({ name, bytes }) => `${name}\n${new TextDecoder().decode(bytes)}`).join('\n');
  };
  expect(/Moor Machines|Low Scarth/.exec(await textsFor(firstOwner))).toBeNull();
  expect(/Hill Farm|Moor Machines/.exec(await textsFor(buyer.customerId))).toBeNull();

  // put right: the sale was later, and the dealer was never between
  const [, dealers, buyers] = after.owners;
  const right = { reason: 'read off the bill', by: 'Ann' };
  await program.ask(ownerPutRight, {
    ...{ ownershipId: buyers!.ownershipId, fromOn: '2026-09-10', customerId: buyer.customerId },
    ...right,
  });
  await program.ask(ownerPutRight, { ownershipId: dealers!.ownershipId, fromOn: null, customerId: null, ...right });
  expect(['2026-06-01', '2026-09-09', '2026-09-10'].map(ownerOn)).toEqual(['Hill Farm', 'Hill Farm', 'Low Scarth']);
  const { owners } = await shop.sheet();
  expect(owners.map(({ name, struck }) => [name, struck])).toEqual([
    ['Hill Farm', false],
    ['Moor Machines', true],
    ['Low Scarth', false],
  ]);

  // who did it, and when, stands in the history
  const { entries } = await program.ask(entriesList, { beforeEntryId: null, limit: 4 });
  expect(entries.map(({ what, madeBy, customers: about }) => [what, madeBy, about[0]?.name])).toEqual([
    ['owner/putRight', 'Ann', 'Moor Machines'],
    ['owner/putRight', 'Ann', 'Low Scarth'],
    ['machine/sellOn', 'Ann', 'Low Scarth'],
    ['machine/sellOn', 'Ann', 'Moor Machines'],
  ]);

  // nobody buys his own machine, nor one to come
  const own = { ...sale, fromOn: '2026-11-01', customer: null, customerId: buyer.customerId };
  expect(await program.answer(machineSellOn, own)).toMatchObject({ fault: { code: 'not-as-expected' } });
  const tomorrow = { ...resale, fromOn: '2026-11-10' };
  expect(await program.answer(machineSellOn, tomorrow)).toMatchObject({ fault: { code: 'not-as-expected' } });
  expect(dealer.customerId).not.toBe(buyer.customerId);
});
