import { afterEach, describe, expect, test } from 'vitest';
import { zSlip } from '#core/contract/slip.ts';
import { listMachines } from '#core/record/machineStore.ts';
import { day } from '#core/units/day.ts';
import { type Context, recordOf } from '#core/use-cases/context.ts';
import { hoursAddHandler } from '#core/use-cases/hoursAdd.ts';
import { machinesListHandler } from '#core/use-cases/machinesList.ts';
import { slipMakeHandler } from '#core/use-cases/slipMake.ts';
import { slipPreviewHandler } from '#core/use-cases/slipPreview.ts';
import { slipReadHandler } from '#core/use-cases/slipRead.ts';
import { slipsListHandler } from '#core/use-cases/slipsList.ts';
import { aLearnedLoaderShop, HOOK_CRACKED, LOADER_DAY } from '#tests/support/aLoaderShop.ts';
import { pdfPages } from '#tests/support/pdfText.ts';

let context: Context;
afterEach(() => context.close());

const loader = () => listMachines(recordOf(context)).find(({ name }) => name === 'Vessel 118')!.id;
const textOf = async (base64: string) =>
  (await pdfPages(new Uint8Array(Buffer.from(base64, 'base64'))))
    .map(({ text }) => text.replace(/[\s\u00A0]+/g, ' '))
    .join('\n');

describe('a slip made from the record', () => {
  test('speaks the dial of the present meter, by the earliest deciding hours of the machine', async () => {
    context = aLearnedLoaderShop();
    const { slip, pdfBase64 } = await slipPreviewHandler(context, { machineId: loader() });
    const line = (await machinesListHandler(context, { atOnce: false })).machines.find(
      ({ machineId }) => machineId === loader(),
    )!;
    // 3 700 h ran on the meter before this one
    const dialNow = line.hours.machineHours! - 3700;
    expect(slip.dialHours).toBeCloseTo(dialNow, 9);
    expect(slip.headline).toMatchObject({ kind: 'come-in', items: [line.first!.item] });
    expect(slip.headline).toMatchObject({ dialHours: expect.closeTo(dialNow + line.first!.decidingHoursLeft!, 6) });
    expect(slip.found.map(({ label, sizeMm }) => [label, sizeMm])).toContainEqual(['Boom foot pin, right', 38.8]);
    expect(slip.done).toMatchObject([{ label: 'Boom foot pin, right', what: 'renewed', sizeMm: 40 }]);
    expect(await textOf(pdfBase64)).toContain('hours on the meter');
    expect(zSlip.parse(JSON.parse(JSON.stringify(slip)))).toEqual(slip);
  });

  test('with a do-not-use finding has it as its headline', async () => {
    context = aLearnedLoaderShop(HOOK_CRACKED);
    const { slip, pdfBase64 } = await slipPreviewHandler(context, { machineId: loader() });
    expect(slip).toMatchObject({ headline: { kind: 'do-not-use', label: 'Hook, left', finding: 'crack' }, axis: null });
    expect(await textOf(pdfBase64)).toContain('DO NOT USE the front loader');
    expect((await machinesListHandler(context, { atOnce: false })).machines[0]).toMatchObject({
      name: 'Vessel 118',
      group: 'do-not-use',
    });
  });

  test('is numbered, kept, listed newest first, and read again as it was made', async () => {
    context = aLearnedLoaderShop();
    const first = await slipMakeHandler(context, { machineId: loader(), by: 'J. Orrin' });
    expect(first.number).toBe('2026-001');
    expect(first.fileName).toBe('forecast-slip-2026-001-vessel-118.pdf');
    hoursAddHandler(context, {
      machineId: loader(),
      takenOn: day('2026-11-08'),
      kind: 'reading',
      dialHours: 1130,
      newDialHours: null,
      errorHours: null,
      clock: null,
      saidBy: 'farmer',
      sure: false,
    });
    const second = await slipMakeHandler(context, { machineId: loader(), by: 'J. Orrin' });
    expect(second.number).toBe('2026-002');
    expect(second.pdfBase64).not.toBe(first.pdfBase64);

    const { slips } = await slipsListHandler(context, {});
    expect(slips.map(({ number }) => number)).toEqual(['2026-002', '2026-001']);
    expect(slips[0]).toMatchObject({ machine: 'Vessel 118', customer: 'Hollin Top', madeOn: LOADER_DAY });
    const kept = await slipReadHandler(context, { slipId: first.slipId });
    expect(kept.pdfBase64).toBe(first.pdfBase64);
    expect(kept.slip.number).toBe('2026-001');
  });

  test('is refused for a machine or a slip nobody knows', async () => {
    context = aLearnedLoaderShop();
    await expect(slipPreviewHandler(context, { machineId: 999 })).rejects.toMatchObject({
      refusal: { code: 'unknown-machine' },
    });
    await expect(slipReadHandler(context, { slipId: 999 })).rejects.toMatchObject({
      refusal: { code: 'unknown-slip' },
    });
  });
});
