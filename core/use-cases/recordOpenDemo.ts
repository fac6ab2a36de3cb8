import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Handler } from '../contract/operation.ts';
import type { recordOpenDemo } from '../contract/record.ts';
import type { FileBytes } from '../exchange/readFolder.ts';
import { assertInvariant, RefusedError } from '../outcome.ts';
import { readAbout } from '../record/aboutStore.ts';
import { removeFile } from '../record/backup.ts';
import { writeEntry } from '../record/entry.ts';
import { holdsWork } from '../record/entryStore.ts';
import { layDownWhole } from '../record/folderOnDisk.ts';
import { openRecord, RECORD_EXTENSION } from '../record/openRecord.ts';
import { readSettings, saveSettings } from '../record/settingsStore.ts';
import { fingerprint } from '../way/fingerprint.ts';
import { bringIn } from './bring-in/bringIn.ts';
import { type Context, entryNow, openInto } from './context.ts';
import { DEMO_FARMS_VERSION, layDemoFarms } from './demoFarms.ts';
import { DEMO_JOBS_VERSION, layDemoJobs } from './demoJobs.ts';
import { layDownShop } from './newShop.ts';
import { stateOf } from './recordState.ts';

const DEMO_FOLDER = join(import.meta.dirname, '..', '..', 'demo-data', 'workshop');

/** An invented shop's head, so that a slip of the demo looks like one. */
const DEMO_HEAD = {
  name: 'Demo workshop',
  headLines: ['An invented shop', 'Nothing here is real'],
};

const DEMO_NAME = 'demo workshop';

/**
 * Opens the demo workshop in a record of its own, named for its data and laid down when it is not there yet. One that an
 * earlier program laid down from other data makes way; if anything was entered into it, it stays beside, and that is said.
 */
export const recordOpenDemoHandler: Handler<typeof recordOpenDemo, Context> = (context) => {
  const files = readdirSync(DEMO_FOLDER).map((name) => ({ name, bytes: readFileSync(join(DEMO_FOLDER, name)) }));
  const data = fingerprint(
    DEMO_JOBS_VERSION +
      DEMO_FARMS_VERSION +
      files.map(({ name, bytes }) => `${name}\n${bytes.toString('latin1')}`).join('\n'),
  );
  const path = join(context.dataFolder, `${DEMO_NAME} ${data.slice(0, 8)}${RECORD_EXTENSION}`);
  const fresh = !existsSync(path);
  if (fresh) buildDemo(context, path, files);
  openInto(context, path);
  const older = clearOlderDemos(context.dataFolder, path);
  const state = stateOf(context);
  if (!fresh || older.found === 0) return state;
  return { ...state, warnings: [...state.warnings, { code: 'demo-laid-down-anew', facts: { kept: older.kept } }] };
};

/** Takes away the demos of other data that nobody entered anything into. `kept`: the file that stays, or empty. */
function clearOlderDemos(folder: string, present: string): { found: number; kept: string } {
  const others = readdirSync(folder)
    .filter((name) => name.startsWith(DEMO_NAME) && name.endsWith(RECORD_EXTENSION))
    .map((name) => join(folder, name))
    .filter((file) => file !== present);
  const kept = others.filter((file) => {
    if (holdsWorkOfSomebody(file)) return true;
    removeFile(file);
    return false;
  });
  return { found: others.length, kept: kept.at(-1) ?? '' };
}

/** Also true of what cannot be opened, or is no demo: such a file is left alone. */
function holdsWorkOfSomebody(file: string): boolean {
  try {
    const record = openRecord(file);
    try {
      return readAbout(record)?.isDemo !== true || holdsWork(record);
    } finally {
      record.close();
    }
  } catch (thrown) {
    if (thrown instanceof RefusedError) return true;
    throw thrown;
  }
}

/** Laid down under a passing name and moved to its place when it is whole, so that a half-built demo is never opened. */
const buildDemo = (context: Context, path: string, files: readonly FileBytes[]): void =>
  layDownWhole(path, (passing) => {
    const record = openRecord(passing, { create: true });
    try {
      layDownShop(record, context.now(), { isDemo: true });
      writeEntry(record, entryNow(context, 'record/openDemo', 'program'), (w, entryId) =>
        saveSettings(w, entryId, { ...readSettings(w), ...DEMO_HEAD }),
      );
      const made = entryNow(context, 'record/openDemo', 'program');
      const { faults } = bringIn(record, files, made, { asOf: context.today(), dryRun: false });
      assertInvariant(faults.length === 0, 'the demo data have no faults');
      const kept = { revision: '', values: new Map() };
      layDemoJobs({ ...context, record, kept });
      layDemoFarms({ ...context, record, kept });
    } finally {
      record.close();
    }
  });
