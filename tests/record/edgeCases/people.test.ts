import { afterEach, beforeEach, expect, test } from 'vitest';
import { forecastAll } from '#core/contract/forecast.ts';
import { machinesList } from '#core/contract/machine.ts';
import { slipMake, slipPreview, slipRead } from '#core/contract/slip.ts';
import { findingAdd, findingDecline, findingStrikeDecline, stripDownSave } from '#core/contract/stripDown.ts';
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
