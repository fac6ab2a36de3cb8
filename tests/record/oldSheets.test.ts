import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { entriesList, entriesUndoLast } from '#core/contract/entries.ts';
import { machineRead, machineTakeIn } from '#core/contract/machine.ts';
import {
  oldSheetsEnd,
  oldSheetsGrid,
  oldSheetsProgress,
  oldSheetsRead,
  oldSheetsSave,
  oldSheetsTakeBack,
  pointAdd,
  sizesQuestioned,
  stripDownRead,
  stripDownSwap,
} from '#core/contract/oldSheets.ts';
import { sizeAnswer, sizePutRight, stripDownJudge, stripDownKeep, stripDownSheet } from '#core/contract/stripDown.ts';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import { aShopWithAHitch, aSize, aTakeIn } from '#tests/support/aHitch.ts';
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
const kept = (pointId: number) =>
  lifeOf(pointId).sizes.map(({ takenOn, station, sizeMm, parked }) => [takenOn, station, sizeMm, parked]);
const front = (takenOn: string, dialHours: number, sizeMm: number) => ({
  ...shop.draft(takenOn, dialHours),
  sizes: [aSize(shop.strip.pointId, sizeMm, 'front')],
  dialSure: false,
});

describe('a batch of old sheets', () => {
  test('sheets come in any order, and say the same as when they come in the order of their days', async () => {
    const sheets = [front('2023-05-01', 1800, 11.4), front('2024-05-01', 2400, 11.1), front('2025-05-01', 3000, 10.8)];
    for (const at of [2, 0, 1]) await program.ask(oldSheetsSave, sheets[at]!);
    const mixed = (await shop.sheet()).points[0]?.forecast;
    const inOrder = aProgram('2026-11-09');
    try {
      const other = await aShopWithAHitch(inOrder);
      for (const sheet of sheets) await inOrder.ask(oldSheetsSave, sheet);
      expect((await other.sheet()).points[0]?.forecast).toEqual(mixed);
    } finally {
      inOrder.end();
    }
    expect(mixed?.ownReadings).toBe(3);
  });

  test('lists its sheets, the last first, until it ends; the forecasts are then made, with progress', async () => {
    await program.ask(oldSheetsSave, front('2024-05-01', 2400, 11.1));
    await program.ask(oldSheetsSave, front('2023-05-01', 1800, 11.4));
    const { sheets, takeBackEntryId, machines } = await program.ask(oldSheetsRead, {});
    expect(sheets.map(({ takenOn, sizes, machine }) => [takenOn, sizes, machine])).toEqual([
      ['2023-05-01', 1, 'Tractor 1'],
      ['2024-05-01', 1, 'Tractor 1'],
    ]);
    expect(takeBackEntryId).toBe(sheets[0]?.entryId);
    expect(machines[0]?.stripDownDays).toEqual(['2023-05-01', '2024-05-01']);

    await program.ask(oldSheetsEnd, { by: 'Bo' });
    let progress = await program.ask(oldSheetsProgress, {});
    while (progress.stage === 'learning' || progress.stage === 'forecasting') {
      await new Promise((resolve) => setTimeout(resolve, 20));
      progress = await program.ask(oldSheetsProgress, {});
    }
    expect(progress).toEqual({ stage: 'done', done: 1, total: 1 });
    expect((await program.ask(oldSheetsRead, {})).sheets).toEqual([]);
    expect((await shop.sheet()).points[0]?.forecast.ownReadings).toBe(2);
  });

  test('a dial that went back and a size that cannot be hold nothing up: both are kept aside', async () => {
    await program.ask(oldSheetsSave, front('2024-05-01', 2400, 11.1));
    const odd = { ...front('2025-05-01', 900, 112), note: 'torn page' };
    expect(await program.ask(oldSheetsSave, odd)).toMatchObject({ parked: 1, dialParked: true });
    const { dialRows } = await shop.sheet();
    expect(dialRows.find(({ dialHours }) => dialHours === 900)?.machineHours).toBeNull();
    const { sizes } = await program.ask(sizesQuestioned, { machineId: null });
    expect(sizes).toMatchObject([
      { takenOn: '2025-05-01', sizeMm: 112, question: { code: 'ten-times-off', facts: { likelyMm: 11.2 } } },
    ]);
    // put right later: the question is gone, and the size counts
    await program.ask(sizePutRight, { sizeId: sizes[0]!.sizeId!, sizeMm: 10.9, reason: 'misread', by: 'Bo' });
    expect((await program.ask(sizesQuestioned, { machineId: shop.machineId })).sizes).toEqual([]);
    expect(kept(shop.strip.pointId)).toEqual([
      ['2024-05-01', 'front', 11.1, false],
      ['2025-05-01', 'front', 10.9, false],
    ]);
  });

  test('a sheet found later that says less than one already in is questioned, not the one that has stood', async () => {
    await program.ask(oldSheetsSave, front('2025-05-01', 3000, 10.8));
    const found = front('2023-05-01', 1800, 10.2);
    const { questions } = await program.ask(stripDownJudge, found);
    expect(questions).toMatchObject([
      { question: { code: 'worse-than-later', facts: { sizeMm: 10.2, laterSizeMm: 10.8, laterOn: '2025-05-01' } } },
    ]);
    expect(await program.ask(oldSheetsSave, found)).toMatchObject({ parked: 1 });
    expect(kept(shop.strip.pointId)).toEqual([
      ['2023-05-01', 'front', 10.2, true],
      ['2025-05-01', 'front', 10.8, false],
    ]);
    const [asked] = (await program.ask(sizesQuestioned, { machineId: null })).sizes;
    expect(asked?.question.code).toBe('worse-than-later');
    await program.ask(sizeAnswer, { sizeId: asked!.sizeId!, answer: 'right-as-read', by: 'Bo' });
    expect(kept(shop.strip.pointId)[0]).toEqual(['2023-05-01', 'front', 10.2, false]);
  });

  test('beside its boxes stand the sizes before its day, and the dial the meter showed about then', async () => {
    await program.ask(oldSheetsSave, front('2023-01-10', 2000, 11.4));
    await program.ask(oldSheetsSave, front('2025-01-10', 3000, 10.8));
    const grid = async (takenOn: string | null) => {
      const { rows, dialHours } = await program.ask(oldSheetsGrid, { machineId: shop.machineId, takenOn });
      return [rows[0]?.stations[0]?.lastSizeMm, dialHours === null ? null : Math.round(dialHours / 10) * 10];
    };
    expect(await grid('2024-01-10')).toEqual([11.4, 2500]);
    expect(await grid('2022-07-11')).toEqual([null, 1500]);
    expect((await grid(null))[0]).toBe(10.8);
  });

  test('an empty sheet is refused, and a day to come', async () => {
    expect(await fault(oldSheetsSave, { ...shop.draft('2024-05-01', null), dialSure: false })).toMatchObject({
      code: 'nothing-typed',
    });
    expect(await fault(oldSheetsSave, front('2027-01-01', 4000, 11))).toMatchObject({ path: 'takenOn' });
  });

  test('the last sheet goes back into its boxes, questioned and answered as it was, and can be saved again', async () => {
    const sheet = {
      ...front('2024-05-01', 2400, 12.4),
      sizes: [{ ...aSize(shop.strip.pointId, 12.4, 'front'), answer: 'right-as-read' as const }],
      renewals: [
        {
          pointId: shop.pin.pointId,
          sizeMm: 31,
          hoursKnown: false,
          kind: 'oversize' as const,
          station: '',
          stamped: true,
          answer: null,
        },
      ],
      shims: [{ pointId: shop.strip.pointId, shimMm: 0.5 }],
    };
    const { entryId } = await program.ask(oldSheetsSave, sheet);
    await program.ask(oldSheetsTakeBack, { entryId, by: 'Bo' });
    expect(kept(shop.strip.pointId)).toEqual([]);
    const { draft } = await program.ask(stripDownSheet, { machineId: shop.machineId });
    const { dialSure, ...typed } = sheet;
    expect(dialSure).toBe(false);
    expect(draft).toEqual(typed);
    const { drafts, sheets, takeBackEntryId } = await program.ask(oldSheetsRead, {});
    expect(drafts).toMatchObject([{ machine: 'Tractor 1', takenOn: '2024-05-01', sizes: 1 }]);
    expect({ sheets, takeBackEntryId }).toEqual({ sheets: [], takeBackEntryId: null });
    await program.ask(oldSheetsSave, { ...draft!, dialSure: false });
    expect(kept(shop.strip.pointId)).toEqual([['2024-05-01', 'front', 12.4, false]]);
  });

  test('what is typed on another sheet of that machine is not run over', async () => {
    const { entryId } = await program.ask(oldSheetsSave, front('2024-05-01', 2400, 11.1));
    await program.ask(stripDownKeep, { ...shop.draft('2026-11-09', null), sizes: [aSize(shop.pin.pointId, 29.7)] });
    expect(await fault(oldSheetsTakeBack, { entryId, by: 'Bo' })).toMatchObject({ code: 'draft-in-the-way' });
    expect(kept(shop.strip.pointId)).toHaveLength(1);
  });
});

describe('an old sheet open in two windows', () => {
  test('is asked about when the other has saved it, and goes in twice only on purpose', async () => {
    const { machineId } = shop;
    const { lastStripDownId } = await program.ask(oldSheetsGrid, { machineId, takenOn: '2024-05-01' });
    const { dialSure, ...typed } = { ...front('2024-05-01', 2400, 11.1), afterStripDownId: lastStripDownId };
    const { keptAt: typedSince } = await program.ask(stripDownKeep, typed);
    const asBoth = { ...typed, dialSure, typedSince };
    const { stripDownId } = await program.ask(oldSheetsSave, asBoth);
    expect((await program.ask(oldSheetsGrid, { machineId, takenOn: null })).lastStripDownId).toBe(stripDownId);

    const before = program.rows();
    expect(await fault(oldSheetsSave, asBoth)).toMatchObject({
      code: 'measured-meanwhile',
      facts: { stripDownId, takenOn: '2024-05-01' },
    });
    expect(program.rows()).toBe(before);
    // another day is another sheet
    expect(await fault(oldSheetsSave, { ...asBoth, takenOn: '2023-05-01', dialHours: 1800 })).toBeNull();
    await program.ask(oldSheetsSave, { ...asBoth, anotherSure: true });
    expect(kept(shop.strip.pointId).filter(([takenOn]) => takenOn === '2024-05-01')).toHaveLength(2);
  });
});

describe('undo', () => {
  const list = () => program.ask(entriesList, { beforeEntryId: null, limit: 50 });

  test('takes back the last entry whole, says who did it, and destroys nothing', async () => {
    const before = (await shop.sheet()).points.map(({ forecast }) => forecast);
    const { entryId } = await program.ask(oldSheetsSave, front('2024-05-01', 2400, 11.1));
    const size = () =>
      program.context.record!.sqlite.prepare('SELECT count(*) FROM sizes WHERE size_mm = 11.1').pluck().get();
    const undone = await program.ask(entriesUndoLast, { entryId, by: 'Ada' });
    expect((await shop.sheet()).points.map(({ forecast }) => forecast)).toEqual(before);
    expect(size()).toBe(1);
    const { entries, undoableEntryId } = await list();
    expect(entries[0]).toMatchObject({ entryId, what: 'oldSheets/save', madeBy: 'Bo', undoneBy: 'Ada' });
    expect(entries[0]?.rows).toMatchObject({ stripDowns: 1, sizes: 1, dialReadings: 1 });
    expect(undoableEntryId).toBe(undone.undoableEntryId);
    expect(entries[1]).toMatchObject({ what: 'machine/takeIn', entryId: undoableEntryId, undoneAt: null });
  });

  test('goes back entry by entry, and stops at the ground of the record', async () => {
    await program.ask(oldSheetsSave, front('2024-05-01', 2400, 11.1));
    for (let { undoableEntryId } = await list(); undoableEntryId !== null; ) {
      ({ undoableEntryId } = await program.ask(entriesUndoLast, { entryId: undoableEntryId, by: 'Bo' }));
    }
    const { entries } = await list();
    expect(entries.filter(({ undoneAt }) => undoneAt === null).map(({ what }) => what)).toEqual(['record/startEmpty']);
    expect((await program.ask(oldSheetsRead, {})).machines).toEqual([]);
    expect(await fault(entriesUndoLast, { entryId: entries.at(-1)!.entryId, by: 'Bo' })).toMatchObject({
      code: 'ground-of-the-record',
    });
    // the name is free again
    await program.ask(machineTakeIn, aTakeIn());
  });

  test('of an entry that is not the last, or twice, is refused and says what came after', async () => {
    const first = await program.ask(oldSheetsSave, front('2024-05-01', 2400, 11.1));
    const second = await program.ask(oldSheetsSave, front('2025-05-01', 3000, 10.9));
    expect(await fault(entriesUndoLast, { entryId: first.entryId, by: 'Bo' })).toMatchObject({
      code: 'not-the-last-entry',
      facts: { lastEntryId: second.entryId },
    });
    await program.ask(entriesUndoLast, { entryId: second.entryId, by: 'Bo' });
    expect(await fault(entriesUndoLast, { entryId: second.entryId, by: 'Bo' })).toMatchObject({
      code: 'already-undone',
    });
    expect(await fault(entriesUndoLast, { entryId: 9999, by: 'Bo' })).toMatchObject({ code: 'unknown-entry' });
  });

  test('of a correction gives the old size back', async () => {
    await program.ask(oldSheetsSave, front('2024-05-01', 2400, 11.1));
    const sizeId = lifeOf(shop.strip.pointId).sizes[0]!.id;
    await program.ask(sizePutRight, { sizeId, sizeMm: 11.3, reason: 'misread', by: 'Bo' });
    const [last] = (await list()).entries;
    expect(last).toMatchObject({ what: 'size/putRight', rows: { sizes: 0, sizesPutRight: 1 } });
    await program.ask(entriesUndoLast, { entryId: last!.entryId, by: 'Bo' });
    expect(kept(shop.strip.pointId)).toEqual([['2024-05-01', 'front', 11.1, false]]);
  });

  test('history is read page by page', async () => {
    for (const year of [2022, 2023, 2024, 2025])
      await program.ask(oldSheetsSave, front(`${year}-05-01`, 1200 + (year - 2022) * 500, 11.9 - (year - 2022) * 0.2));
    const all = (await list()).entries.map(({ entryId }) => entryId);
    const pages: number[] = [];
    let beforeEntryId: number | null = null;
    for (let more = true; more; ) {
      const page: Awaited<ReturnType<typeof list>> = await program.ask(entriesList, { beforeEntryId, limit: 2 });
      pages.push(...page.entries.map(({ entryId }) => entryId));
      beforeEntryId = pages.at(-1)!;
      more = page.more;
    }
    expect(pages).toEqual(all);
  });
});

describe('front and rear mixed up on the paper', () => {
  const place = (pointId: number, station: string) => ({ pointId, station });
  const frontAndRear = () => ({ one: place(shop.strip.pointId, 'front'), other: place(shop.strip.pointId, 'rear') });

  test('the sizes change places as corrections, each with its old value beside it; undo gives them back', async () => {
    const { stripDownId } = await program.ask(oldSheetsSave, {
      ...front('2024-05-01', 2400, 11.1),
      sizes: [aSize(shop.strip.pointId, 11.1, 'front'), aSize(shop.strip.pointId, 10.4, 'rear')],
    });
    const asked = { stripDownId, pairs: [frontAndRear()], reason: 'mixed up on the paper', by: 'Bo' };
    expect(await program.ask(stripDownSwap, asked)).toMatchObject({ moved: 2, parked: 0 });
    expect(kept(shop.strip.pointId)).toEqual([
      ['2024-05-01', 'front', 10.4, false],
      ['2024-05-01', 'rear', 11.1, false],
    ]);
    const { sizes } = await program.ask(stripDownRead, { stripDownId });
    expect(
      sizes.map(({ station, sizeMm, was }) => [station, sizeMm, was.map((one) => [one.sizeMm, one.reason])]),
    ).toEqual([
      ['front', 10.4, [[11.1, 'mixed up on the paper']]],
      ['rear', 11.1, [[10.4, 'mixed up on the paper']]],
    ]);
    const { undoableEntryId } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
    await program.ask(entriesUndoLast, { entryId: undoableEntryId!, by: 'Bo' });
    expect(kept(shop.strip.pointId).map(([, , sizeMm]) => sizeMm)).toEqual([11.1, 10.4]);
  });

  test('a size with nothing at the other place moves over, and its place is struck out', async () => {
    const { stripDownId } = await program.ask(oldSheetsSave, front('2024-05-01', 2400, 11.1));
    await program.ask(stripDownSwap, { stripDownId, pairs: [frontAndRear()], reason: '', by: 'Bo' });
    expect(kept(shop.strip.pointId)).toEqual([['2024-05-01', 'rear', 11.1, false]]);
    // and back again
    await program.ask(stripDownSwap, { stripDownId, pairs: [frontAndRear()], reason: '', by: 'Bo' });
    expect(kept(shop.strip.pointId)).toEqual([['2024-05-01', 'front', 11.1, false]]);
  });

  test('sizes of two points change places; one that is odd in its new place is kept aside', async () => {
    const { stripDownId } = await program.ask(oldSheetsSave, {
      ...front('2024-05-01', 2400, 11.1),
      sizes: [aSize(shop.strip.pointId, 11.1, 'front'), aSize(shop.pin.pointId, 29.7)],
    });
    const pairs = [{ one: place(shop.strip.pointId, 'front'), other: place(shop.pin.pointId, '') }];
    expect(await program.ask(stripDownSwap, { stripDownId, pairs, reason: '', by: 'Bo' })).toMatchObject({ moved: 2 });
    expect(kept(shop.strip.pointId)).toEqual([['2024-05-01', 'front', 29.7, true]]);
  });

  test('nothing to swap, a place named twice and a sheet that is not there are refused', async () => {
    const { stripDownId } = await program.ask(oldSheetsSave, front('2024-05-01', 2400, 11.1));
    const nowhere = { one: place(shop.pin.pointId, 'A'), other: place(shop.pin.pointId, 'B') };
    const ask = (pairs: unknown[], id = stripDownId) =>
      fault(stripDownSwap, { stripDownId: id, pairs, reason: '', by: 'Bo' });
    expect(await ask([nowhere])).toMatchObject({ code: 'nothing-to-swap' });
    expect(await ask([frontAndRear(), frontAndRear()])).toMatchObject({ code: 'place-twice' });
    expect(await ask([frontAndRear()], 999)).toMatchObject({ code: 'unknown-strip-down' });
  });
});

describe('a measuring point that was not there', () => {
  const point = {
    name: 'diameter',
    measures: 'diameter' as const,
    wears: 'down' as const,
    partClass: 'Greased pin',
    newSizeMm: 25,
    newSizeTolMm: null,
    renewAtMm: 24,
    rejectAtMm: null,
    limitSource: null,
    gaugeErrorMm: 0.01,
    stations: [],
  };

  test('is laid out at its position, at a new one, or on a new assembly, and is on the next sheet', async () => {
    const { machineId, strip } = shop;
    const asked = { machineId, assemblyId: strip.assemblyId, assemblyName: null, by: 'Bo', point };
    await program.ask(pointAdd, { ...asked, positionId: strip.positionId, position: null });
    const position = { item: 7, name: 'Ram pin', safety: false };
    await program.ask(pointAdd, { ...asked, positionId: null, position });
    await program.ask(pointAdd, { ...asked, assemblyId: null, assemblyName: 'Drawbar', positionId: null, position });
    const { rows } = await program.ask(stripDownSheet, { machineId });
    expect(rows.map(({ assembly, item, position: at, point: name }) => [assembly, item, at, name])).toEqual([
      ['Small hitch', 1, 'Strip top', 'thickness'],
      ['Small hitch', 1, 'Strip top', 'diameter'],
      ['Small hitch', 2, 'Hook pin', 'diameter'],
      ['Small hitch', 7, 'Ram pin', 'diameter'],
      ['Drawbar', 7, 'Ram pin', 'diameter'],
    ]);
    // as old as the parts beside it
    expect(rows.slice(0, 4).map(({ pointId }) => lifeOf(pointId).fittedMachineHours)).toEqual([0, 0, 0, 0]);
    expect(lifeOf(rows[4]!.pointId).fittedMachineHours).toBeNull();
    await program.ask(machineRead, { machineId });
  });

  test('twice at one position, on another machine’s assembly, or with a limit on the wrong side, is refused', async () => {
    const { machineId, strip, pin } = shop;
    const asked = { machineId, assemblyId: strip.assemblyId, assemblyName: null, positionId: null, by: 'Bo', point };
    expect(await fault(pointAdd, { ...asked, positionId: pin.positionId, position: null })).toMatchObject({
      code: 'point-twice',
    });
    const named = { item: 9, name: 'strip TOP', safety: false };
    expect(await fault(pointAdd, { ...asked, position: named })).toMatchObject({ code: 'position-twice' });
    const position = { item: 9, name: 'Ram pin', safety: false };
    expect(await fault(pointAdd, { ...asked, assemblyId: 99, position })).toMatchObject({ code: 'unknown-assembly' });
    expect(await fault(pointAdd, { ...asked, positionId: 99, position: null })).toMatchObject({
      code: 'unknown-position',
    });
    expect(await fault(pointAdd, { ...asked, position, point: { ...point, renewAtMm: 26 } })).toMatchObject({
      path: 'point.renewAtMm',
    });
    expect(await fault(pointAdd, { ...asked, position: null })).toMatchObject({ path: 'positionId' });
    expect(await fault(pointAdd, { ...asked, assemblyName: 'Drawbar', position })).toMatchObject({
      path: 'assemblyId',
    });
  });
});
