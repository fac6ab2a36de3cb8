import { spawn } from 'node:child_process';
import { once } from 'node:events';
import { join } from 'node:path';

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

export const peakMegabytes = (): number => process.resourceUsage().maxRSS / 1e3;

/** Runs a script of this folder in a process of its own, so that its memory is its own, and reads the JSON it prints last. */
export async function inOwnProcess<T>(script: string, ...args: (string | number)[]): Promise<T> {
  const child = spawn(process.execPath, [join(import.meta.dirname, script), ...args.map(String)], {
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
