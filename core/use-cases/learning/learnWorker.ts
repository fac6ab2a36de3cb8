import { setPriority } from 'node:os';
import { parentPort, workerData } from 'node:worker_threads';
import { type LearnFrom, learnAfresh } from './learnInBackground.ts';

/** On Linux a thread has its own place in the queue for the processor; elsewhere the whole program would step back. */
const STEP_BACK = 10;
if (process.platform === 'linux') setPriority(0, STEP_BACK);

/** Runs in a thread of its own: learns once, says what it learned, and ends. */
parentPort?.postMessage(learnAfresh(workerData as LearnFrom));
