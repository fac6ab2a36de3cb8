import { Worker } from 'node:worker_threads';
import type { Moved } from '../../contract/forecastSettings.ts';
import type { ForecastSettings } from '../../shop/forecastSettings.ts';
import type { ShopLife } from '../../shop/shopLife.ts';
import type { Day } from '../../units/day.ts';
import { movedForecasts } from '../../way/movedForecasts.ts';
import { forecastShop, type Learning, learnClasses, seriesOfShop } from '../../way.ts';

/** What a learning rests on, as it crosses to the thread. */
export type LearnFrom = { life: ShopLife; asOf: Day };
/** The same, and settings to be tried on it. */
export type TryFrom = LearnFrom & { forecastSettings: ForecastSettings };

/** Walks the shop afresh, habit of use and all, and learns its classes. */
export const learnAfresh = ({ life, asOf }: LearnFrom): Learning => learnClasses(seriesOfShop(life, asOf));

/** Forecasts the shop as it is and with other settings. */
export function tryAfresh({ life, asOf, forecastSettings }: TryFrom): Moved {
  const points = (of: ShopLife) => forecastShop(of, asOf).machines.flatMap((machine) => machine.points);
  return movedForecasts(points(life), points({ ...life, forecastSettings }));
}

/** What the thread does with what it is given. */
export const threadWork = (from: LearnFrom | TryFrom): Learning | Moved =>
  'forecastSettings' in from ? tryAfresh(from) : learnAfresh(from);

/**
 * Learns in a thread of its own, so that whoever asks meanwhile is answered. The thread keeps no program alive. Where no
 * thread can be started, it is learned here.
 */
export const learnInBackground = (from: LearnFrom): Promise<Learning> =>
  inThread<Learning>(from, () => learnAfresh(from));

/** What other settings would move, worked out in a thread of its own. */
export const movedInBackground = (from: TryFrom): Promise<Moved> => inThread<Moved>(from, () => tryAfresh(from));

/** Beside this file as it stands; beside the one file of the built program under the same name. */
const WORKER = new URL(import.meta.url.endsWith('.ts') ? './learnWorker.ts' : './learnWorker.js', import.meta.url);

function inThread<T>(from: LearnFrom | TryFrom, here: () => T): Promise<T> {
  return new Promise((resolve) => {
    const worker = new Worker(WORKER, { workerData: from });
    worker.unref();
    worker.once('message', (answer: T) => resolve(answer));
    worker.once('error', () => resolve(here()));
  });
}
