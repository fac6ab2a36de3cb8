import { createHash } from 'node:crypto';
import {
  copyFileSync,
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { basename, join } from 'node:path';
import { machinesList } from '#core/contract/machine.ts';
import { recordOpenDemo } from '#core/contract/record.ts';
import { openRecord } from '#core/record/openRecord.ts';
import { learningKept } from '#core/use-cases/learning/shopLearning.ts';
import type { Learning } from '#core/way.ts';
import { aProgramAt } from './aProgram.ts';
import { runs } from './ownTemporaryFolder.ts';
import { top } from './runScript.ts';

const KEPT = join(top, '.build', 'tests');
export const DEMO_DAY = '2026-11-02';

/**
 * Lays the demo workshop, its classes learned as of {@link DEMO_DAY}, where a program finds it when it is asked for the
 * demo. Made once for the sources as they stand and copied from then on: a test of something else need not wait for a
 * learning that is the same in all of them.
 */
export async function layLearnedDemo(dataFolder: string): Promise<void> {
  const made = await learnedDemo();
  copyFileSync(made, join(dataFolder, basename(made)));
}

/** What the program learned of it; learned again by whoever has other parts, priors or settings in hand. */
export async function learningOfDemo(): Promise<Learning> {
  const record = openRecord(await learnedDemo());
  try {
    return { ...learningKept(record)! }; // read whole while the record is open
  } finally {
    record.close();
  }
}

async function learnedDemo(): Promise<string> {
  const folder = join(KEPT, `demo-${sourcesNow()}`);
  const lock = `${folder}.lock`;
  mkdirSync(KEPT, { recursive: true });
  while (!existsSync(folder)) {
    if (!tookLock(lock)) {
      await new Promise((resolve) => setTimeout(resolve, 100));
      continue;
    }
    try {
      if (!existsSync(folder)) await makeIn(folder);
    } finally {
      rmSync(lock, { force: true });
    }
  }
  const [file] = readdirSync(folder);
  return join(folder, file as string);
}

async function makeIn(folder: string): Promise<void> {
  for (const old of readdirSync(KEPT)) {
    if (/^demo-\w+$/.test(old)) rmSync(join(KEPT, old), { recursive: true, force: true });
  }
  const passing = mkdtempSync(join(KEPT, 'making-'));
  const program = aProgramAt(join(passing, 'shop.hoursandwear'), DEMO_DAY);
  const { path } = await program.ask(recordOpenDemo, {});
  await program.ask(machinesList, {}); // waits for what the classes teach, and keeps it
  program.end();
  const alone = join(passing, 'whole');
  mkdirSync(alone);
  renameSync(path as string, join(alone, basename(path as string)));
  renameSync(alone, folder);
  rmSync(passing, { recursive: true, force: true });
}

/** False while another process is making it; one that ended without giving the lock back no longer holds it. */
function tookLock(lock: string): boolean {
  try {
    writeFileSync(lock, String(process.pid), { flag: 'wx' });
    return true;
  } catch {
    const holder = existsSync(lock) ? Number(readFileSync(lock, 'utf8')) : 0;
    if (holder > 0 && !runs(holder)) rmSync(lock, { force: true });
    return false;
  }
}

/** Short name of everything the demo and what is learned of it are made from. */
function sourcesNow(): string {
  const hash = createHash('sha256');
  for (const folder of ['core', 'migrations', 'demo-data/workshop']) {
    const files = readdirSync(join(top, folder), { recursive: true, withFileTypes: true })
      .filter((entry) => entry.isFile() && !entry.name.includes('.test.'))
      .map((entry) => join(entry.parentPath, entry.name))
      .sort();
    for (const file of files) hash.update(`${file}\n`).update(readFileSync(file));
  }
  return hash.digest('hex').slice(0, 16);
}
