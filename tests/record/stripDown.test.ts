import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { entriesList, entriesUndoLast } from '#core/contract/entries.ts';
import { machinesList, pointLimits } from '#core/contract/machine.ts';
import { oldSheetsSave } from '#core/contract/oldSheets.ts';
import { recordOpen } from '#core/contract/record.ts';
import {
  findingClose,
  sizeAnswer,
  sizePutRight,
  stripDownDiscard,
  stripDownJudge,
  stripDownKeep,
  stripDownSave,
  stripDownSheet,
} from '#core/contract/stripDown.ts';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import { aShopWithAHitch, aSize } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';

let program: Program;
let shop: Awaited<ReturnType<typeof aShopWithAHitch>>;
beforeEach(async () => {
  program = aProgram('2026-11-09');
  shop = await aShopWithAHitch(program);
});
afterEach(() => {
  expect(program.defects).toEqual([]);
  program.end();
});

const fault = async (...asked: Parameters<Program['answer']>) => {
  const answer = await program.answer(...asked);
  return answer.ok ? null : answer.fault;
};
const lifeOf = (pointId: number) =>
  loadShopLife(program.context.record!).points.find((point) => point.pointId === pointId)!;
const kept = (pointId: number) => lifeOf(pointId).sizes.map(({ sizeMm, parked }) => [sizeMm, parked]);

describe('a strip-down', () => {
  test('of a sheet left open while one of that day was saved is asked about, and goes in twice only on purpose', async () => {
    const { pin, draft, machineId } = shop;
    const { lastStripDownId } = await program.ask(stripDownSheet, { machineId });
    const typed = {
      ...draft('2026-05-01', null),
      sizes: [aSize(pin.pointId, 29.8)],
      afterStripDownId: lastStripDownId,
    };
    const first = await program.ask(stripDownSave, { ...typed, dialSure: false });
    expect((await program.ask(stripDownSheet, { machineId })).lastStripDownId).toBe(first.stripDownId);
    const before = program.rows();

    const again = await fault(stripDownSave, { ...typed, dialSure: false });
    expect(again).toMatchObject({
      code: 'measured-meanwhile',
      facts: { stripDownId: first.stripDownId, takenOn: '2026-05-01' },
    });
    expect(program.rows()).toBe(before);
    // another day is another visit; one that was taken back is none
    expect(await fault(stripDownSave, { ...typed, takenOn: '2026-05-02', dialSure: false })).toBeNull();
    await program.ask(stripDownSave, { ...typed, dialSure: false, anotherSure: true });
    expect(
      await fault(stripDownSave, { ...typed, afterStripDownId: first.stripDownId, dialSure: false }),
    ).toMatchObject({
      code: 'measured-meanwhile',
    });
    const { entries } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
    await program.ask(entriesUndoLast, { entryId: entries[0]!.entryId, by: 'Bo' });
    expect(await fault(stripDownSave, { ...typed, afterStripDownId: first.stripDownId, dialSure: false })).toBeNull();
  });

  test('is saved whole, moves the forecast, and its dial is a reading of the machine', async () => {
    const { strip, pin, draft, machineId } = shop;
    const typed = {
      ...draft('2026-05-01', 3100),
      sizes: [aSize(strip.pointId, 11.0, 'front'), aSize(strip.pointId, 10.8, 'rear'), aSize(pin.pointId, 29.8)],
      renewals: [{ pointId: pin.pointId, sizeMm: null, hoursKnown: true }],
      findings: [
        {
          assemblyId: pin.assemblyId,
          positionId: pin.positionId,
          kind: 'crack' as const,
          severity: 'watch' as const,
          note: 'dye',
        },
      ],
    };
    const judged = await program.ask(stripDownJudge, typed);
    expect(judged).toMatchObject({ questions: [], dialQuestion: null });
    expect(judged.worst).toContainEqual({
      pointId: strip.pointId,
      event: 'as-found',
      station: 'rear',
      wearMm: expect.closeTo(1.2),
    });

    const saved = await program.ask(stripDownSave, { ...typed, dialSure: false });
    expect(saved.parked).toBe(0);
    const moved = saved.moved.find(({ pointId }) => pointId === strip.pointId)!;
    expect(moved.after.high! - moved.after.low!).toBeLessThan(moved.before.high! - moved.before.low!);

    const sheet = await shop.sheet();
    expect(sheet.dialRows.map(({ dialHours }) => dialHours)).toEqual([1000, 3100]);
    expect(sheet.stripDowns).toMatchObject([{ takenOn: '2026-05-01', machineHours: 3100, fitter: 'Bo' }]);
    expect(sheet.findings).toMatchObject([{ kind: 'crack', closedOn: null, position: 'Hook pin' }]);
    const bench = await program.ask(stripDownSheet, { machineId });
    expect(bench.rows[0]?.stations).toEqual([
      { station: 'front', lastSizeMm: 11, lastOn: '2026-05-01' },
      { station: 'rear', lastSizeMm: 10.8, lastOn: '2026-05-01' },
    ]);
    expect(bench.rows[1]?.stations[0]?.lastSizeMm).toBeNull();
  });

  test('is kept as typed until it is saved, through the end of the program', async () => {
    const { machineId, draft, strip } = shop;
    const typed = {
      ...draft('2026-11-08', null),
      sizes: [aSize(strip.pointId, 1.1, 'front')],
      note: 'half done',
      shims: [],
    };
    await program.ask(stripDownKeep, typed);
    const path = program.context.record!.path;
    program.context.close();
    await program.ask(recordOpen, { path });
    expect((await program.ask(stripDownSheet, { machineId })).draft).toEqual(typed);
    expect(lifeOf(strip.pointId).sizes).toEqual([]);
    expect(await program.ask(stripDownDiscard, { machineId })).toEqual({ discarded: true });
    expect((await program.ask(stripDownSheet, { machineId })).draft).toBeNull();

    await program.ask(stripDownKeep, typed);
    await program.ask(stripDownSave, { ...typed, sizes: [aSize(strip.pointId, 11.1, 'front')], dialSure: false });
    expect((await program.ask(stripDownSheet, { machineId })).draft).toBeNull();
  });

  test('typed on elsewhere meanwhile is neither gone over, thrown away nor saved past by one that has not seen it', async () => {
    const { machineId, draft, strip } = shop;
    const typed = { ...draft('2026-11-08', null), sizes: [aSize(strip.pointId, 11.02, 'front')] };
    const laidOut = (await program.ask(stripDownSheet, { machineId })).draftKeptAt;
    expect(laidOut).toBeNull();
    const { keptAt } = await program.ask(stripDownKeep, { ...typed, typedSince: laidOut });
    expect((await program.ask(stripDownSheet, { machineId })).draftKeptAt).toBe(keptAt);
    const before = program.rows();
    const unseen = { code: 'typed-meanwhile', facts: { keptAt, sizes: 1 } };
    const old = { ...typed, sizes: [], typedSince: laidOut };
    expect(await fault(stripDownKeep, old)).toMatchObject(unseen);
    expect(await fault(stripDownDiscard, { machineId, typedSince: laidOut })).toMatchObject(unseen);
    const save = { ...typed, typedSince: laidOut, dialSure: false };
    expect(await fault(stripDownSave, save)).toMatchObject(unseen);
    expect(await fault(oldSheetsSave, save)).toMatchObject(unseen);
    expect(program.rows()).toBe(before);
    // whoever has seen it goes on
    const next = await program.ask(stripDownKeep, { ...typed, note: 'both', typedSince: keptAt });
    expect(await fault(stripDownSave, { ...save, typedSince: next.keptAt })).toBeNull();
    // once it is saved or thrown away there is nothing to go over
    expect(await fault(stripDownKeep, { ...typed, typedSince: next.keptAt })).toBeNull();
  });

  test('with nothing typed, on a day to come, or of another machine is refused', async () => {
    const { draft, strip } = shop;
    const { rows } = program;
    const before = rows();
    expect(await fault(stripDownSave, { ...draft('2026-05-01', null), dialSure: false })).toMatchObject({
      code: 'nothing-typed',
    });
    const sizes = [aSize(strip.pointId, 11, 'front')];
    expect(await fault(stripDownSave, { ...draft('2026-11-10', 3100), sizes, dialSure: false })).toMatchObject({
      code: 'not-as-expected',
      path: 'takenOn',
    });
    expect(
      await fault(stripDownSave, { ...draft('2026-05-01', 3100), sizes: [aSize(77, 11)], dialSure: false }),
    ).toMatchObject({ code: 'unknown-point', path: 'sizes.0.pointId' });
    expect(rows()).toBe(before);
  });

  test('with a dial that fell is asked about; when sure, the dial is kept aside and the sizes go by the date', async () => {
    const { draft, strip } = shop;
    const typed = { ...draft('2026-05-01', 310), sizes: [aSize(strip.pointId, 11, 'front')] };
    expect((await program.ask(stripDownJudge, typed)).dialQuestion).toMatchObject({ code: 'dial-went-back' });
    expect(await fault(stripDownSave, { ...typed, dialSure: false })).toMatchObject({
      code: 'dial-went-back',
      path: 'dialHours',
    });
    await program.ask(stripDownSave, { ...typed, dialSure: true });
    const [machine] = loadShopLife(program.context.record!).machines;
    expect(machine?.dialEvents.map(({ dialHours, parked }) => [dialHours, parked])).toEqual([
      [1000, false],
      [310, true],
    ]);
    expect(lifeOf(strip.pointId).sizes).toMatchObject([{ sizeMm: 11, dialHours: null }]);
  });
});

describe('an odd size', () => {
  const save = async (takenOn: string, dialHours: number, ...sizes: ReturnType<typeof aSize>[]) =>
    program.ask(stripDownSave, { ...shop.draft(takenOn, dialHours), sizes, dialSure: false });

  test('is questioned, kept as typed and left out; right as read, it counts', async () => {
    const { pin } = shop;
    const typed = { ...shop.draft('2026-05-01', 3100), sizes: [aSize(pin.pointId, 298)] };
    expect((await program.ask(stripDownJudge, typed)).questions).toMatchObject([
      { pointId: pin.pointId, question: { code: 'ten-times-off', choices: expect.arrayContaining(['right-as-read']) } },
    ]);
    expect((await program.ask(stripDownSave, { ...typed, dialSure: false })).parked).toBe(1);
    expect(kept(pin.pointId)).toEqual([[298, true]]);
    const sizeId = lifeOf(pin.pointId).sizes[0]!.id;
    await program.ask(sizeAnswer, { sizeId, answer: 'right-as-read', by: 'Bo' });
    expect(kept(pin.pointId)).toEqual([[298, false]]);
    expect(await fault(sizeAnswer, { sizeId, answer: 'right-as-read', by: 'Bo' })).toMatchObject({
      code: 'already-put-right',
    });
  });

  test('put right, gives way to the right one and stays visible, struck', async () => {
    const { pin } = shop;
    await save('2026-05-01', 3100, aSize(pin.pointId, 298));
    const wrong = lifeOf(pin.pointId).sizes[0]!.id;
    const { sizeId } = await program.ask(sizePutRight, {
      sizeId: wrong,
      sizeMm: 29.8,
      reason: 'point missed',
      by: 'Bo',
    });
    expect(kept(pin.pointId)).toEqual([[29.8, false]]);
    const { points } = await shop.sheet();
    expect(points.find(({ pointId }) => pointId === pin.pointId)?.putRight).toMatchObject([
      { sizeMm: 298, newSizeMm: 29.8 },
    ]);
    await program.ask(sizePutRight, { sizeId, sizeMm: null, reason: 'another pin', by: 'Bo' });
    expect(kept(pin.pointId)).toEqual([]);
  });

  test('put right to a size that is odd too, is asked about and kept aside like a first one', async () => {
    const { pin } = shop;
    await save('2024-05-01', 2000, aSize(pin.pointId, 29.7));
    await save('2026-05-01', 3100, aSize(pin.pointId, 29.6));
    const wrong = lifeOf(pin.pointId).sizes.at(-1)!.id;
    const right = { sizeId: wrong, reason: 'a slip', by: 'Bo' };
    const odd = await program.ask(sizePutRight, { ...right, sizeMm: 296 });
    expect(odd.question).toMatchObject({ code: 'ten-times-off', facts: { likelyMm: 29.6 } });
    expect(kept(pin.pointId)).toEqual([
      [29.7, false],
      [296, true],
    ]);
    // the last answer counts, and a sound one asks nothing
    const thicker = await program.ask(sizePutRight, { ...right, sizeId: odd.sizeId, sizeMm: 29.95 });
    expect(thicker.question).toMatchObject({
      code: 'better-than-last',
      choices: expect.arrayContaining(['was-renewed']),
    });
    expect(await program.ask(sizePutRight, { ...right, sizeId: thicker.sizeId, sizeMm: 29.5 })).toMatchObject({
      question: null,
    });
    expect(kept(pin.pointId)).toEqual([
      [29.7, false],
      [29.5, false],
    ]);
  });

  test('better than the last because the part was renewed elsewhere begins a new part, once for all stations', async () => {
    const { strip } = shop;
    await save('2024-05-01', 2000, aSize(strip.pointId, 10.2, 'front'), aSize(strip.pointId, 10, 'rear'));
    const { parked } = await save(
      '2026-05-01',
      3100,
      aSize(strip.pointId, 11.8, 'front'),
      aSize(strip.pointId, 11.7, 'rear'),
    );
    expect(parked).toBe(2);
    for (const { id } of lifeOf(strip.pointId).sizes.filter((size) => size.parked))
      await program.ask(sizeAnswer, { sizeId: id, answer: 'was-renewed', by: 'Bo' });
    expect(lifeOf(strip.pointId).renewals).toMatchObject([{ takenOn: '2026-05-01', hoursKnown: false }]);
    const { points } = await shop.sheet();
    expect(points.find(({ pointId }) => pointId === strip.pointId)?.forecast.ownReadings).toBe(1);
  });

  test('as-left better than as-found because nobody wrote the renewal down begins a new part that day', async () => {
    const { strip } = shop;
    const left = (sizeMm: number, station: string) => ({
      ...aSize(strip.pointId, sizeMm, station),
      event: 'as-left' as const,
    });
    const { parked } = await save(
      '2026-05-01',
      3100,
      aSize(strip.pointId, 10.2, 'front'),
      aSize(strip.pointId, 10, 'rear'),
      left(12, 'front'),
      left(11.95, 'rear'),
    );
    expect(parked).toBe(2);
    for (const { id } of lifeOf(strip.pointId).sizes.filter((size) => size.parked))
      await program.ask(sizeAnswer, { sizeId: id, answer: 'was-renewed', by: 'Bo' });
    expect(lifeOf(strip.pointId).renewals).toMatchObject([{ takenOn: '2026-05-01', hoursKnown: true }]);
    const { points } = await shop.sheet();
    expect(points.find(({ pointId }) => pointId === strip.pointId)?.forecast.ownReadings).toBe(0);
  });
});

describe('what holds on its own day', () => {
  test('a changed limit leaves older jobs judged by the limit of their day', async () => {
    const { strip } = shop;
    const limits = {
      newSizeMm: 12,
      newSizeTolMm: 0.2,
      renewAtMm: 10.5,
      rejectAtMm: 8.5,
      source: 'maker',
      enteredBy: 'Bo',
    };
    await program.ask(pointLimits, { pointId: strip.pointId, from: '2026-06-01', ...limits });
    expect(lifeOf(strip.pointId).limits.map(({ from, renewAtMm }) => [from, renewAtMm])).toEqual([
      [null, 9.5],
      ['2026-06-01', 10.5],
    ]);
    const asOf = loadShopLife(program.context.record!, { asOf: '2026-05-31' }).points[0];
    expect(asOf?.limits).toHaveLength(1);
    expect(
      await fault(pointLimits, { pointId: strip.pointId, from: '2026-06-01', ...limits, renewAtMm: 12.5 }),
    ).toMatchObject({
      code: 'limit-better-than-new',
      path: 'renewAtMm',
    });
  });

  test('an open do-not-use finding heads the machine until it is closed with what became of it', async () => {
    const { pin, draft } = shop;
    const crack = {
      assemblyId: pin.assemblyId,
      positionId: pin.positionId,
      kind: 'crack' as const,
      severity: 'do-not-use' as const,
      note: '',
    };
    await program.ask(stripDownSave, { ...draft('2026-05-01', 3100), findings: [crack], dialSure: false });
    const line = async () => (await program.ask(machinesList, {})).machines[0];
    expect((await line())?.group).toBe('do-not-use');
    const findingId = (await line())!.openFindings[0]!.findingId;
    expect(
      await fault(findingClose, { findingId, closedOn: '2026-04-01', outcome: 'renewed', by: 'Bo' }),
    ).toMatchObject({ path: 'closedOn' });
    await program.ask(findingClose, { findingId, closedOn: '2026-06-01', outcome: 'renewed', by: 'Bo' });
    expect((await line())?.group).not.toBe('do-not-use');
    expect(await fault(findingClose, { findingId, closedOn: '2026-06-02', outcome: 'again', by: 'Bo' })).toMatchObject({
      code: 'already-closed',
    });
    expect(loadShopLife(program.context.record!, { asOf: '2026-05-15' }).findings).toMatchObject([{ closedOn: null }]);
  });
});
