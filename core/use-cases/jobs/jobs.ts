import { basename, resolve } from 'node:path';
import { Worker } from 'node:worker_threads';
import type { JobAsk, JobState, jobsCancel, jobsStart, jobsState } from '../../contract/jobs.ts';
import type { Handler } from '../../contract/operation.ts';
import { RefusedError } from '../../outcome.ts';
import { type Context, recordOf } from '../context.ts';
import { fileInHand } from '../givenFiles.ts';
import { ranOutOfMemory } from '../ranOutOfMemory.ts';
import { ownersOfSlips } from '../recall/winterSlips.ts';
import { threadFile } from '../threadFile.ts';
import { YOUNG_HEAP_MB } from '../threadHeap.ts';
import type { Job, JobWord } from './jobWork.ts';

const WORKER = threadFile('jobWorker', import.meta.url);

/** A sheet of a million rows with what it is fitted to takes about 2 GB. */
const MOST_HEAP_MB = 6000;
/** Machines go through a forecast a few at a time: with room for more it would only be cleared later. */
const MOST_FORECAST_HEAP_MB = 1000;
/** Work heeds a cancel between its steps; where a step takes longer than this, its thread is ended [ms]. */
const CANCEL_WAIT_MS = { 'bring-in-sheet': 3000, 'winter-slips': 3000, plan: 20_000, 'forecast-shop': 3000 } as const;
/** Ended work is remembered so long as no more than so many came after it. */
const MOST_REMEMBERED = 20;

type Running = { state: JobState; cancel: Int32Array; worker: Worker; ended: Promise<void> };

type Jobs = {
  last: number;
  jobs: Map<string, Running>;
  /** a person broke the forecasting of the shop off, or it came to grief: it begins again when a person asks for it */
  heldOff: HeldOff | null;
};
/** What it came to grief on; null: a person broke it off. */
export type HeldOff = { fault: JobState['fault'] };
const jobsOf = new WeakMap<Context, Jobs>();

function started(context: Context): Jobs {
  const known = jobsOf.get(context) ?? { last: 0, jobs: new Map<string, Running>(), heldOff: null };
  jobsOf.set(context, known);
  return known;
}

export const jobsStartHandler: Handler<typeof jobsStart, Context> = (context, { job }) => {
  const state = startJob(context, job);
  if (!state) throw new RefusedError({ code: 'job-running' });
  if (job.kind === 'forecast-shop') started(context).heldOff = null;
  return state;
};

/** @returns null: other work is running. Forecasting gives way: it goes on when the list is next asked for */
function startJob(context: Context, job: JobAsk): JobState | null {
  const all = started(context);
  const others = [...all.jobs.values()].filter(({ state }) => state.state === 'running');
  if (others.some(({ state }) => state.kind !== 'forecast-shop' || state.kind === job.kind)) return null;
  for (const { cancel } of others) Atomics.store(cancel, 0, 1);
  const jobId = `job-${all.last + 1}`;
  // what brings one forecasting down would bring down the next: it does not begin again by itself
  const running = start(jobId, jobOf(context, job), ({ kind, fault }) => {
    if (kind === 'forecast-shop') all.heldOff = { fault };
  });
  all.last++;
  all.jobs.set(jobId, running);
  const [oldest] = all.jobs.keys();
  if (all.jobs.size > MOST_REMEMBERED && oldest !== undefined) all.jobs.delete(oldest);
  return { ...running.state };
}

/** The forecasting of the whole shop beside the program: running, held off, or waiting for other work to end. */
export type ForecastingBeside = { jobId: string; share: number } | HeldOff | 'waiting';

/** Begins it where it does not run and nothing holds it off. */
export function startForecasting(context: Context): ForecastingBeside {
  const { jobs, heldOff } = started(context);
  const states = [...jobs.values()].map(({ state }) => state);
  const running = states.find(({ kind, state }) => kind === 'forecast-shop' && state === 'running');
  if (!running && heldOff) return heldOff;
  const state = running ?? startJob(context, { kind: 'forecast-shop' });
  return state ? { jobId: state.jobId, share: state.share } : 'waiting';
}

export const jobsStateHandler: Handler<typeof jobsState, Context> = (context, { jobId }) => ({
  ...runningOf(context, jobId).state,
});

/** Answers once the work has ended: broken off, or done before that could be. */
export const jobsCancelHandler: Handler<typeof jobsCancel, Context> = async (context, { jobId }) => {
  const running = runningOf(context, jobId);
  if (running.state.state !== 'running') return { ...running.state };
  if (running.state.kind === 'forecast-shop') started(context).heldOff = { fault: null };
  Atomics.store(running.cancel, 0, 1);
  const slow = setTimeout(() => void running.worker.terminate(), CANCEL_WAIT_MS[running.state.kind]);
  await running.ended;
  clearTimeout(slow);
  return { ...running.state };
};

function runningOf(context: Context, jobId: string): Running {
  const running = started(context).jobs.get(jobId);
  if (!running) throw new RefusedError({ code: 'unknown-job', facts: { path: 'jobId' } });
  return running;
}

function jobOf(context: Context, asked: JobAsk): Job {
  const recordPath = recordOf(context).path;
  if (recordPath === ':memory:') throw new RefusedError({ code: 'job-needs-file' });
  const now = { recordPath, asOf: context.today(), madeAt: context.now(), cancel: new SharedArrayBuffer(4) };
  if (asked.kind === 'forecast-shop') return { kind: asked.kind, ...now };
  if (asked.kind === 'winter-slips') {
    ownersOfSlips(recordOf(context), now.asOf, asked.ask.machineIds); // refused before it begins
    return { kind: asked.kind, ask: asked.ask, ...now };
  }
  if (asked.kind === 'plan') return { kind: asked.kind, ask: asked.ask, ...now };
  const { file, ...ask } = asked.ask;
  const path = file.path === null ? null : resolve(file.path);
  const given = path === null ? fileInHand(context, file) : { name: basename(path), bytes: null };
  return { kind: asked.kind, file: { ...given, path }, ask, ...now };
}

/** @param cameToGrief told when it ended by what nobody foresaw */
function start(jobId: string, job: Job, cameToGrief: (state: JobState) => void): Running {
  const state: JobState = {
    jobId,
    kind: job.kind,
    state: 'running',
    step: 'reading',
    share: 0,
    account: null,
    slips: null,
    plan: null,
    fault: null,
  };
  const cancel = new Int32Array(job.cancel);
  const maxOldGenerationSizeMb = job.kind === 'forecast-shop' ? MOST_FORECAST_HEAP_MB : MOST_HEAP_MB;
  const resourceLimits = { maxOldGenerationSizeMb, maxYoungGenerationSizeMb: YOUNG_HEAP_MB };
  const worker = new Worker(WORKER, { workerData: job, resourceLimits });
  // a program that closes does not wait for it: what is half done is not kept
  worker.unref();
  const failed = (thrown: Error) => {
    Object.assign(state, { state: 'refused', fault: faultOf(thrown, job.kind, maxOldGenerationSizeMb) });
    cameToGrief(state);
  };
  worker.on('message', (word: JobWord) => heard(state, word));
  worker.on('error', failed);
  const ended = new Promise<void>((done) => {
    worker.once('exit', () => {
      if (state.state === 'running' && Atomics.load(cancel, 0) !== 0) state.state = 'cancelled';
      else if (state.state === 'running') failed(new Error('the work ended without a word'));
      done();
    });
  });
  return { state, cancel, worker, ended };
}

function faultOf(thrown: Error, kind: Job['kind'], mostMb: number): JobState['fault'] {
  if (ranOutOfMemory(thrown)) return { code: 'job-out-of-memory', facts: { kind, mostMb } };
  const detail = `${thrown.name}: ${thrown.message}`.split('\n')[0]!.slice(0, 300);
  return { code: 'failed', facts: { operation: 'jobs/start', detail } };
}

function heard(state: JobState, word: JobWord): void {
  switch (word.word) {
    case 'at':
      Object.assign(state, { step: word.step, share: word.share });
      return;
    case 'done':
      Object.assign(state, { state: 'done', share: 1, ...word.result });
      return;
    case 'cancelled':
      state.state = 'cancelled';
      return;
    case 'refused': {
      const { path, ...facts } = word.refusal.facts ?? {};
      const fault = { code: word.refusal.code, ...(typeof path === 'string' && { path }), facts };
      Object.assign(state, { state: 'refused', fault });
    }
  }
}
