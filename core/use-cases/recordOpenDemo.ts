import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import type { Handler } from '../contract/operation.ts';
import type { recordOpenDemo } from '../contract/record.ts';
import { assertInvariant } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import { layDownWhole } from '../record/folderOnDisk.ts';
import { openRecord, RECORD_EXTENSION } from '../record/openRecord.ts';
import { readSettings, saveSettings } from '../record/settingsStore.ts';
import { bringIn } from './bring-in/bringIn.ts';
import { type Context, entryNow, openInto } from './context.ts';
import { layDownShop } from './newShop.ts';
import { stateOf } from './recordState.ts';

const DEMO_FOLDER = join(import.meta.dirname, '..', '..', 'demo-data', 'workshop');

/** An invented shop's head, so that a slip of the demo looks like one. */
const DEMO_HEAD = {
  name: 'Demo workshop',
  headLines: ['An invented shop', 'Nothing here is real'],
};

/** Opens the demo workshop in a record of its own, laid down when it is not there yet. */
export const recordOpenDemoHandler: Handler<typeof recordOpenDemo, Context> = (context) => {
  const path = join(context.dataFolder, `demo workshop${RECORD_EXTENSION}`);
  if (!existsSync(path)) buildDemo(context, path);
  openInto(context, path);
  return stateOf(context);
};

/** Laid down under a passing name and moved to its place when it is whole, so that a half-built demo is never opened. */
const buildDemo = (context: Context, path: string): void =>
  layDownWhole(path, (passing) => {
    const record = openRecord(passing, { create: true });
    try {
      layDownShop(record, context.now(), { isDemo: true });
      writeEntry(record, entryNow(context, 'record/openDemo', 'program'), (w, entryId) =>
        saveSettings(w, entryId, { ...readSettings(w), ...DEMO_HEAD }),
      );
      const files = readdirSync(DEMO_FOLDER).map((name) => ({ name, bytes: readFileSync(join(DEMO_FOLDER, name)) }));
      const made = entryNow(context, 'record/openDemo', 'program');
      const { faults } = bringIn(record, files, made, { asOf: context.today(), dryRun: false });
      assertInvariant(faults.length === 0, 'the demo data have no faults');
    } finally {
      record.close();
    }
  });
