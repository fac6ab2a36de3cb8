import { afterAll, beforeAll, expect, test } from 'vitest';
import { allOperations } from '#core/contract/allOperations.ts';
import type { Operation } from '#core/contract/operation.ts';
import { aProgram, type Program } from '#tests/support/aProgram.ts';
import { layLearnedDemo } from '#tests/support/learnedDemo.ts';
import { aHitchesRequests } from '#tests/support/soundRequests.ts';

let program: Program;
let sound: Record<string, Record<string, unknown>>;
beforeAll(async () => {
  program = aProgram();
  await layLearnedDemo(program.folder); // how it is laid down and learned is tested by itself
  sound = await aHitchesRequests(program);
});
afterAll(() => program.end());

/** Those that take back the last entry, and the one before it, and put that in again, come first. */
const FIRST = ['entries/redoLast', 'entries/undoLast', 'oldSheets/takeBack'];
/** Those that put another record in place of this one come last. */
const LAST = ['record/restore', 'exchange/restoreFolder', 'record/startEmpty', 'record/openDemo', 'record/open'];
/** Those that can be asked while no record is open. */
const NEEDS_NO_RECORD = [
  'record/state',
  'record/startEmpty',
  'record/openDemo',
  'record/open',
  'record/bringIn',
  'record/backups',
  'record/backupFolder',
  'record/restorePreview',
  'record/restore',
  'exchange/takePiece',
  'exchange/dropFile',
  'exchange/restoreFolder',
  'exchange/lookAtSheet',
  'jobs/state',
  'jobs/cancel',
  'fit/read',
  'fit/press',
  'fit/straighten',
  'joint/compare',
];

test('while no record is open, what needs one says so', async () => {
  const nothingOpen = aProgram();
  try {
    for (const operation of allOperations as readonly Operation[]) {
      if (NEEDS_NO_RECORD.includes(operation.name)) continue;
      const answer = await nothingOpen.answer(operation, { ...sound[operation.name] });
      expect({ operation: operation.name, answer }).toMatchObject({
        answer: { ok: false, fault: { code: 'no-record' } },
      });
    }
  } finally {
    nothingOpen.end();
  }
});

test('every operation answers a sound request, and what it answers survives JSON and structured clone', async () => {
  const operations = [...allOperations] as Operation[];
  operations.sort((a, b) => LAST.indexOf(a.name) - LAST.indexOf(b.name));
  operations.sort((a, b) => FIRST.indexOf(b.name) - FIRST.indexOf(a.name));
  for (const operation of operations) {
    const answer = await program.answer(operation, sound[operation.name] ?? {});
    expect(answer, `${operation.name} ${JSON.stringify(answer).slice(0, 300)}`).toMatchObject({ ok: true });
    expect(JSON.parse(JSON.stringify(answer))).toEqual(answer);
    expect(structuredClone(answer)).toEqual(answer);
  }
  expect(program.defects).toEqual([]);
});
