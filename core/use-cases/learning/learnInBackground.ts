import { Worker } from 'node:worker_threads';
import type { ClassPrior } from '../../fit/classPrior.ts';
import type { ShopLearning } from '../../fit/learnShop.ts';
import { learnShop } from '../../fit/learnShop.ts';
import type { ModelSettings } from '../../fit/modelSettings.ts';
import type { WearSeries } from '../../series/wearSeries.ts';

/** What a learning rests on, as it crosses to the thread. */
export type LearnFrom = {
  parts: readonly WearSeries[];
  priors: readonly (readonly [string, ClassPrior])[];
  settings: ModelSettings;
};

/** Beside this file as it stands; beside the one file of the built program under the same name. */
const WORKER = new URL(import.meta.url.endsWith('.ts') ? './learnWorker.ts' : './learnWorker.js', import.meta.url);

/**
 * Learns the shop's classes in a thread of its own, so that whoever asks meanwhile is answered. The thread keeps no program
 * alive. Where no thread can be started, it is learned here.
 */
export function learnInBackground(from: LearnFrom): Promise<ShopLearning> {
  return new Promise((resolve) => {
    const here = () => resolve(learnShop(from.parts, new Map(from.priors), from.settings));
    const worker = new Worker(WORKER, { workerData: from });
    worker.unref();
    worker.once('message', (learned: ShopLearning) => resolve(learned));
    worker.once('error', here);
  });
}
