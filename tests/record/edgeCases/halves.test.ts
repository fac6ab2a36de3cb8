import { writeFileSync } from 'node:fs';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { entriesList, entriesUndoLast } from '#core/contract/entries.ts';
import { exchangeExportFolder, exchangeRestoreFolder } from '#core/contract/exchange.ts';
import { assemblyHalves, assemblyMove, assemblyMoveHalf } from '#core/contract/machine.ts';
import { stripDownRead, stripDownSwap } from '#core/contract/oldSheets.ts';
import { recordBringIn } from '#core/contract/record.ts';
import { findingAdd, stripDownSave, stripDownSheet } from '#core/contract/stripDown.ts';
import { filesOfZip } from '#core/exchange/zipFiles.ts';
import { orRefuse } from '#core/outcome.ts';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import { settled, typedSize } from '#renderer/screens/strip-down/typedSize.ts';
import { aHitchInHalves, aShopWithAHitch, aSize } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';
import { anEmptyShop } from '#tests/support/laidOnce.ts';

let program: Program;
beforeEach(() => {
  program = aProgram('2026-11-09');
});
afterEach(() => {
  expect(program.defects).toEqual([]);
  program.end();
});

type Hitch = Awaited<ReturnType<typeof aHitchInHalves>>;

/** Two tractors with hitches of one kind: one at 1000 h on 10 Jan 2022, the other at 5000 h. */
async function twoHitches(): Promise<{ one: Hitch; other: Hitch }> {
  await aShopWithAHitch(program);
  const dial = (dialHours: number) => ({ takenOn: '2022-01-10', dialHours, estimate: false, saidBy: 'Bo' });
  return {
    one: await aHitchInHalves(program, 'Tarrow 90', dial(1000)),
    other: await aHitchInHalves(program, 'Harrod 118', dial(5000)),
  };
}

const stripDown = ({ machineId }: Hitch, takenOn: string, dialHours: number, pointId: number, sizeMm: number) =>
  program.ask(stripDownSave, {
    machineId,
    takenOn,
    dialHours,
    fitter: 'Bo',
    note: '',
    sizes: [aSize(pointId, sizeMm, 'front')],
    renewals: [],
    findings: [],
    dialSure: false,
  });

/** The carriers change places on 1 Feb 2024, at 2000 h and 6500 h. */
const exchange = (one: Hitch, other: Hitch) =>
  program.ask(assemblyMoveHalf, {
    positionIds: one.carrier,
    takenOn: '2024-02-01',
    dialHours: 2000,
    toAssemblyId: other.assemblyId,
    toDialHours: 6500,
    theirs: 'in-exchange',
  });

const pointOn = async (hitch: Hitch, pointId: number) =>
  (await hitch.sheet()).points.find((point) => point.pointId === pointId);

describe('9 half a hitch swapped from another machine', () => {
  test('9 the history follows the part, with dates on each machine', async () => {
    const { one, other } = await twoHitches();
    await stripDown(one, '2023-01-10', 1500, one.strip.pointId, 11.6);
    await exchange(one, other);
    expect(await pointOn(one, one.strip.pointId)).toBeUndefined();
    await stripDown(other, '2025-02-01', 7000, one.strip.pointId, 11.1);

    const strip = await pointOn(other, one.strip.pointId);
    expect(strip?.assemblyId).toBe(other.assemblyId);
    // 2000 h on the first tractor, and 500 h on the second since
    expect(strip?.visits.map(({ takenOn, partHours }) => [takenOn, partHours])).toEqual([
      ['2023-01-10', 1500],
      ['2025-02-01', 2500],
    ]);
    // the frame stayed where it was, and the other carrier came: 6500 h on its own tractor
    const first = await one.sheet();
    expect(first.points.map(({ pointId }) => pointId)).toContain(one.latch.pointId);
    expect(first.points.map(({ pointId }) => pointId)).toContain(other.strip.pointId);
    expect(first.points.every(({ assemblyId }) => assemblyId === one.assemblyId)).toBe(true);
    const sheet = await program.ask(stripDownSheet, { machineId: one.machineId });
    expect(sheet.rows.map(({ pointId, assemblyId }) => [pointId, assemblyId])).toContainEqual([
      other.strip.pointId,
      one.assemblyId,
    ]);
    // the dials read then are readings of their machines
    expect(first.dialRows.map(({ takenOn, dialHours }) => [takenOn, dialHours])).toContainEqual(['2024-02-01', 2000]);
    const second = await other.sheet();
    expect(second.dialRows.map(({ takenOn, dialHours }) => [takenOn, dialHours])).toContainEqual(['2024-02-01', 6500]);
  });

  test('9 a finding at the half goes with it, one on the frame stays', async () => {
    const { one, other } = await twoHitches();
    const crack = {
      kind: 'crack' as const,
      severity: 'do-not-use' as const,
      note: '',
      takenOn: '2024-01-10',
      by: 'Bo',
    };
    await program.ask(findingAdd, { ...crack, assemblyId: one.assemblyId, positionId: one.strip.positionId });
    await exchange(one, other);
    expect((await one.sheet()).findings).toEqual([]);
    expect((await other.sheet()).findings).toMatchObject([
      { machineId: other.machineId, assemblyId: other.assemblyId, positionId: one.strip.positionId },
    ]);
    expect((await pointOn(other, one.strip.pointId))?.role).toBe('stop');
  });

  test('9 to the shelf and on to another machine: hours stand still on the shelf', async () => {
    const { one, other } = await twoHitches();
    const move = { positionIds: one.carrier, dialHours: null, toDialHours: null, theirs: null };
    await program.ask(assemblyMoveHalf, { ...move, takenOn: '2023-01-10', dialHours: 1500, toAssemblyId: null });
    const halves = await program.ask(assemblyHalves, { assemblyId: other.assemblyId });
    expect(halves.shelf).toMatchObject([{ group: 'carrier', since: '2023-01-10', last: { machine: 'Tarrow 90' } }]);
    expect(halves.halves.map(({ group, positions }) => [group, positions.length])).toEqual([
      ['carrier', 2],
      ['frame', 1],
    ]);
    await expect(
      program.ask(assemblyMoveHalf, { ...move, takenOn: '2025-01-10', toAssemblyId: other.assemblyId }),
    ).rejects.toThrow('half-is-there');
    await program.ask(assemblyMoveHalf, {
      ...move,
      takenOn: '2025-01-10',
      toAssemblyId: other.assemblyId,
      toDialHours: 7000,
      theirs: 'shelf',
    });
    await stripDown(other, '2026-01-10', 7400, one.strip.pointId, 11);
    expect((await pointOn(other, one.strip.pointId))?.visits.map(({ partHours }) => partHours)).toEqual([1900]);
    const theirs = await pointOn(other, other.strip.pointId);
    expect(theirs?.forecast.cautions).toContain('on-the-shelf');
  });

  test('9 the half goes on with the assembly it is in now', async () => {
    const { one, other } = await twoHitches();
    await exchange(one, other);
    await program.ask(assemblyMove, {
      assemblyId: other.assemblyId,
      takenOn: '2025-02-01',
      dialHours: 7000,
      toMachineId: null,
      toDialHours: null,
    });
    const strip = await pointOn(other, one.strip.pointId);
    expect(strip?.forecast.partHours).toBe(2500);
    expect(strip?.forecast.cautions).toContain('on-the-shelf');
  });

  test('9 taken back, everything is as it was; the history names the move', async () => {
    const { one, other } = await twoHitches();
    await stripDown(one, '2023-01-10', 1500, one.strip.pointId, 11.6);
    const before = [await one.sheet(), await other.sheet()];
    await exchange(one, other);
    const { entries, undoableEntryId } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
    expect(entries[0]).toMatchObject({
      what: 'assembly/moveHalf',
      rows: { halves: 4, dialReadings: 2 },
      machineCount: 2,
    });
    await program.ask(entriesUndoLast, { entryId: undoableEntryId!, by: 'Bo' });
    expect([await one.sheet(), await other.sheet()]).toEqual(before);
  });

  test('9 old sheets and files brought in later find the part that was there on their day', async () => {
    const { one, other } = await twoHitches();
    await exchange(one, other);
    const sizes = (rows: string[][]) =>
      [['machine', 'assembly', 'position', 'point', 'station', 'date', 'dial_hours', 'size_mm', 'event'], ...rows]
        .map((row) => row.join(','))
        .join('\n');
    const row = (machine: string, on: string, dial: string, size: string) => [
      machine,
      'Pick-up hitch',
      '"Slide strip, top front"',
      'thickness',
      'front',
      on,
      dial,
      size,
      'as-found',
    ];
    const file = sizes([
      row('Tarrow 90', '2023-01-10', '1500', '11.5'),
      row('Tarrow 90', '2025-01-10', '2400', '11.2'),
      row('Harrod 118', '2025-01-10', '6900', '11.1'),
    ]);
    const bring = (dryRun: boolean) =>
      program.ask(recordBringIn, {
        files: [{ name: 'sizes.csv', base64: Buffer.from(file).toString('base64') }],
        dryRun,
      });
    expect((await bring(false)).faults).toEqual([]);
    const sizesOf = (pointId: number) =>
      loadShopLife(program.context.record!)
        .points.find((point) => point.pointId === pointId)
        ?.sizes.map(({ sizeMm }) => sizeMm);
    expect(sizesOf(one.strip.pointId)).toEqual([11.5, 11.1]);
    expect(sizesOf(other.strip.pointId)).toEqual([11.2]);
    // once more, and nothing comes twice
    expect((await bring(true)).brought).toMatchObject({ sizes: 0 });
  });

  test('9 taken out and brought back whole, it says the same; the shop files alone tell no wrong past', async () => {
    const { one, other } = await twoHitches();
    await stripDown(one, '2023-01-10', 1500, one.strip.pointId, 11.6);
    await exchange(one, other);
    await stripDown(other, '2025-02-01', 7000, one.strip.pointId, 11.1);
    const { zipBase64 } = await program.ask(exchangeExportFolder, { toFolder: null });
    const fresh = aProgram('2026-11-09');
    try {
      const whole = join(fresh.folder, 'out.zip');
      writeFileSync(whole, Buffer.from(zipBase64!, 'base64'));
      await fresh.ask(exchangeRestoreFolder, { from: { path: whole, fileId: null } });
      expect(loadShopLife(fresh.context.record!)).toEqual(loadShopLife(program.context.record!));
      await anEmptyShop(fresh);
      const files = orRefuse(filesOfZip(Buffer.from(zipBase64!, 'base64')))
        .filter(({ name }) => !name.includes('/'))
        .map(({ name, bytes }) => ({ name, base64: Buffer.from(bytes).toString('base64') }));
      expect((await fresh.ask(recordBringIn, { files, dryRun: false })).faults).toEqual([]);
      const strip = loadShopLife(fresh.context.record!).points.find(
        ({ item, machineId, sizes }) => item === 1 && machineId > 0 && sizes.length > 0,
      );
      expect(strip?.sizes.map(({ takenOn, sizeMm }) => [takenOn, sizeMm])).toEqual([['2025-02-01', 11.1]]);
      expect(strip?.fittedMachineHours).toBeNull();
    } finally {
      fresh.end();
    }
  });

  test('9 refuses what cannot be: part of a half, another kind, a day before its last move', async () => {
    const { one, other } = await twoHitches();
    const { rows } = await program.ask(stripDownSheet, { machineId: 1 });
    const asked = {
      positionIds: one.carrier,
      takenOn: '2024-02-01',
      dialHours: null,
      toAssemblyId: other.assemblyId,
      toDialHours: null,
      theirs: 'in-exchange' as const,
    };
    const refused = async (change: object) =>
      (await program.answer(assemblyMoveHalf, { ...asked, ...change })) as { fault?: { code: string; path?: string } };
    expect((await refused({ positionIds: one.carrier.slice(1) })).fault?.path).toBe('positionIds');
    expect((await refused({ positionIds: [one.latch.positionId, ...one.carrier] })).fault?.path).toBe('positionIds');
    expect((await refused({ positionIds: [99_999] })).fault?.code).toBe('unknown-position');
    expect((await refused({ toAssemblyId: rows[0]!.assemblyId })).fault?.code).toBe('other-kind');
    expect((await refused({ toAssemblyId: one.assemblyId })).fault?.code).toBe('already-there');
    expect((await refused({ takenOn: '2026-12-01' })).fault?.path).toBe('takenOn');
    await exchange(one, other);
    expect((await refused({ takenOn: '2024-01-31', toAssemblyId: one.assemblyId })).fault?.path).toBe('takenOn');
  });
});

describe('12 left and right swapped on the sheet', () => {
  test('12 the sizes change places as corrections: who, why and the old figures stay; undo gives them back', async () => {
    const { draft, strip, pin } = await aShopWithAHitch(program);
    const [front, rear] = ['front', 'rear'].map((station) => ({ pointId: strip.pointId, station }));
    const sizes = [aSize(strip.pointId, 11.6, 'front'), aSize(strip.pointId, 11.1, 'rear'), aSize(pin.pointId, 29.8)];
    const { stripDownId } = await program.ask(stripDownSave, { ...draft('2025-02-01', 2400), sizes, dialSure: false });
    const kept = () =>
      loadShopLife(program.context.record!)
        .points.flatMap((point) => point.sizes)
        .map(({ station, sizeMm, parked }) => [station, sizeMm, parked]);
    const asked = { stripDownId, pairs: [{ one: front!, other: rear! }], reason: 'seen from the front', by: 'Ada' };
    expect(await program.ask(stripDownSwap, asked)).toMatchObject({ moved: 2, parked: 0 });
    expect(kept()).toEqual([
      ['front', 11.1, false],
      ['rear', 11.6, false],
      ['', 29.8, false],
    ]);
    const read = await program.ask(stripDownRead, { stripDownId });
    expect(read.sizes.map(({ sizeMm, was }) => [sizeMm, was.map((old) => [old.sizeMm, old.reason])])).toEqual([
      [11.1, [[11.6, 'seen from the front']]],
      [11.6, [[11.1, 'seen from the front']]],
      [29.8, []],
    ]);
    const { entries } = await program.ask(entriesList, { beforeEntryId: null, limit: 1 });
    expect(entries[0]).toMatchObject({ what: 'stripDown/swap', madeBy: 'Ada', rows: { sizesPutRight: 2 } });
    await program.ask(entriesUndoLast, { entryId: entries[0]!.entryId, by: 'Ada' });
    expect(kept().map(([, sizeMm]) => sizeMm)).toEqual([11.6, 11.1, 29.8]);
  });

  test('12 between left and right points of one kind, and one odd in its new place is questioned there', async () => {
    const { one } = await twoHitches();
    const sizes = [aSize(one.strip.pointId, 11.6, 'front'), aSize(one.latch.pointId, 31.8)];
    const { stripDownId } = await program.ask(stripDownSave, {
      ...{ machineId: one.machineId, takenOn: '2025-02-01', dialHours: 2400, fitter: 'Bo', note: '' },
      ...{ sizes, renewals: [], findings: [], dialSure: false },
    });
    const place = (pointId: number, station: string) => ({ pointId, station });
    const pairs = [{ one: place(one.strip.pointId, 'front'), other: place(one.latch.pointId, '') }];
    expect(await program.ask(stripDownSwap, { stripDownId, pairs, reason: '', by: 'Bo' })).toMatchObject({
      moved: 2,
      parked: 1,
    });
  });
});

describe('17 decimal comma and unit as typed', () => {
  test.each(['50,2', '50.2 mm', '50,2mm', ' 50.20 '])(
    '17 "%s" typed is 50.2 mm, echoed as the shop writes it',
    (text) => {
      expect(typedSize(text, '.')).toEqual({ state: 'size', sizeMm: 50.2 });
      expect(settled(text, 2, ',')).toBe('50,20');
      expect(settled(text, 2, '.')).toBe('50.20');
    },
  );

  test('17 what could be read two ways is left as typed, and is no size', () => {
    expect(typedSize('1.050,2', '.')).toEqual({ state: 'not-a-size', why: 'two-decimal-marks' });
    expect(settled('1.050,2', 2, ',')).toBe('1.050,2');
  });

  test.each([
    ['comma', ';', '50,2', '49,8 mm'],
    ['point', ',', '50.2', '49.8 mm'],
  ])(
    '17 a file with decimal %s, with and without its unit, brings the same sizes',
    async (_, delimiter, first, second) => {
      await aShopWithAHitch(program);
      const csv = (rows: string[][]) => rows.map((row) => row.join(delimiter)).join('\n');
      const files = {
        'machines.csv': csv([['machine'], ['Loader']]),
        'points.csv': csv([
          ['machine', 'assembly', 'position', 'point', 'part_class', 'wears', 'new_size_mm', 'gauge_error_mm'],
          ['Loader', 'Arms', 'Pin', 'diameter', 'Greased pin', 'down', first, first.replace(/.*(.)2$/, '0$102')],
        ]),
        'sizes.csv': csv([
          ['machine', 'assembly', 'position', 'point', 'date', 'size_mm', 'event'],
          ['Loader', 'Arms', 'Pin', 'diameter', '2024-02-01', second, 'as-found'],
        ]),
      };
      const account = await program.ask(recordBringIn, {
        files: Object.entries(files).map(([name, text]) => ({ name, base64: Buffer.from(text).toString('base64') })),
        dryRun: false,
      });
      expect(account.faults).toEqual([]);
      const pin = loadShopLife(program.context.record!).points.find(({ assembly }) => assembly === 'Arms');
      expect([pin?.limits[0]?.newSizeMm, pin?.sizes[0]?.sizeMm, pin?.gaugeErrorMm]).toEqual([50.2, 49.8, 0.02]);
    },
  );
});
