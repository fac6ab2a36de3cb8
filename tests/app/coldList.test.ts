import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { expect } from 'vitest';
import { windowTest } from '#tests/app/windowTest.ts';
import { BENCH_AS_OF, laySyntheticRecord } from '#tests/bench/syntheticRecord.ts';

const MACHINES = 12;
/** Learning steps back for everything else a busy computer does. */
const BUSY_MS = 250_000;

windowTest('the list of a record never learned from is there at once, says so, and settles', async ({ open }) => {
  const folder = mkdtempSync(join(tmpdir(), 'cold-list-'));
  try {
    const recordPath = join(folder, 'shop.hoursandwear');
    laySyntheticRecord(recordPath, { machines: MACHINES, points: 2 });
    const { page } = await open({ recordPath, dataFolder: folder, asOf: BENCH_AS_OF });
    const learning = page.getByText('From what the trade says; learning');
    await learning.waitFor();
    expect(await page.locator('.machine-row').count()).toBe(MACHINES);
    await learning.waitFor({ state: 'detached', timeout: BUSY_MS });
    expect(await page.locator('.machine-row').count()).toBe(MACHINES);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
});
