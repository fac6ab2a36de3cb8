import { Worker, type WorkerOptions } from 'node:worker_threads';
import { afterAll, beforeAll, expect, test, vi } from 'vitest';
import { jobsCancel, jobsStart, jobsState } from '#core/contract/jobs.ts';
import { aShopWithAHitch } from '#tests/support/aHitch.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';

/** In place of the threads of long work: one that never looks up, as a step that takes minutes does. */
vi.mock('node:worker_threads', async (original) => {
  const real = await original<typeof import('node:worker_threads')>();
  class HeedlessWorker extends real.Worker {
    constructor(file: URL, options: WorkerOptions = {}) {
      if (options.workerData?.kind) super('for (;;);', { ...options, eval: true });
      else super(file, options);
    }
  }
  return { ...real, Worker: HeedlessWorker };
});

let program: Program;
let machineId: number;
beforeAll(async () => {
  program = aProgram('2026-11-09');
  ({ machineId } = await aShopWithAHitch(program));
});
afterAll(() => program.end());

/** How long the work has to come to the end of its step before its thread is ended [ms]. */
test.each([
  ['winter-slips', 3_000],
  ['plan', 20_000],
] as const)(
  '%s that heeds no cancel for %i ms is ended where it stands, and nothing of it is kept',
  async (kind, patienceMs) => {
    const before = program.rows();
    const job =
      kind === 'plan'
        ? { kind, ask: { by: 'Bo', whatIf: null } }
        : { kind, ask: { machineIds: [machineId], noteAsSent: true, by: 'Bo' } };
    const { jobId } = await program.ask(jobsStart, { job });
    const ended = vi.spyOn(Worker.prototype, 'terminate');
    vi.useFakeTimers({ toFake: ['setTimeout', 'clearTimeout'] });
    try {
      const answered = program.ask(jobsCancel, { jobId });
      await vi.advanceTimersByTimeAsync(patienceMs - 1);
      expect(ended).not.toHaveBeenCalled();
      expect(await program.ask(jobsState, { jobId })).toMatchObject({ state: 'running' });
      await vi.advanceTimersByTimeAsync(1);
      expect(await answered).toMatchObject({ state: 'cancelled', slips: null, plan: null, fault: null });
    } finally {
      vi.useRealTimers();
      vi.restoreAllMocks();
    }
    expect(program.rows()).toBe(before);
  },
);
