import type { Handler } from '../contract/operation.ts';
import type { RecordState, recordState } from '../contract/record.ts';
import { countRows, readAbout } from '../record/aboutStore.ts';
import { schemaVersion } from '../record/openRecord.ts';
import { recordIdOf } from '../record/recordIdOf.ts';
import { readSettings } from '../record/settingsStore.ts';
import type { Context } from './context.ts';
import { recentRecords } from './recentRecords.ts';
import { warningsOf } from './recordWarnings.ts';

const NOTHING = { customers: 0, machines: 0, points: 0, sizes: 0, findings: 0 };

/** Which record is open, and how much is in it. */
export function stateOf(context: Context): RecordState {
  const { record, trouble } = context;
  const settings = record && readSettings(record);
  return {
    open: record !== null,
    recordId: recordIdOf(record),
    path: record?.path ?? null,
    defaultPath: context.defaultRecordPath,
    schemaVersion: schemaVersion(),
    isDemo: record ? (readAbout(record)?.isDemo ?? false) : false,
    today: context.today(),
    counts: record ? countRows(record) : NOTHING,
    shopName: settings?.name ?? '',
    decimalMark: settings?.decimalMark ?? '.',
    lengths: settings?.lengths ?? 'mm',
    recent: recentRecords(context),
    trouble: trouble && { code: trouble.code, facts: trouble.facts ?? {} },
    warnings: warningsOf(context),
  };
}

export const recordStateHandler: Handler<typeof recordState, Context> = (context) => stateOf(context);
