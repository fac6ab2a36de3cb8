import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { WorkerOptions } from 'node:worker_threads';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { jobsStart, jobsState } from '#core/contract/jobs.ts';
import { machineRead, machinesOrder } from '#core/contract/machine.ts';
import { learningSettled } from '#core/use-cases/learning/shopLearning.ts';
import { faultText } from '#renderer/words/faultText.ts';
import { BENCH_AS_OF } from '#tests/bench/syntheticRecord.ts';
import { layLargeShop } from '#tests/support/aLargeShop.ts';
import { aProgramAt, type Program } from '#tests/support/aProgram.ts';

/**
 * Threads get a heap in which not even the program's own code has room, while that is wanted; little of it is young: what outlives
 * its youth all at once must not run past the last reserve the engine has for ending a thread.
 */
const cramped = vi.hoisted(() => ({ now: true }));
vi.mock('node:worker_threads', async (original) => {
  const real = await original<typeof import('node:worker_threads')>();
  const CRAMPED = { maxOldGenerationSizeMb: 10, maxYoungGenerationSizeMb: 4 };
  class CrampedWorker extends real.Worker {
    constructor(file: URL, options: WorkerOptions = {}) {
      super(file, cramped.now ? { ...options, resourceLimits: CRAMPED } : options);
    }
  }
  return { ...real, Worker: CrampedWorker };
});

const MACHINES = 40;
const folder = mkdtempSync(join(tmpdir(), 'cramped-'));
let program: Program;
beforeAll(() => {
  layLargeShop(join(folder, 'shop.hoursandwear'), MACHINES);
  program = aProgramAt(join(folder, 'shop.hoursandwear'), BENCH_AS_OF);
}, 120_000);
afterAll(() => {
  program.end();
  rmSync(folder, { recursive: true, force: true });
});

const order = () => program.ask(machinesOrder, { find: '', atOnce: true });
const endOf = async (jobId: string) => {
  for (;;) {
    const state = await program.ask(jobsState, { jobId });
    if (state.state !== 'running') return state;
    await new Promise((resolve) => setTimeout(resolve, 20));
  }
};
const OUT_OF_MEMORY = { code: 'job-out-of-memory', facts: { mostMb: expect.any(Number) } };

test('a learning that runs out of memory takes nothing with it, and is begun again when asked for', async () => {
  expect(await order()).toMatchObject({ fromPriors: true, older: MACHINES });
  await learningSettled(program.context);
  expect(await order()).toMatchObject({ fromPriors: true, older: MACHINES });
  await learningSettled(program.context);
  cramped.now = false;
  await order();
  await learningSettled(program.context);
}, 60_000);

test('forecasting that runs out of memory says so in words, rests, and goes on once a person asks for it', async () => {
  cramped.now = true;
  const begun = await order();
  expect(begun).toMatchObject({ fromPriors: false, heldOff: null });
  const ended = await endOf(begun.forecasting!.jobId);
  expect(ended).toMatchObject({ state: 'refused', fault: OUT_OF_MEMORY });
  const said = faultText(ended.fault!);
  expect(said.what).toMatch(/memory .*\(\d+(\u2009\d{3})?\u00A0MB\)/);
  expect(said.next).toMatch(/begin it again: it goes on where it was/);
  expect(await order()).toMatchObject({ forecasting: null, heldOff: { fault: OUT_OF_MEMORY }, older: MACHINES });
  expect((await program.ask(machineRead, { machineId: 1 })).points[0]?.forecast.hoursLeft.middle).not.toBeNull();
  cramped.now = false;
  const { jobId } = await program.ask(jobsStart, { job: { kind: 'forecast-shop' } });
  expect(await endOf(jobId)).toMatchObject({ state: 'done' });
  expect(await order()).toMatchObject({ heldOff: null, older: 0 });
  expect(program.defects).toEqual([]);
}, 60_000);

test('other long work that runs out of memory leaves the record as it was', async () => {
  const before = program.rows();
  cramped.now = true;
  const ask = { machineIds: [1, 2], noteAsSent: true, by: 'test' };
  const { jobId } = await program.ask(jobsStart, { job: { kind: 'winter-slips', ask } });
  const ended = await endOf(jobId);
  expect(ended).toMatchObject({ state: 'refused', slips: null, fault: OUT_OF_MEMORY });
  expect(faultText(ended.fault!).next).toMatch(/^Ask for less at once/);
  expect(program.rows()).toBe(before);
}, 60_000);
