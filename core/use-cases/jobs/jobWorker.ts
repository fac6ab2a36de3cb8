import { parentPort, workerData } from 'node:worker_threads';
import { type Job, jobWork } from './jobWork.ts';

/** Runs in a thread of its own: does one job, says how far it is and how it ended. */
await jobWork(workerData as Job, (word) => parentPort?.postMessage(word));
