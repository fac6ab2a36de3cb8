import { Worker } from 'node:worker_threads';
import type { Moved } from '../../contract/forecastSettings.ts';
import { RefusedError } from '../../outcome.ts';
import { openRecord } from '../../record/openRecord.ts';
import type { ForecastSettings } from '../../shop/forecastSettings.ts';
import type { ShopLife } from '../../shop/shopLife.ts';
import type { Day } from '../../units/day.ts';
import { learnedFrom } from '../../way/learning.ts';
import { movedForecasts } from '../../way/movedForecasts.ts';
import { settingsOf } from '../../way/settingsOf.ts';
import { forecastShop, type Learning, learnClasses, seriesOfShop } from '../../way.ts';

import { ranOutOfMemory } from '../ranOutOfMemory.ts';
import { threadFile } from '../threadFile.ts';
import { YOUNG_HEAP_MB } from '../threadHeap.ts';
import { heardLife } from './heardNow.ts';

/** What a learning rests on, as it crosses to the thread. */
export type LearnFrom = { life: ShopLife; asOf: Day };
/** The same of a large shop, which the thread reads by itself, and what is known already. */
export type LearnFromRecord = { recordPath: string; asOf: Day; known: string | null };
/** The same, settings to be tried on it, and what was learned with those it has. */
export type TryFrom = LearnFrom & { forecastSettings: ForecastSettings; known: Learning | null };

/** Walks the shop afresh, habit of use and all, and learns its classes. */
export const learnAfresh = ({ life, asOf }: LearnFrom): Learning => learnClasses(seriesOfShop(life, asOf));

/** @returns null: nothing the classes rest on has changed */
function learnFromRecord({ recordPath, asOf, known }: LearnFromRecord): Learning | null {
  const shop = seriesOfShop(heardLifeAt(recordPath, asOf), asOf);
  const { fingerprint } = learnedFrom(shop, settingsOf(shop.life));
  return fingerprint === known ? null : learnClasses(shop);
}

/** The record is held no longer than it is read: a backup may be put in its place meanwhile. */
function heardLifeAt(recordPath: string, asOf: Day): ShopLife {
  const record = openRecord(recordPath);
  try {
    return heardLife(record, asOf);
  } finally {
    record.close();
  }
}

/** Forecasts the shop as it is and with other settings; learned again is only what is not known. */
function tryAfresh({ life, asOf, forecastSettings, known }: TryFrom): Moved {
  const points = (of: ShopLife) => forecastShop(of, asOf, known).machines.flatMap((machine) => machine.points);
  return movedForecasts(points(life), points({ ...life, forecastSettings }));
}

/** What the thread does with what it is given. */
export function threadWork(from: ThreadWork): Learning | Moved | null {
  if ('recordPath' in from) return learnFromRecord(from);
  return 'forecastSettings' in from ? tryAfresh(from) : learnAfresh(from);
}

export type ThreadWork = LearnFrom | LearnFromRecord | TryFrom;

/**
 * Learns in a thread of its own, so that whoever asks meanwhile is answered. The thread keeps no program alive. Where no
 * thread can be started, it is learned here.
 * @param unwanted aborted when nobody wants it any more: the thread is ended, and the answer is null
 * @returns null: nothing the classes rest on has changed, or nobody wanted it any more
 * @throws RefusedError job-out-of-memory
 */
export const learnInBackground = (
  from: LearnFrom | LearnFromRecord,
  unwanted?: AbortSignal,
): Promise<Learning | null> => inThread<Learning | null>(from, unwanted);

/** What other settings would move, worked out in a thread of its own. */
export const movedInBackground = (from: TryFrom): Promise<Moved> => inThread<Moved>(from) as Promise<Moved>;

const WORKER = threadFile('learnWorker', import.meta.url);

/** How long a thread that has done its work waits for more [ms]: to start one costs more than to learn a small shop. */
const WAITS_MS = 60_000;
let waiting: { worker: Worker; leaves: NodeJS.Timeout } | null = null;

function inThread<T>(from: ThreadWork, unwanted?: AbortSignal): Promise<T | null> {
  return new Promise((resolve, reject) => {
    if (unwanted?.aborted) return resolve(null);
    const worker = waitingThread() ?? newThread();
    const endUnwanted = () => {
      void worker.terminate();
      resolve(null);
    };
    unwanted?.addEventListener('abort', endUnwanted, { once: true });
    const hereInstead = (why: Error) => {
      unwanted?.removeEventListener('abort', endUnwanted);
      try {
        // what was too much for the thread would be too much here, and take the program with it
        if (ranOutOfMemory(why)) throw new RefusedError({ code: 'job-out-of-memory' });
        resolve(threadWork(from) as T);
      } catch (thrown) {
        reject(thrown); // as when its record is there no more
      }
    };
    worker.once('error', hereInstead);
    worker.once('message', (answer: T) => {
      worker.off('error', hereInstead);
      unwanted?.removeEventListener('abort', endUnwanted);
      if (waiting === null) waiting = { worker, leaves: setTimeout(endWaiting, WAITS_MS).unref() };
      else void worker.terminate();
      resolve(answer);
    });
    worker.postMessage(from);
  });
}

/** What goes wrong in it ends it, and nothing else. */
function newThread(): Worker {
  const worker = new Worker(WORKER, { resourceLimits: { maxYoungGenerationSizeMb: YOUNG_HEAP_MB } });
  worker.unref();
  worker.on('error', () => {});
  worker.once('exit', () => {
    if (waiting?.worker === worker) waitingThread();
  });
  return worker;
}

function waitingThread(): Worker | null {
  const worker = waiting?.worker ?? null;
  clearTimeout(waiting?.leaves);
  waiting = null;
  return worker;
}

const endWaiting = (): void => void waitingThread()?.terminate();
