import { spawn } from 'node:child_process';
import { expect, test } from 'vitest';
import { watchedToEnd } from './fetchElectron.ts';

const quick = { lookEveryMs: 20, giveUpAfterMs: 100 };
const child = (program: string) => spawn(process.execPath, ['-e', program], { stdio: 'ignore' });

test('a fetch that brings nothing is given up', async () => {
  const shown: number[] = [];
  const from = performance.now();
  const ended = await watchedToEnd(
    child('setTimeout(() => {}, 20_000)'),
    () => 5,
    (bytes) => shown.push(bytes),
    quick,
  );
  expect(ended).toBe(false);
  expect(performance.now() - from).toBeLessThan(5_000);
  expect(shown).toEqual([]);
});

test('a slow fetch that keeps bringing something is let go on, and shown', async () => {
  const shown: number[] = [];
  let bytes = 0;
  const weigh = () => {
    bytes += 1;
    return bytes;
  };
  expect(await watchedToEnd(child('setTimeout(() => {}, 600)'), weigh, (now) => shown.push(now), quick)).toBe(true);
  expect(shown.length).toBeGreaterThan(5);
});

test('a fetch that ends in an error brought nothing', async () => {
  expect(
    await watchedToEnd(
      child('process.exit(1)'),
      () => 0,
      () => {},
      quick,
    ),
  ).toBe(false);
});
