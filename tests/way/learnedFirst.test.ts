import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, expect, test } from 'vitest';
import { machineRead } from '#core/contract/machine.ts';
import { recordState } from '#core/contract/record.ts';
import { BENCH_AS_OF, laySyntheticRecord } from '#tests/bench/syntheticRecord.ts';
import { aProgramAt } from '#tests/support/aProgram.ts';

const folder = mkdtempSync(join(tmpdir(), 'learned-first-'));
afterEach(() => rmSync(folder, { recursive: true, force: true }));

test('while the first machine of a shop waits for its classes, whatever else is asked is answered', async () => {
  const path = join(folder, 'shop.hoursandwear');
  laySyntheticRecord(path, { machines: 2, points: 4 });
  const program = aProgramAt(path, BENCH_AS_OF);
  let isRead = false;
  const reading = program.ask(machineRead, { machineId: 1 }).then((sheet) => {
    isRead = true;
    return sheet;
  });
  expect((await program.ask(recordState, {})).counts.machines).toBe(2);
  expect(isRead).toBe(false);
  const { points } = await reading;
  expect(points.every(({ forecast }) => forecast.likeParts > 0)).toBe(true);
  program.end();
});
