import { setPriority } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import { type Job, jobWork } from './jobWork.ts';

/** Nobody waits for forecasts of the whole shop: on Linux a thread has its own place in the queue for the processor. */
const STEP_BACK = 10;
if (process.platform === 'linux' && (workerData as Job).kind === 'forecast-shop') setPriority(0, STEP_BACK);

/** Runs in a thread of its own: does one job, says how far it is and how it ended. */
await jobWork(workerData as Job, (word) => parentPort?.postMessage(word));
