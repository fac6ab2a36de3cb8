import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { hoursAdd, hoursPutRight } from '#core/contract/hours.ts';
import { assemblyMove, machineRead, machineTakeIn } from '#core/contract/machine.ts';
import type { AskOf } from '#core/contract/operation.ts';
import { stripDownSave } from '#core/contract/stripDown.ts';
import { loadShopLife } from '#core/record/loadShopLife.ts';
import { aShopWithAHitch, aSize, aTakeIn } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';

let program: Program;
let shop: Awaited<ReturnType<typeof aShopWithAHitch>>;
beforeEach(async () => {
  program = aProgram('2026-11-09');
  shop = await aShopWithAHitch(program); // read at 1000 h on 2022-01-10
});
afterEach(() => {
  expect(program.defects).toEqual([]);
  program.end();
});

type Add = AskOf<typeof hoursAdd>;
const add = (takenOn: string, dialHours: number | null, change: Partial<Add> = {}) =>
  program.ask(hoursAdd, {
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
const dials = () =>
  loadShopLife(program.context.record!).machines[0]!.dialEvents.map(({ kind, dialHours, parked }) => [
    kind,
    dialHours,
    parked,
  ]);

describe('hours as they are read', () => {
  test('a meter replaced goes on counting from where the old one stopped', async () => {
    await add('2024-01-10', 4120);
    expect(await add('2024-02-10', 4150, { kind: 'new-meter', newDialHours: 0 })).toMatchObject({
      kept: true,
      machineHours: 4150,
    });
    expect(await add('2025-02-10', 600)).toMatchObject({ kept: true, machineHours: 4750 });
  });

  test('a rollover is offered when the fall is near the full scale, and kept when said', async () => {
    await add('2026-01-10', 9980, { sure: true });
    const asked = await add('2026-02-10', 20);
    expect(asked).toMatchObject({
      kept: false,
      question: { code: 'dial-went-back', choices: expect.arrayContaining(['rollover', 'new-meter']) },
    });
    expect(dials()).toHaveLength(2);
  });

  test('ten times too much is asked about, kept when somebody is sure, never blocked', async () => {
    await add('2024-01-10', 2000);
    expect(await add('2024-06-10', 22_500)).toMatchObject({
      kept: false,
      question: { code: expect.stringMatching(/rise-over|ten-times/) },
    });
    expect(await add('2024-06-10', 22_500, { sure: true })).toMatchObject({ kept: true, question: null });
    expect(dials().at(-1)).toEqual(['reading', 22_500, false]);
  });

  test('a dial that fell is kept aside when somebody is sure: it is in the record and in no forecast', async () => {
    expect(await add('2024-01-10', 500, { sure: true })).toMatchObject({
      kept: true,
      question: { code: 'dial-went-back' },
    });
    expect(dials()).toEqual([
      ['reading', 1000, false],
      ['reading', 500, true],
    ]);
    expect((await shop.sheet()).dialRows).toHaveLength(2);
  });

  test('an estimate carries its error, and a dead meter is bridged', async () => {
    expect(await add('2024-01-10', 2000, { kind: 'estimate', errorHours: 200 })).toMatchObject({ kept: true });
    expect(await add('2024-06-01', null, { kind: 'new-meter', newDialHours: 3 })).toMatchObject({ kept: true });
    const { hours } = await shop.sheet();
    expect(hours.machineHours).toBeGreaterThan(2000);
    expect(hours.sdHours).toBeGreaterThan(50);
  });

  test('a wrong reading is put right: the sizes of its strip-down follow, and the old figure stays visible', async () => {
    const { strip, draft } = shop;
    await program.ask(stripDownSave, {
      ...draft('2026-05-01', 3100),
      sizes: [aSize(strip.pointId, 11, 'front')],
      dialSure: false,
    });
    const { dialRows } = await shop.sheet();
    const wrong = dialRows.find(({ dialHours }) => dialHours === 3100)!.dialReadingId;
    const right = { takenOn: '2026-05-01', dialHours: 3010, reason: 'digits swapped', by: 'Bo' };
    await program.ask(hoursPutRight, { dialReadingId: wrong, ...right });
    expect(loadShopLife(program.context.record!).points[0]?.sizes).toMatchObject([{ dialHours: 3010 }]);
    expect((await shop.sheet()).dialRows.map(({ dialHours, superseded }) => [dialHours, superseded])).toEqual([
      [1000, false],
      [3100, true],
      [3010, false],
    ]);
    const refused = await program.answer(hoursPutRight, { dialReadingId: wrong, ...right });
    expect(refused).toMatchObject({ ok: false, fault: { code: 'already-put-right' } });
  });

  test('a day to come and a missing figure are refused by their names', async () => {
    const before = program.rows();
    const ask = (change: Partial<Add>) =>
      program.answer(hoursAdd, {
        machineId: shop.machineId,
        takenOn: '2026-11-09',
        kind: 'reading',
        dialHours: 5000,
        newDialHours: null,
        errorHours: null,
        saidBy: '',
        sure: true,
        ...change,
      });
    expect(await ask({ takenOn: '2026-11-10' })).toMatchObject({ fault: { path: 'takenOn' } });
    expect(await ask({ dialHours: null })).toMatchObject({ fault: { path: 'dialHours' } });
    expect(await ask({ kind: 'new-meter' })).toMatchObject({ fault: { path: 'newDialHours' } });
    expect(program.rows()).toBe(before);
  });
});

describe('an assembly that moves', () => {
  test('takes its parts, their sizes and their hours with it', async () => {
    const { strip, draft, machineId } = shop;
    await program.ask(stripDownSave, {
      ...draft('2024-05-01', 2000),
      sizes: [aSize(strip.pointId, 11, 'front')],
      dialSure: false,
    });
    const other = await program.ask(machineTakeIn, {
      ...aTakeIn({ name: 'Tractor 2' }, { takenOn: '2022-01-10', dialHours: 500, estimate: false, saidBy: '' }),
      assemblies: [],
    });
    const { assemblyId } = strip;
    await program.ask(assemblyMove, {
      assemblyId,
      takenOn: '2025-05-01',
      dialHours: 2600,
      toMachineId: other.machineId,
      toDialHours: 1500,
    });
    const life = loadShopLife(program.context.record!);
    expect(life.points[0]?.machineId).toBe(other.machineId);
    expect(life.machines.map(({ dialEvents }) => dialEvents.map(({ dialHours }) => dialHours))).toEqual([
      [1000, 2000, 2600],
      [500, 1500],
    ]);
    await add('2026-05-01', 2500, { machineId: other.machineId });
    // 2600 h on the first machine and 1000 h on the second by May 2026, and a little since
    const forecast = (await program.ask(machineRead, { machineId: other.machineId })).points[0]?.forecast;
    expect(forecast?.partHours).toBeGreaterThan(3600);
    expect(forecast?.partHours).toBeLessThan(4400);
    expect((await program.ask(machineRead, { machineId })).points).toEqual([]);

    const refused = await program.answer(assemblyMove, {
      assemblyId,
      takenOn: '2026-06-01',
      dialHours: null,
      toMachineId: other.machineId,
      toDialHours: null,
    });
    expect(refused).toMatchObject({ fault: { code: 'already-there' } });
    const fell = await program.answer(assemblyMove, {
      assemblyId,
      takenOn: '2026-06-01',
      dialHours: 900,
      toMachineId: null,
      toDialHours: null,
    });
    expect(fell).toMatchObject({ fault: { code: 'dial-went-back', path: 'dialHours' } });
  });
});
