import { setTimeout as wait } from 'node:timers/promises';
import fc from 'fast-check';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { entriesList, entriesUndoLast } from '#core/contract/entries.ts';
import { forecastAll, forecastWhy } from '#core/contract/forecast.ts';
import { hoursAdd, hoursMeter, hoursPutRight, hoursShare, hoursSource } from '#core/contract/hours.ts';
import { machineRead, machinesList, machineTakeIn } from '#core/contract/machine.ts';
import type { AskOf } from '#core/contract/operation.ts';
import { slipPreview } from '#core/contract/slip.ts';
import { sizePutRight, stripDownKeep, stripDownSave, stripDownSheet } from '#core/contract/stripDown.ts';
import { machineHoursOn } from '#core/reading/machineHours.ts';
import { tablesOnRecord } from '#core/record/allRows.ts';
import { rowsOfEntries } from '#core/record/entryStore.ts';
import { forecastCommand } from '#core/shells/forecast.ts';
import { doorOf } from '#core/shells/openProgram.ts';
import { addDays, day } from '#core/units/day.ts';
import { openContext } from '#core/use-cases/context.ts';
import { seriesNow } from '#core/use-cases/seriesNow.ts';
import { demoRecord, fillEveryTable } from '#tests/support/aFullRecord.ts';
import { aShopWithAHitch, aSize, aTakeIn } from '#tests/support/aHitch.ts';
import { aProgram, aProgramAt, type Program } from '#tests/support/aProgram.ts';
import { caseCount } from '#tests/support/counts.ts';
import { pdfPages } from '#tests/support/pdfText.ts';

/** Cases of the trade in which hours are the awkward part, through the real record and its one door. */
const TODAY = '2026-11-09';
/** Rows that come in only with others which the history counts: positions with their points, remarks with what was brought in. */
const TOLD_BY_OTHERS = ['positions', 'import_remarks'];
let program: Program;
let shop: Awaited<ReturnType<typeof aShopWithAHitch>>;
beforeEach(async () => {
  program = aProgram(TODAY);
  shop = await aShopWithAHitch(program); // read at 1000 h on 2022-01-10
});
afterEach(() => {
  expect(program.defects).toEqual([]);
  program.end();
});

type Add = AskOf<typeof hoursAdd>;
const reading = (takenOn: string, dialHours: number | null, change: Partial<Add> = {}): Add => ({
  machineId: shop.machineId,
  takenOn,
  kind: 'reading',
  dialHours,
  newDialHours: null,
  errorHours: null,
  saidBy: 'farmer',
  sure: false,
  ...change,
});
const add = (takenOn: string, dialHours: number | null, change: Partial<Add> = {}) =>
  program.ask(hoursAdd, reading(takenOn, dialHours, change));
const measure = (takenOn: string, dialHours: number | null, stripMm: number) =>
  program.ask(stripDownSave, {
    ...shop.draft(takenOn, dialHours),
    sizes: [aSize(shop.strip.pointId, stripMm, 'front')],
    dialSure: false,
  });
const machineHours = (on: string, machineId = shop.machineId) =>
  machineHoursOn(seriesNow(program.context).hours.ofMachine(machineId)!.line, day(on))!;
const stripRow = async () =>
  (await program.ask(forecastAll, {})).rows.find(({ position }) => position === 'Strip top')!;

describe('1 hour meter replaced, new reads 0', () => {
  test('1 hour meter replaced, new reads 0: machine hours go on from the old one, and so do part hours', async () => {
    await add('2024-01-10', 4120);
    await add('2024-02-10', 4150, { kind: 'new-meter', newDialHours: 0 });
    await add('2026-11-09', 1200);
    expect(machineHours(TODAY)).toMatchObject({ hours: 5350, sdHours: 0 });
    expect(await stripRow()).toMatchObject({ machineHours: 5350, partHours: 5350 });
    const { slip } = await program.ask(slipPreview, { machineId: shop.machineId });
    expect(slip.dialHours).toBe(1200); // the farmer reads the meter that is in place
  });

  test('1 hour meter replaced, the old one’s last figure not known: bridged by the machine’s use, and wide', async () => {
    await add('2024-01-10', 4120);
    await add('2025-01-10', null, { kind: 'new-meter', newDialHours: 0 });
    await add('2026-11-09', 1200);
    const { hours, sdHours } = machineHours(TODAY);
    expect(hours).toBeGreaterThan(4120 + 1200 + 300);
    expect(sdHours).toBeGreaterThan(100);
    expect((await shop.sheet()).hours.sdHours).toBeCloseTo(sdHours, 6);
  });

  test('1 hour meter set to nought: said as a new meter with the last figure it showed', async () => {
    await add('2024-01-10', 4120);
    await add('2024-01-10', 4120, { kind: 'new-meter', newDialHours: 0 });
    await add('2026-11-09', 900);
    expect(machineHours(TODAY).hours).toBe(5020);
  });

  test('1 hour meter in another unit: a clock’s hours count by a factor, whose reason stands with it', async () => {
    const clock = { hoursPerDialHour: 0.8, reason: 'runs with the ignition; 8 engine hours in 10 by the diary' };
    await add('2024-02-10', 4150, { kind: 'new-meter', newDialHours: 0, clock, sure: true });
    await add('2026-11-09', 1000);
    expect(machineHours(TODAY).hours).toBeCloseTo(4950, 9);
    const { meter, dialRows } = await shop.sheet();
    expect(meter).toMatchObject({ hoursPerDialHour: 0.8, clockReason: clock.reason });
    expect(dialRows.at(-2)).toMatchObject({ hoursPerDialHour: 0.8, reason: clock.reason });
    // a better figure takes its place; the old one stays visible
    const better = { machineId: shop.machineId, meterDigits: 5, hoursBefore: null, by: 'Bo' };
    await program.ask(hoursMeter, { ...better, hoursPerDialHour: 0.9, reason: 'by the fuel' });
    expect(machineHours(TODAY).hours).toBeCloseTo(5050, 9);
    expect((await shop.sheet()).dialRows.filter(({ kind }) => kind === 'new-meter')).toMatchObject([
      { hoursPerDialHour: 0.8, superseded: true },
      { hoursPerDialHour: 0.9, superseded: false, madeBy: 'Bo', reason: 'by the fuel' },
    ]);
    const again = await program.answer(hoursMeter, { ...better, hoursPerDialHour: 0.9, reason: 'by the fuel' });
    expect(again).toMatchObject({ fault: { code: 'nothing-changed' } });
    // the farmer's page speaks the clock: an hour of it is 0.9 of the machine's
    const { slip } = await program.ask(slipPreview, { machineId: shop.machineId });
    const atLimit = (await stripRow()).machineHoursAtLimit.middle!;
    const row = slip.axis!.rows.find(({ label }) => label.includes('Strip'))!;
    expect(row.dialHours.middle).toBeCloseTo(1000 + (atLimit - 5050) / 0.9, 6);
  });

  test('1 hour meter whose clock is another from the first reading on: that reading is of the clock too', async () => {
    await add('2026-11-09', 3000);
    const said = { machineId: shop.machineId, meterDigits: 5, hoursBefore: null, by: 'Bo' };
    await program.ask(hoursMeter, { ...said, hoursPerDialHour: 0.5, reason: 'clock hours' });
    expect(machineHours('2022-01-10').hours).toBe(500);
    expect(machineHours(TODAY).hours).toBe(1500);
  });
});

test('2 rollover 9999 to 0: offered when the fall is near the full scale, and counted on once said', async () => {
  const said = { machineId: shop.machineId, meterDigits: 4, hoursBefore: null, hoursPerDialHour: 1, by: 'Bo' };
  await program.ask(hoursMeter, { ...said, reason: 'four wheels on its face' });
  await add('2025-12-01', 9960, { sure: true });
  const asked = await add('2026-02-10', 20);
  expect(asked).toMatchObject({
    kept: false,
    question: { code: 'dial-went-back', facts: { rolloverPlausible: true, fullScaleHours: 10_000 } },
  });
  expect(asked.question?.choices).toContain('rollover');
  expect(await add('2026-02-10', 20, { kind: 'rollover' })).toMatchObject({ kept: true, machineHours: 10_020 });
  expect(machineHours('2026-02-10')).toMatchObject({ hours: 10_020, kind: 'read' });
});

describe('3 meter dead, unknown hours', () => {
  test('3 meter dead, unknown hours: an estimate from diary or fuel is marked as one, and wide', async () => {
    await add('2024-01-10', 4120);
    await add('2026-01-10', 5200, { kind: 'estimate', errorHours: 200, saidBy: 'fuel bills' });
    // what the dead dial still shows says nothing
    await add('2026-06-01', 4120, { sure: true });
    const { hours, dialRows } = await shop.sheet();
    expect(hours).toMatchObject({ estimated: true });
    expect(hours.machineHours).toBeGreaterThan(5200);
    expect(hours.sdHours).toBeGreaterThanOrEqual(200);
    expect(dialRows.find(({ kind }) => kind === 'estimate')).toMatchObject({ saidBy: 'fuel bills', sdHours: 200 });
  });

  test('3 meter dead, unknown hours: so many a year are reckoned till a new one is fitted, which counts on from there', async () => {
    await add('2024-01-10', 4120);
    const is = { kind: 'yearly' as const, from: '2024-01-10', hoursPerYear: 600, errorShare: 0.3 };
    const said = { machineId: shop.machineId, hoursSourceId: null, reason: 'meter dead', by: 'Bo' };
    await program.ask(hoursSource, { ...said, is });
    expect(machineHours('2026-01-09').hours).toBeCloseTo(5320, 0);
    const doubt = machineHours('2026-01-09').sdHours;
    expect(doubt).toBeGreaterThan(200);
    await program.ask(hoursSource, { ...said, is: { kind: 'own', from: '2026-01-10' }, reason: 'new meter' });
    await add('2026-01-10', null, { kind: 'new-meter', newDialHours: 0 });
    await add('2026-11-09', 500);
    expect(machineHours(TODAY)).toMatchObject({ kind: 'read' });
    expect(machineHours(TODAY).hours).toBeCloseTo(machineHours('2026-01-10').hours + 500, 6);
    // the meter knows nothing of the unread years: their doubt stays
    expect(machineHours(TODAY).sdHours).toBeGreaterThanOrEqual(doubt);
  });
});

describe('4 typed ten times too much, or a digit missing', () => {
  test('4 typed 10x: flagged against the last rate, never blocked, put right later with both left in sight', async () => {
    await add('2025-01-10', 2500);
    const asked = await add('2026-01-10', 29_000);
    expect(asked).toMatchObject({
      kept: false,
      question: { code: 'ten-times-off', facts: { likelyDialHours: 2900 } },
    });
    expect(asked.question?.choices).toEqual(expect.arrayContaining(['right-as-read', 'typed-wrong']));
    const { dialReadingId } = await add('2026-01-10', 29_000, { sure: true });
    expect(machineHours('2026-01-10').hours).toBe(29_000);
    const right = { takenOn: '2026-01-10', dialHours: 2900, reason: 'a nought too many', by: 'Bo' };
    await program.ask(hoursPutRight, { dialReadingId: dialReadingId!, ...right });
    expect(machineHours('2026-01-10').hours).toBe(2900);
    expect((await shop.sheet()).dialRows.slice(-2)).toMatchObject([
      { dialHours: 29_000, superseded: true },
      { dialHours: 2900, superseded: false, reason: 'a nought too many', madeBy: 'Bo' },
    ]);
  });

  test('4 missing digit: a fall that ten times would mend is said so', async () => {
    await add('2025-01-10', 2500);
    expect(await add('2025-12-01', 290)).toMatchObject({
      kept: false,
      question: { code: 'dial-went-back', facts: { tenTimesFits: true } },
    });
  });
});

test('5 reading lower than last but date later: asked new meter, typo, other machine; kept aside when somebody is sure', async () => {
  await add('2025-01-10', 2500);
  const before = machineHours(TODAY).hours;
  const asked = await add('2025-06-10', 1900);
  expect(asked).toMatchObject({ kept: false, question: { code: 'dial-went-back' } });
  expect(asked.question?.choices).toEqual(['typed-wrong', 'new-meter', 'rollover', 'right-as-read']);
  expect(await add('2025-06-10', 1900, { sure: true })).toMatchObject({ kept: true });
  const { dialRows } = await shop.sheet();
  expect(dialRows.at(-1)).toMatchObject({ dialHours: 1900, cautions: ['dial-went-back'], machineHours: null });
  expect(machineHours(TODAY).hours).toBe(before); // stored, and out of the machine's hours till it is put right
});

describe('15 same date two readings, or a back-dated sheet found later', () => {
  test('15 same date two readings: in the order they were entered, and both count', async () => {
    await add('2026-05-01', 3000);
    await add('2026-05-01', 3006);
    expect(machineHours('2026-05-01').hours).toBe(3006);
    expect((await shop.sheet()).dialRows.filter(({ takenOn }) => takenOn === '2026-05-01')).toHaveLength(2);
  });

  test('15 back-dated sheet found later: every forecast is as if it had been there all along', async () => {
    await measure('2024-05-01', 2000, 11.2);
    await measure('2026-05-01', 3100, 10.6);
    const inOrder = await stripRow();
    const late = aProgram(TODAY);
    try {
      const other = await aShopWithAHitch(late);
      const sheet = (takenOn: string, dialHours: number, sizeMm: number) =>
        late.ask(stripDownSave, {
          ...other.draft(takenOn, dialHours),
          sizes: [aSize(other.strip.pointId, sizeMm, 'front')],
          dialSure: false,
        });
      await sheet('2026-05-01', 3100, 10.6);
      const without = (await late.ask(forecastAll, {})).rows[0]!;
      await sheet('2024-05-01', 2000, 11.2);
      const row = (await late.ask(forecastAll, {})).rows.find(({ position }) => position === 'Strip top')!;
      expect(row).toEqual(inOrder);
      expect(row.hoursLeft).not.toEqual(without.hoursLeft);
    } finally {
      late.end();
    }
  });
});

describe('19 machine on two sites or hired out', () => {
  const share = (from: string | null, is: number, workType: string) =>
    program.ask(hoursShare, {
      machineId: shop.machineId,
      workShareId: null,
      is: { from, share: is, workType },
      reason: '',
      by: 'Bo',
    });

  test('19 hired out: the share changes in time, and each stretch counts by its own', async () => {
    await measure('2024-01-10', 3000, 11);
    await measure(TODAY, 5000, 10.5);
    const whole = await stripRow();
    await share(null, 0.8, 'silage');
    await share('2024-01-10', 0.1, 'spraying');
    const { workShare, workType, workShares } = await shop.sheet();
    expect({ workShare, workType }).toEqual({ workShare: 0.1, workType: 'spraying' });
    expect(workShares).toMatchObject([
      { from: null, share: 0.8, workType: 'silage', madeBy: 'Bo', superseded: false },
      { from: '2024-01-10', share: 0.1, workType: 'spraying', superseded: false },
    ]);
    // part hours stay machine hours; worked: 3000 x 0.8 + 2000 x 0.1 = 2600 h
    const row = await stripRow();
    expect(row.partHours).toBe(whole.partHours);
    const point = seriesNow(program.context).life.points[0]!;
    expect(seriesNow(program.context).ofPoint(point).workedHoursNow).toBeCloseTo(2600, 6);
    // 1.5 mm in 2600 worked hours: what is left lasts ten times as many machine hours while a tenth of them is work
    expect(row.hoursLeft.middle!).toBeGreaterThan(5 * whole.hoursLeft.middle!);
  });

  test('19 results are turned back at the present share: half the share from today on, twice the hours left', async () => {
    await measure('2024-01-10', 3000, 11);
    await add(TODAY, 5000);
    const whole = await stripRow();
    await share(TODAY, 0.5, 'hired out');
    const half = await stripRow();
    for (const at of ['low', 'middle', 'high'] as const)
      expect(half.hoursLeft[at]! / whole.hoursLeft[at]!).toBeCloseTo(2, 6);
    expect(half.ratePer1000hMm.middle! / whole.ratePer1000hMm.middle!).toBeCloseTo(0.5, 6);
    expect(half.partHours).toBe(whole.partHours);
  });

  test('19 a share said wrongly is put right or struck; what stood before stays visible, and undo brings it back', async () => {
    await add(TODAY, 5000);
    const { workShareId } = await share('2025-01-10', 0.3, 'yard');
    const before = await stripRow();
    const right = { machineId: shop.machineId, workShareId, reason: 'looked it up', by: 'Ann' };
    await program.ask(hoursShare, { ...right, is: { from: '2025-02-10', share: 0.4, workType: 'yard' } });
    const { workShares, workShare } = await shop.sheet();
    expect(workShare).toBe(0.4);
    expect(workShares.map((row) => [row.share, row.superseded, row.madeBy, row.reason])).toEqual([
      [0.3, true, 'Bo', ''],
      [0.4, false, 'Ann', 'looked it up'],
    ]);
    const taken = await program.answer(hoursShare, {
      ...right,
      workShareId: null,
      is: { from: '2025-02-10', share: 0.5, workType: '' },
    });
    expect(taken).toMatchObject({ fault: { code: 'day-taken', facts: { from: '2025-02-10' } } });
    expect(await program.answer(hoursShare, { ...right, is: null })).toMatchObject({
      fault: { code: 'already-put-right' },
    });
    const { entries } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
    expect(entries[0]).toMatchObject({ what: 'hours/share', madeBy: 'Ann', rows: { workShares: 1 } });
    await program.ask(entriesUndoLast, { entryId: entries[0]!.entryId, by: 'Ann' });
    expect(await stripRow()).toEqual(before);
  });
});

describe('20 clock or power lost on the workshop computer', () => {
  test('20 power lost: what was saved and what was only typed are there when the program opens again', async () => {
    await measure('2026-05-01', 3000, 11);
    const typed = { ...shop.draft('2026-11-01', 3400), sizes: [aSize(shop.strip.pointId, 10.7, 'front')] };
    await program.ask(stripDownKeep, typed);
    // the file as it lies on the disk, with nobody having closed it
    const after = aProgramAt(program.context.record!.path, TODAY);
    try {
      expect((await after.ask(machineRead, { machineId: shop.machineId })).stripDowns).toHaveLength(1);
      expect((await after.ask(stripDownSheet, { machineId: shop.machineId })).draft).toMatchObject(typed);
    } finally {
      after.end();
    }
  });

  test('20 clock lost: a computer that thinks it is 2001 refuses a later day by name, and loses nothing', async () => {
    await measure('2026-05-01', 3000, 11);
    const before = program.rows();
    const wrong = aProgramAt(program.context.record!.path, '2001-01-01');
    try {
      expect(await wrong.answer(hoursAdd, reading(TODAY, 3200))).toMatchObject({
        ok: false,
        fault: { code: 'not-as-expected', path: 'takenOn', facts: { expected: 'a day up to today, 2001-01-01' } },
      });
    } finally {
      wrong.end();
    }
    expect(program.rows()).toBe(before);
    expect(await add(TODAY, 3200)).toMatchObject({ kept: true, machineHours: 3200 });
  });

  test('20 clock that ran wrong while something was entered: rows keep the order they were entered in', async () => {
    const context = openContext({
      recordPath: program.context.record!.path,
      clock: { today: () => day(TODAY), now: () => '2001-01-01T00:00:00.000Z' },
    });
    const answer = await doorOf(context, () => {})('hours/add', reading('2026-05-01', 3000));
    context.close();
    expect(answer.ok).toBe(true);
    await add('2026-05-01', 3005);
    expect(machineHours('2026-05-01').hours).toBe(3005);
    const { entries } = await program.ask(entriesList, { beforeEntryId: null, limit: 2 });
    expect(entries.map(({ madeAt }) => madeAt < '2002')).toEqual([false, true]);
  });
});

describe('machines without a meter', () => {
  const aTrailer = (is: AskOf<typeof hoursSource>['is'], name = 'Trailer') =>
    program.ask(machineTakeIn, {
      ...aTakeIn(
        { name, meterDigits: null, hoursSource: is },
        { takenOn: '2022-01-10', dialHours: 400, estimate: true, saidBy: 'farmer' },
      ),
    });
  const pulled = (share: number, from = '2022-01-10', pullerId = shop.machineId) =>
    ({ kind: 'pulled', from, pullerId, share, errorShare: null }) as const;

  test('take their hours from the machine that pulls them: list, page and slip speak its dial', async () => {
    await add('2024-01-10', 2000);
    await add(TODAY, 4000);
    const { machineId } = await aTrailer(pulled(0.25));
    expect(machineHours('2024-01-10', machineId).hours).toBeCloseTo(650, 6);
    expect(machineHours(TODAY, machineId).hours).toBeCloseTo(1150, 6);
    const { machines } = await program.ask(machinesList, {});
    const line = machines.find(({ name }) => name === 'Trailer')!;
    expect(line.hours).toMatchObject({ dialMachine: { name: 'Tractor 1' }, dialHours: 4000, estimated: true });
    expect(line.first).not.toBeNull();
    const sheet = await program.ask(machineRead, { machineId });
    expect(sheet.hours.sdHours).toBeGreaterThan(50);
    expect(sheet.hoursSources).toMatchObject([{ kind: 'pulled', puller: { name: 'Tractor 1' }, share: 0.25 }]);
    const tractor = await shop.sheet();
    expect(tractor.pulls).toEqual([{ machineId, name: 'Trailer' }]);
    expect(sheet.hoursPerYear.middle! / tractor.hoursPerYear.middle!).toBeCloseTo(0.25, 2);

    const why = await program.ask(forecastWhy, { pointId: sheet.points[0]!.pointId });
    expect(why.steps.find(({ code }) => code === 'part-hours')?.facts).toMatchObject({
      puller: 'Tractor 1',
      pullerShare: 0.25,
      machineSdHours: sheet.hours.sdHours,
    });
    const bench = await program.ask(stripDownSheet, { machineId });
    expect(bench).toMatchObject({ dialHours: null, dialMachine: 'Tractor 1' });

    const { slip, pdfBase64 } = await program.ask(slipPreview, { machineId });
    expect(slip).toMatchObject({ hoursAre: 'dial', dialMachine: 'Tractor 1', dialHours: 4000 });
    const row = sheet.points[0]!.forecast;
    const onSlip = slip.axis!.rows.find(({ label }) => label.includes('Strip'))!;
    expect(onSlip.dialHours.low).toBeCloseTo(4000 + row.hoursLeft.low! / 0.25, 6);
    const printed = (await pdfPages(Buffer.from(pdfBase64, 'base64'))).map(({ text }) => text).join(' ');
    expect(printed.replace(/\s+/g, ' ')).toContain('meter of Tractor 1');
  });

  test('take them from hours a year where nothing pulls them that is known', async () => {
    const { machineId } = await aTrailer({ kind: 'yearly', from: '2022-01-10', hoursPerYear: 200, errorShare: 0.4 });
    expect(machineHours('2026-01-09', machineId).hours).toBeCloseTo(1200, 0);
    const { hours, hoursPerYear } = await program.ask(machineRead, { machineId });
    expect(hours).toMatchObject({ dialHours: null, dialMachine: null, estimated: true });
    expect(hoursPerYear.middle).toBeCloseTo(200, 0);
    expect((await program.ask(slipPreview, { machineId })).slip.hoursAre).toBe('machine');
  });

  test('a share may change, a correction moves the forecast, and undo brings back the very same', async () => {
    await add(TODAY, 4000);
    const { machineId } = await aTrailer(pulled(0.25));
    await program.ask(hoursSource, {
      machineId,
      hoursSourceId: null,
      is: pulled(0.5, '2024-01-10'),
      reason: '',
      by: 'Bo',
    });
    const { rows } = await program.ask(forecastAll, {});
    const { hoursSources } = await program.ask(machineRead, { machineId });
    const last = hoursSources.at(-1)!.hoursSourceId;
    await program.ask(hoursSource, { machineId, hoursSourceId: last, is: null, reason: 'was hired then', by: 'Bo' });
    expect(machineHours(TODAY, machineId).hours).toBeCloseTo(400 + 0.25 * 3000, 6);
    expect((await program.ask(forecastAll, {})).rows).not.toEqual(rows);
    const { entries } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
    expect(entries[0]?.rows).toMatchObject({ hoursSources: 1, others: 0 });
    await program.ask(entriesUndoLast, { entryId: entries[0]!.entryId, by: 'Bo' });
    expect((await program.ask(forecastAll, {})).rows).toEqual(rows);
  });

  test('a ring of machines that pull each other is refused, whatever the days', async () => {
    const { machineId } = await aTrailer(pulled(0.25));
    const dolly = await aTrailer(pulled(1, '2022-01-10', machineId), 'Dolly');
    const before = program.rows();
    const ring = await program.answer(hoursSource, {
      machineId: shop.machineId,
      hoursSourceId: null,
      is: pulled(1, '2025-01-01', dolly.machineId),
      reason: '',
      by: '',
    });
    expect(ring).toMatchObject({
      ok: false,
      fault: { code: 'pulled-in-a-ring', facts: { machines: 'Tractor 1, Dolly, Trailer' } },
    });
    const itself = await program.answer(hoursSource, {
      machineId,
      hoursSourceId: null,
      is: pulled(1, '2025-01-01', machineId),
      reason: '',
      by: '',
    });
    expect(itself).toMatchObject({ ok: false, fault: { code: 'pulled-in-a-ring' } });
    expect(program.rows()).toBe(before);
  });
});

test('a past forecast is rebuilt from what was known then: a size put right since, a sheet found since, shares said since', async () => {
  await add('2024-01-10', 2000);
  await measure('2026-05-01', 3100, 11.4);
  const trailer = await program.ask(
    machineTakeIn,
    aTakeIn(
      { name: 'Trailer', meterDigits: null, hoursSource: null },
      { takenOn: '2022-01-10', dialHours: 400, estimate: true, saidBy: '' },
    ),
  );
  const path = program.context.record!.path;
  const run = (...args: string[]) => {
    let out = '';
    const said: string[] = [];
    const code = forecastCommand(
      ['--record', path, '--as-of', TODAY, '--json', ...args],
      (text) => (out += text),
      (line) => said.push(line),
    );
    return { code, out, said };
  };
  const old = run().out;
  const known = new Date().toISOString();
  await wait(5);

  const { points } = await shop.sheet();
  const { sizeId } = points[0]!.visits.at(-1)!.stations[0]!;
  await program.ask(sizePutRight, { sizeId, sizeMm: 10.4, reason: 'misread the vernier', by: 'Bo' });
  await measure('2024-06-01', 2200, 11.1);
  const source = {
    kind: 'pulled' as const,
    from: '2022-01-10',
    pullerId: shop.machineId,
    share: 0.4,
    errorShare: null,
  };
  await program.ask(hoursSource, {
    machineId: trailer.machineId,
    hoursSourceId: null,
    is: source,
    reason: '',
    by: 'Bo',
  });
  await program.ask(hoursShare, {
    machineId: shop.machineId,
    workShareId: null,
    is: { from: '2025-01-01', share: 0.5, workType: 'yard' },
    reason: '',
    by: 'Bo',
  });
  const now = run().out;
  expect(now).not.toBe(old);
  expect(run('--as-known', known).out).toBe(old);

  // what was taken back since stood then
  const between = new Date().toISOString();
  await wait(5);
  const { undoableEntryId } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
  await program.ask(entriesUndoLast, { entryId: undoableEntryId!, by: 'Bo' });
  expect(run().out).not.toBe(now);
  expect(run('--as-known', between).out).toBe(now);
  expect(run('--as-known', known).out).toBe(old);

  expect(run('--as-known', 'yesterday')).toMatchObject({ code: 1, out: '' });
  expect(run('--as-known', 'yesterday').said[0]).toContain('a day or a moment');
  expect(JSON.parse(run('--as-known', '2020-01-01').out)).toEqual([]);
});

test('the history counts the rows of every table whose rows belong to entries, also of one that has no word of its own', async () => {
  const record = demoRecord();
  fillEveryTable(record);
  const owned = tablesOnRecord(record)
    .filter(
      ({ columns, name }) => columns.some((column) => column.name === 'entry_id') && !TOLD_BY_OTHERS.includes(name),
    )
    .map(({ name }) => name);
  const entryIds = record.sqlite.prepare('SELECT id FROM entries').pluck().all() as number[];
  const counted = rowsOfEntries(record, entryIds).filter(({ sort }) => sort !== 'sizesPutRight');
  // a forecast kept with a slip belongs to no entry
  const inTables = owned.map(
    (name) => record.sqlite.prepare(`SELECT count(entry_id) FROM ${name}`).pluck().get() as number,
  );
  expect(owned).toEqual(expect.arrayContaining(['hours_sources', 'joint_members', 'sizes']));
  expect(counted.reduce((sum, { rows }) => sum + rows, 0)).toBe(inTables.reduce((sum, rows) => sum + rows, 0));
});

test('machine hours never fall, of tractor and trailer, whatever is entered and in whatever order', async () => {
  const { machineId: trailerId } = await program.ask(
    machineTakeIn,
    aTakeIn({ name: 'Trailer', meterDigits: null, hoursSource: null }, null),
  );
  const someDay = fc.integer({ min: 0, max: 1700 }).map((days) => addDays(day('2022-01-11'), days) as string);
  const who = fc.constantFrom(shop.machineId, trailerId);
  const dial = fc.integer({ min: 0, max: 12_000 });
  const act = fc.oneof(
    fc.record({
      what: fc.constant('dial' as const),
      machineId: who,
      takenOn: someDay,
      kind: fc.constantFrom('reading' as const, 'estimate' as const, 'new-meter' as const, 'rollover' as const),
      dialHours: dial,
    }),
    fc.record({
      what: fc.constant('source' as const),
      from: someDay,
      is: fc.oneof(
        fc.record({ kind: fc.constant('pulled' as const), share: fc.double({ min: 0.01, max: 1, noNaN: true }) }),
        fc.record({ kind: fc.constant('yearly' as const), hoursPerYear: fc.integer({ min: 1, max: 2000 }) }),
        fc.record({ kind: fc.constant('own' as const) }),
      ),
    }),
    fc.record({ what: fc.constant('undo' as const) }),
  );
  await fc.assert(
    fc.asyncProperty(fc.array(act, { minLength: 1, maxLength: 6 }), async (acts) => {
      for (const one of acts) {
        if (one.what === 'dial') {
          const { machineId, takenOn, kind, dialHours } = one;
          const newDialHours = kind === 'new-meter' ? 0 : null;
          await add(takenOn, dialHours, { machineId, kind, newDialHours, sure: true });
        } else if (one.what === 'source') {
          const errorShare = null;
          const is =
            one.is.kind === 'pulled'
              ? { ...one.is, from: one.from, pullerId: shop.machineId, errorShare }
              : one.is.kind === 'yearly'
                ? { ...one.is, from: one.from, errorShare }
                : { ...one.is, from: one.from };
          const answer = await program.answer(hoursSource, {
            machineId: trailerId,
            hoursSourceId: null,
            is,
            reason: '',
            by: '',
          });
          if (!answer.ok) expect(answer.fault.code).toBe('day-taken');
        } else {
          const { undoableEntryId } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
          if (undoableEntryId !== null && undoableEntryId > 3)
            await program.ask(entriesUndoLast, { entryId: undoableEntryId, by: '' });
        }
      }
      for (const machineId of [shop.machineId, trailerId]) {
        const { line } = seriesNow(program.context).hours.ofMachine(machineId)!;
        let before = 0;
        for (let days = 0; days < 2000; days += 23) {
          const now = machineHoursOn(line, addDays(day('2022-01-01'), days));
          if (!now) continue;
          expect(now.hours).toBeGreaterThanOrEqual(before - 1e-6);
          expect(now.sdHours).toBeGreaterThanOrEqual(0);
          before = now.hours;
        }
      }
    }),
    { numRuns: caseCount(600) },
  );
});
