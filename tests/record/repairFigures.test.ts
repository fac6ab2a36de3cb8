import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { machineRead } from '#core/contract/machine.ts';
import { repairChoose, repairCutList, repairRead, repairSaveFacts } from '#core/contract/repair.ts';
import { shopFiguresRead, shopFiguresSave } from '#core/contract/shopFigures.ts';
import { slideFacts, slideRead, slideSaveFacts } from '#core/contract/slide.ts';
import { stripDownSave } from '#core/contract/stripDown.ts';
import { aShopWithAHitch, aSlide } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';
import { aWornHole } from '#tests/support/aWornHole.ts';
import { anEmptyShop } from '#tests/support/laidOnce.ts';

let program: Program;
beforeEach(() => {
  program = aProgram();
});
afterEach(() => program.end());

const LEAVE = { 'top-front': 'leave', 'top-rear': 'leave', 'bottom-front': 'leave', 'bottom-rear': 'leave' } as const;
const USUAL = { changed: {}, roundBarsMm: null, rack: [], by: 'Bo' };

/** A worn hole at the hitch's pin, described. */
async function aWornJoint() {
  const hitch = await aShopWithAHitch(program);
  const { positionId } = hitch.pin;
  const { facts } = await program.ask(repairRead, { positionId });
  await program.ask(repairSaveFacts, { positionId, facts: aWornHole(facts), by: 'Bo' });
  const option = async (choice: string) =>
    (await program.ask(repairRead, { positionId })).options.find((one) => one.choice === choice)!;
  return { ...hitch, positionId, option };
}

describe('what the shop goes by in its repairs', () => {
  test('is the program’s own with how it is known, until the shop sets it otherwise; then the options go by it', async () => {
    const { option } = await aWornJoint();
    const { figures } = await program.ask(shopFiguresRead, {});
    for (const { value, usual, howKnown, source } of figures) {
      expect(value).toBe(usual);
      expect(['common-practice', 'from-memory', 'published']).toContain(howKnown);
      expect(source).not.toBe('');
    }
    const [before, bushBefore] = [await option('oversize-pin'), await option('bush')];
    const changed = { oversizeStepMm: 5, bushWallLeastMm: 6, 'hours:make-pin': 2 };
    await program.ask(shopFiguresSave, { ...USUAL, changed });
    const [after, bushAfter] = [await option('oversize-pin'), await option('bush')];
    // 30 mm worn by 0.9 to one side, 0.15 a side: the centre may go half way, and the next step up is 31.5, in steps of 5 it is 35
    expect([before.bore?.nominalMm, after.bore?.nominalMm]).toEqual([31.5, 35]);
    expect([bushBefore.bush?.wallMm, bushAfter.bush?.wallMm]).toEqual([3, 6]);
    expect(after.hoursHere!.typical - before.hoursHere!.typical).toBeCloseTo(1, 9);
    await program.ask(shopFiguresSave, USUAL);
    expect((await option('oversize-pin')).bore?.nominalMm).toBe(31.5);
  });

  test('what is no figure, or beyond its bounds, is refused', async () => {
    await anEmptyShop(program);
    for (const changed of [{ oversizeStepMm: 0 }, { oversizesAtMost: 1.5 }, { sawBlade: 3 }])
      expect(await program.answer(shopFiguresSave, { ...USUAL, changed })).toMatchObject({
        fault: { code: 'not-as-expected', path: `changed.${Object.keys(changed)[0]}` },
      });
  });

  test('the cut list cuts from the rack before it buys, with the shop’s saw and bars', async () => {
    const { machineId, positionId } = await aWornJoint();
    await program.ask(repairChoose, { positionId, choice: 'bush', by: 'Bo' });
    const bars = async () =>
      (await program.ask(repairCutList, { machineId })).groups.map(({ bar, plan }) => [bar, plan.bars[0]?.barMm]);
    const bought = await bars();
    expect(bought.map(([, mm]) => mm)).toEqual(bought.map(() => 3000));
    const [pinBar] = bought[0]!;
    const rack = [{ bar: String(pinBar), lengthMm: 400, count: 1 }];
    await program.ask(shopFiguresSave, { ...USUAL, changed: { barLengthMm: 6000 }, rack });
    const own = await bars();
    expect(own[0]).toEqual([pinBar, 400]);
    for (const [, mm] of own.slice(1)) expect(mm).toBe(6000);
    await program.ask(shopFiguresSave, { ...USUAL, roundBarsMm: [100] });
    await program.ask(repairChoose, { positionId, choice: null, by: 'Bo' });
    await program.ask(repairChoose, { positionId, choice: 'bush', by: 'Bo' });
    expect((await bars()).map(([bar]) => bar)).toEqual(['steel round 100']);
  });
});

describe('a slide', () => {
  test('keeps its lengths, and starts from the play the shop sets', async () => {
    await anEmptyShop(program);
    const assemblyId = await aSlide(program);
    await program.ask(shopFiguresSave, { ...USUAL, changed: { slidePlayMm: 0.6 } });
    const first = await program.ask(slideFacts, { assemblyId });
    expect(first).toMatchObject({ kept: false, facts: { spanMm: null, newPlayMm: 0.6 } });
    const facts = { ...first.facts, spanMm: 500, overhangMm: 400, channelRearMm: 0.5 };
    await program.ask(slideSaveFacts, { assemblyId, facts, by: 'Bo' });
    await program.ask(slideSaveFacts, { assemblyId, facts: { ...facts, spanMm: 520 }, by: 'Bo' });
    const kept = await program.ask(slideFacts, { assemblyId });
    expect(kept).toEqual({ kept: true, facts: { ...facts, spanMm: 520 } });
    const { play } = await program.ask(slideRead, { assemblyId, ...kept.facts, choice: LEAVE });
    expect(play?.before.rearMm).toBeGreaterThanOrEqual(1.1);
  });
});

describe('life bought by a repair', () => {
  test('by an oversize goes by the limits that move with it: what is promised is what is forecast once it is done', async () => {
    const { machineId, pin, option, draft } = await aWornJoint();
    const oversize = await option('oversize-pin');
    const promised = oversize.life!;
    const sizeMm = (oversize.pin!.low + oversize.pin!.high) / 2;
    await program.ask(stripDownSave, {
      ...draft('2026-11-09', null),
      renewals: [{ pointId: pin.pointId, sizeMm, hoursKnown: true, kind: 'oversize', stamped: true }],
      dialSure: true,
    });
    const { points } = await program.ask(machineRead, { machineId });
    const { limits, forecast } = points.find(({ pointId }) => pointId === pin.pointId)!;
    // renew at 29 of 30 when new: a millimetre under whatever is put in
    expect(limits.renewAtMm).toBeCloseTo(sizeMm - 1, 6);
    const after = forecast.hoursLeft;
    for (const of of ['low', 'middle', 'high'] as const)
      expect(Math.abs((after[of] ?? 0) - (promised[of] ?? 0))).toBeLessThan(0.01 * (promised[of] ?? 1));
  });

  test('a part not there yet has no hours: they are not known, not nought', async () => {
    const { option } = await aWornJoint();
    expect(await option('reject')).toMatchObject({ hoursHere: null, hoursAdded: null });
  });

  test('a yield stress the shop knows is said to be its own word, and is what the boss is judged by', async () => {
    const { positionId, option } = await aWornJoint();
    const { facts } = await program.ask(repairRead, { positionId });
    expect((await option('bush')).cautions.map(({ code }) => code)).not.toContain('boss-yield-own');
    await program.ask(repairSaveFacts, { positionId, facts: { ...facts, yieldMpa: 20 }, by: 'Bo' });
    expect((await option('bush')).cautions.map(({ code }) => code)).toEqual(
      expect.arrayContaining(['boss-yield-own', 'boss-yields']),
    );
  });
});
