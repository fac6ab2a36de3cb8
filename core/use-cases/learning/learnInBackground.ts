import { Worker } from 'node:worker_threads';
import type { ShopLife } from '../../shop/shopLife.ts';
import type { Day } from '../../units/day.ts';
import { type Learning, learnClasses, seriesOfShop } from '../../way.ts';

/** What a learning rests on, as it crosses to the thread. */
export type LearnFrom = { life: ShopLife; asOf: Day };

/** Walks the shop afresh, habit of use and all, and learns its classes. */
export const learnAfresh = ({ life, asOf }: LearnFrom): Learning => learnClasses(seriesOfShop(life, asOf));

/** Beside this file as it stands; beside the one file of the built program under the same name. */
const WORKER = new URL(import.meta.url.endsWith('.ts') ? './learnWorker.ts' : './learnWorker.js', import.meta.url);

/**
 * Learns in a thread of its own, so that whoever asks meanwhile is answered. The thread keeps no program alive. Where no
 * thread can be started, it is learned here.
 */
export function learnInBackground(from: LearnFrom): Promise<Learning> {
  return new Promise((resolve) => {
    const worker = new Worker(WORKER, { workerData: from });
    worker.unref();
    worker.once('message', (learned: Learning) => resolve(learned));
    worker.once('error', () => resolve(learnAfresh(from)));
  });
}
