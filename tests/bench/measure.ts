import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { existsSync, readFileSync } from 'node:fs';
import { YOUNG_HEAP_MB } from '#core/use-cases/threadHeap.ts';

/** What a step took: of the processor, threads and what it waits for included [s]. */
export type Taken<T> = { cpuSeconds: number; value: T };

export async function taken<T>(run: () => T | Promise<T>): Promise<Taken<T>> {
  const from = process.cpuUsage();
  const value = await run();
  const { user, system } = process.cpuUsage(from);
  return { cpuSeconds: (user + system) / 1e6, value };
}

export const quantile = (all: readonly number[], share: number): number =>
  [...all].sort((a, b) => a - b)[Math.min(all.length - 1, Math.floor(share * all.length))] ?? 0;

/** Most memory this process had. What Linux tells of resources counts the process it was started from; its own table does not. */
export function peakMegabytes(): number {
  const own = existsSync(OWN_TABLE) && /VmHWM:\s+(\d+) kB/.exec(readFileSync(OWN_TABLE, 'utf8'))?.[1];
  return (own ? Number(own) : process.resourceUsage().maxRSS) / 1e3;
}
const OWN_TABLE = '/proc/self/status';

/** As the program bounds the heap of its forecasts; of young things a third is in use at a time. */
export const AS_PROGRAM = ['--max-old-space-size=1000', `--max-semi-space-size=${YOUNG_HEAP_MB / 3}`];

/**
 * Runs a script in a process of its own, so that its memory is its own, and reads the JSON it prints last.
 * @param how options of Node
 */
export async function inOwnProcess<T>(
  how: readonly string[],
  script: string,
  ...args: (string | number)[]
): Promise<T> {
  const child = spawn(process.execPath, [...how, script, ...args.map(String)], {
    stdio: ['ignore', 'pipe', 'inherit'],
  });
  let printed = '';
  child.stdout.on('data', (bytes) => {
    printed += bytes;
  });
  const [code] = await once(child, 'close');
  if (code !== 0) throw new Error(`Broken invariant: ${script} ${args.join(' ')} ended well (${code})`);
  return JSON.parse(printed.trim().split('\n').at(-1) ?? '') as T;
}
