import { setImmediate } from 'node:timers/promises';
import type { z } from 'zod';
import type { oldSheetsEnd, oldSheetsProgress } from '../contract/oldSheets.ts';
import type { Handler } from '../contract/operation.ts';
import { writeEntry } from '../record/entry.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { startForecasting } from './jobs/jobs.ts';
import { isLarge } from './learning/heardNow.ts';
import { learningSettled, shopLearning } from './learning/shopLearning.ts';
import { END_BATCH } from './oldSheetsBatch.ts';
import { shopNow } from './shopNow.ts';

type Progress = z.input<(typeof oldSheetsProgress)['zReply']>;

/** How far each open program has come with the forecasts after its last batch. */
const progress = new WeakMap<Context, Progress>();

/** Ends the batch and answers at once; what it taught is learned, and every machine forecast, one after another. */
export const oldSheetsEndHandler: Handler<typeof oldSheetsEnd, Context> = (context, { by }) => {
  const record = recordOf(context);
  writeEntry(record, entryNow(context, END_BATCH, by), () => undefined);
  const state: Progress = { stage: 'learning', done: 0, total: 0 };
  progress.set(context, state);
  void forecastAnew(context, state).catch(() => {
    // another record was opened, or the program is closing: forecasts are then made when they are asked for
    state.stage = 'stopped';
  });
  return { started: true };
};

export const oldSheetsProgressHandler: Handler<typeof oldSheetsProgress, Context> = (context) => {
  recordOf(context);
  return progress.get(context) ?? { stage: 'none', done: 0, total: 0 };
};

async function forecastAnew(context: Context, state: Progress): Promise<void> {
  const { record } = context;
  await setImmediate();
  shopLearning(context, context.today(), true); // the classes begin to learn
  await learningSettled(context);
  if (isLarge(context)) {
    startForecasting(context); // beside the program: nobody waits for so many
    state.stage = 'done';
    return;
  }
  const now = shopNow(context);
  const { machines } = now.shop.life;
  state.stage = 'forecasting';
  state.total = machines.length;
  for (const { machineId } of machines) {
    now.ofMachine(machineId);
    state.done += 1;
    await setImmediate(); // whoever asks meanwhile is answered
    if (context.record !== record) throw new Error('another record was opened');
  }
  state.stage = 'done';
}
