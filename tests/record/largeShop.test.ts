import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { jobsCancel, jobsStart, jobsState } from '#core/contract/jobs.ts';
import {
  machineChange,
  machineRead,
  machinesLines,
  machinesList,
  machinesNames,
  machinesOrder,
} from '#core/contract/machine.ts';
import { recallNews, recallRead } from '#core/contract/recall.ts';
import { recordOf } from '#core/use-cases/context.ts';
import { learningSettled } from '#core/use-cases/learning/shopLearning.ts';
import { BENCH_AS_OF } from '#tests/bench/syntheticRecord.ts';
import { layLargeShop } from '#tests/support/aLargeShop.ts';
import { aProgramAt, type Program } from '#tests/support/aProgram.ts';

const MACHINES = 130;

/** Forecasting steps back for everything else a busy computer does. */
vi.setConfig({ testTimeout: 300_000 });

/** One large shop, from the first opening on: each test goes on where the one before it ended. */
const folder = mkdtempSync(join(tmpdir(), 'large-shop-'));
let program: Program;
beforeAll(() => {
  layLargeShop(join(folder, 'shop.hoursandwear'), MACHINES);
  program = aProgramAt(join(folder, 'shop.hoursandwear'), BENCH_AS_OF);
}, 120_000);
afterAll(() => {
  program.end();
  rmSync(folder, { recursive: true, force: true });
});

const order = (find = '') => program.ask(machinesOrder, { find, atOnce: true });
const idsOf = ({ groups }: Awaited<ReturnType<typeof order>>): number[] =>
  groups.flatMap(({ machineIds }) => machineIds);
const keptRows = (): number =>
  recordOf(program.context)
    .sqlite.prepare('SELECT count(*) FROM machine_forecasts WHERE stale = 0')
    .pluck()
    .get() as number;
const wait = (ms: number) => new Promise((resolve) => setTimeout(resolve, ms));

test('at first every machine is there by name, and nothing is forecast while it is learned from', async () => {
  const first = await order();
  expect(first).toMatchObject({
    count: MACHINES,
    older: MACHINES,
    fromPriors: true,
    heldOff: null,
  });
  const [line] = (await program.ask(machinesLines, { machineIds: [7] })).lines;
  expect(line).toMatchObject({ machineId: 7, name: 'Bench 7', group: 'no-forecast', first: null });
  expect(await program.ask(recallNews, {})).toMatchObject({ learning: true, toContact: 0 });
  await learningSettled(program.context);
});

test('forecasting beside the program tells how far it is; cancelled, what was kept holds, and it rests until asked for', async () => {
  const begun = await order();
  expect(begun.forecasting).not.toBeNull();
  while (keptRows() === 0) await wait(5);
  const { jobId } = begun.forecasting!;
  expect(await program.ask(jobsCancel, { jobId })).toMatchObject({ kind: 'forecast-shop', state: 'cancelled' });
  const kept = keptRows();
  expect(kept).toBeGreaterThan(0);
  expect(kept).toBeLessThan(MACHINES);
  expect(await order()).toMatchObject({ older: MACHINES - kept, forecasting: null, heldOff: { fault: null } });
  expect(keptRows()).toBe(kept);
});

test('asked for again it goes on where it was, and the list is then what one by one would give', async () => {
  const { jobId } = await program.ask(jobsStart, { job: { kind: 'forecast-shop' } });
  expect((await order()).heldOff).toBeNull();
  while ((await program.ask(jobsState, { jobId })).state === 'running') await wait(20);
  expect(await program.ask(jobsState, { jobId })).toMatchObject({ state: 'done', share: 1 });
  const whole = await order();
  expect(whole).toMatchObject({ older: 0, forecasting: null, fromPriors: false });
  const { machines } = await program.ask(machinesList, {});
  expect(machines.map(({ machineId }) => machineId)).toEqual(idsOf(whole));
  for (const line of [machines[0]!, machines.at(-1)!]) {
    const { points } = await program.ask(machineRead, { machineId: line.machineId });
    expect(points.find(({ pointId }) => pointId === line.first?.pointId)?.forecast.hoursLeft).toEqual(
      line.first?.hoursLeft,
    );
  }
  const recall = await program.ask(recallRead, { atOnce: true });
  expect(recall.learning).toBe(false);
  expect(recall.toContact.length).toBeGreaterThan(0);
  // asked for by a person it is held off no more: what an entry made old since is forecast again without being asked for
  recordOf(program.context).sqlite.exec('UPDATE machine_forecasts SET stale = 1');
  const later = await order();
  expect(later).toMatchObject({ older: MACHINES, heldOff: null, forecasting: { jobId: expect.any(String) } });
  while ((await program.ask(jobsState, { jobId: later.forecasting!.jobId })).state === 'running') await wait(20);
});

test('news of the recall list holds nobody up: who asks meanwhile is answered first; after an entry it is to be asked again', async () => {
  const answered: string[] = [];
  const news = program.ask(recallNews, {}).finally(() => answered.push('news'));
  await program.ask(machinesNames, {}).finally(() => answered.push('names'));
  const { toContact } = await program.ask(recallRead, { atOnce: true });
  expect(await news).toMatchObject({ learning: false, became: [], toContact: toContact.length });
  expect(answered).toEqual(['names', 'news']);
  const meanwhile = program.ask(recallNews, {});
  const names = { make: 'Bench', model: 'B', serial: 'B-5', builtYear: 2010, note: '' };
  await program.ask(machineChange, { machineId: 5, name: 'Bench 5', ...names });
  expect(await meanwhile).toMatchObject({ learning: true });
});

test('a machine is found by its own names and its owner\u2019s; lines come in the order asked, those not on record left out', async () => {
  expect(idsOf(await order('BENCH 12'))).toEqual(expect.arrayContaining([12, 120, 129]));
  expect(idsOf(await order('hitch holding 77'))).toEqual([77]);
  expect(await order('nobody of this name')).toMatchObject({ count: MACHINES, groups: [] });
  const names = { make: 'Bench', model: 'B', serial: 'B-5', builtYear: 2010, note: '' };
  await program.ask(machineChange, { machineId: 5, name: 'Årsund Ø', ...names });
  expect(idsOf(await order('arsund'))).toEqual([5]);
  const { lines } = await program.ask(machinesLines, { machineIds: [9, 4000, 2] });
  expect(lines.map(({ machineId }) => machineId)).toEqual([9, 2]);
  const { machines } = await program.ask(machinesNames, {});
  expect(
    machines
      .slice(0, 11)
      .map(({ name }) => name)
      .at(-1),
  ).toBe('Bench 11');
});
