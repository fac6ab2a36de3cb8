import { copyFileSync, existsSync, mkdirSync, mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { dirname, join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { forecastAll } from '#core/contract/forecast.ts';
import { machineRead, machinesList } from '#core/contract/machine.ts';
import { slipsList } from '#core/contract/slip.ts';
import { learningSettled } from '#core/use-cases/learning/shopLearning.ts';
import { aHitchMeasuredTwice } from '#tests/support/aHitch.ts';
import { aProgramAt, type Program } from '#tests/support/aProgram.ts';
import { aHitchesRequests } from '#tests/support/soundRequests.ts';

const AS_OF = '2026-11-09';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'moved-'));
});
afterEach(() => rmSync(folder, { recursive: true }));

/** A computer of its own: a folder of records, and the program's folder. */
function computer(name: string): { recordPath: string; start: () => Program } {
  const recordPath = join(folder, name, 'records', 'shop.hoursandwear');
  mkdirSync(dirname(recordPath), { recursive: true });
  return { recordPath, start: () => aProgramAt(recordPath, AS_OF, join(folder, name, 'profile')) };
}

async function everythingSaid(program: Program) {
  const list = await program.ask(machinesList, {});
  const machines = [];
  for (const { machineId } of list.machines) machines.push(await program.ask(machineRead, { machineId }));
  return { list, machines, forecasts: await program.ask(forecastAll, {}), slips: await program.ask(slipsList, {}) };
}

test('one file carried to a new computer says everything it said on the old one', async () => {
  const old = computer('old');
  const before = old.start();
  await aHitchesRequests(before);
  await everythingSaid(before);
  await learningSettled(before.context);
  const said = await everythingSaid(before);
  expect(existsSync(`${old.recordPath}-wal`)).toBe(true);
  before.end();
  // the log is folded in: the one file is the whole record
  expect(readdirSync(dirname(old.recordPath)).filter((name) => name.startsWith('shop'))).toEqual(['shop.hoursandwear']);

  const fresh = computer('new');
  copyFileSync(old.recordPath, fresh.recordPath);
  const after = fresh.start();
  expect(await everythingSaid(after)).toEqual(said);
  expect(said.machines[0]?.points.length).toBeGreaterThan(0);
  expect(said.forecasts.rows.length).toBeGreaterThan(0);
  expect([...before.defects, ...after.defects]).toEqual([]);
  after.end();
});

test('a file carried while its newest sizes are not learned of yet learns of them on the new computer', async () => {
  const old = computer('old');
  const before = old.start();
  await aHitchMeasuredTwice(before);
  before.end();
  const fresh = computer('new');
  copyFileSync(old.recordPath, fresh.recordPath);
  const [here, there] = [old.start(), fresh.start()];
  for (const program of [here, there]) {
    await everythingSaid(program);
    await learningSettled(program.context);
  }
  expect(await everythingSaid(there)).toEqual(await everythingSaid(here));
  here.end();
  there.end();
});
