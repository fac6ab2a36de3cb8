import { setPriority } from 'node:os';
import { parentPort } from 'node:worker_threads';
import { type ThreadWork, threadWork } from './learnInBackground.ts';

/** On Linux a thread has its own place in the queue for the processor; elsewhere the whole program would step back. */
const STEP_BACK = 10;
if (process.platform === 'linux') setPriority(0, STEP_BACK);

/** Runs in a thread of its own: does one work after another as they are given, and says what came of each. */
parentPort?.on('message', (from: ThreadWork) => parentPort?.postMessage(threadWork(from)));
