import { parentPort, workerData } from 'node:worker_threads';
import { learnShop } from '../../fit/learnShop.ts';
import type { LearnFrom } from './learnInBackground.ts';

/** Runs in a thread of its own: learns once, says what it learned, and ends. */
const { parts, priors, settings } = workerData as LearnFrom;
parentPort?.postMessage(learnShop(parts, new Map(priors), settings));
