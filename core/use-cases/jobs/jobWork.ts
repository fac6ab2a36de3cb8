import type { SheetAccount } from '../../contract/exchange.ts';
import type { PlanAccount } from '../../contract/plan.ts';
import type { MadeSlips, WinterSlips } from '../../contract/recall.ts';
import { type Refusal, RefusedError } from '../../outcome.ts';
import { readWholeFile } from '../../record/folderOnDisk.ts';
import { openRecord } from '../../record/openRecord.ts';
import type { OpenRecord } from '../../record/recordFile.ts';
import type { Day } from '../../units/day.ts';
import type { AskedSheet } from '../bringInSheet.ts';
import { openContext } from '../context.ts';
import type { PlanAsk } from '../plan/makePlan.ts';

/** All that long work needs, as it crosses to its thread. */
export type Job = JobKind & {
  recordPath: string;
  asOf: Day;
  madeAt: string;
  /** one number, not 0 once the work is to be broken off */
  cancel: SharedArrayBuffer;
};
export type JobKind =
  | SheetJob
  | { kind: 'winter-slips'; ask: WinterSlips }
  | { kind: 'plan'; ask: PlanAsk }
  | { kind: 'forecast-shop' };
type SheetJob = {
  kind: 'bring-in-sheet';
  file: { name: string; path: string | null; bytes: Uint8Array | null };
  ask: AskedSheet;
};

/** What came of it: of each kind its own. */
export type JobResult = { account: SheetAccount | null; slips: MadeSlips | null; plan: PlanAccount | null };

/** What the thread tells: how far it is, and once how it ended. */
export type JobWord =
  | { word: 'at'; step: string; share: number }
  | { word: 'done'; result: JobResult }
  | { word: 'cancelled' }
  | { word: 'refused'; refusal: Refusal };

class JobCancelled extends Error {}

/**
 * Carries long work out on a connection of its own to the record. Whatever breaks it off, nothing of it is kept: its one
 * transaction ends unfinished. A plan already looking for its weeks is kept, and says that it was stopped. Each kind of work
 * loads what it needs when it begins: what prints PDFs takes longer to load than a small shop to forecast.
 */
export async function jobWork(job: Job, say: (word: JobWord) => void): Promise<void> {
  const asked = new Int32Array(job.cancel);
  const isCancelled = () => Atomics.load(asked, 0) !== 0;
  const told = (step: string, share: number): void => {
    if (isCancelled()) throw new JobCancelled();
    say({ word: 'at', step, share });
  };
  // cancelled while it looks for weeks, a plan is kept as far as it came
  const searched = (share: number): boolean => {
    say({ word: 'at', step: 'weeks', share });
    return !isCancelled();
  };
  // how it ended is told once its record is closed: whoever hears it may put another in its place
  say(await ended(job, told, searched));
}

async function ended(job: Job, told: Told, searched: Searched): Promise<JobWord> {
  const record = openRecord(job.recordPath);
  try {
    const none = { account: null, slips: null, plan: null };
    return { word: 'done', result: { ...none, ...(await resultOf(record, job, told, searched)) } };
  } catch (thrown) {
    if (thrown instanceof JobCancelled) return { word: 'cancelled' };
    if (thrown instanceof RefusedError) return { word: 'refused', refusal: thrown.refusal };
    throw thrown;
  } finally {
    record.close();
  }
}

type Told = (step: string, share: number) => void;
type Searched = (share: number) => boolean;

async function resultOf(record: OpenRecord, job: Job, told: Told, searched: Searched): Promise<Partial<JobResult>> {
  switch (job.kind) {
    case 'plan': {
      const { makePlan } = await import('../plan/makePlan.ts');
      return { plan: await makePlan(record, job, { told, searched }) };
    }
    case 'forecast-shop': {
      // nothing comes of it but forecasts kept: those kept before it is broken off hold
      const { forecastShopOf } = await import('./forecasting.ts');
      forecastShopOf(job.recordPath, job.asOf, (share) => told('forecasting', share));
      return {};
    }
    case 'winter-slips':
      return { slips: await winterSlips(job, told) };
    case 'bring-in-sheet':
      return { account: await sheetBroughtIn(record, job, told) };
  }
}

async function winterSlips({ recordPath, asOf, ask, madeAt }: Job & { kind: 'winter-slips' }, told: Told) {
  const { makeWinterSlips } = await import('../recall/winterSlips.ts');
  const context = openContext({ recordPath, asOf, onlyLooks: true });
  try {
    return await makeWinterSlips(context, ask, madeAt, told);
  } finally {
    context.close();
  }
}

async function sheetBroughtIn(record: OpenRecord, job: Job & SheetJob, told: Told): Promise<SheetAccount> {
  told('reading', 0);
  const { bringInSheet } = await import('../bringInSheet.ts');
  const { name, path, bytes } = job.file;
  const file = { name, bytes: bytes ?? readWholeFile(path ?? '') };
  const made = { madeAt: job.madeAt, madeBy: 'brought in', what: 'exchange/bringInSheet' };
  return await bringInSheet(record, file, job.ask, made, { asOf: job.asOf, told });
}
