import { z } from 'zod';
import { operation } from './operation.ts';
import { zDay, zFacts } from './shapes.ts';

export const zRecordState = z.object({
  open: z.boolean(),
  /** whole path of the record file; null while none is open */
  path: z.string().nullable(),
  /** where a new record would be laid down */
  defaultPath: z.string(),
  schemaVersion: z.int(),
  isDemo: z.boolean(),
  today: zDay,
  counts: z.object({ customers: z.int(), machines: z.int(), points: z.int(), sizes: z.int(), findings: z.int() }),
  shopName: z.string(),
  /** decimal mark on screens and papers; the record always holds points */
  decimalMark: z.enum(['.', ',']),
  recent: z.array(z.string()),
});
export type RecordState = z.infer<typeof zRecordState>;

/** One thing wrong, or odd, in what was brought in: where it is, what stands there, what was expected. */
export const zImportRemark = z.object({
  file: z.string(),
  /** line of the file, the heading is 1; null: the whole file */
  row: z.int().nullable(),
  column: z.string().nullable(),
  value: z.string(),
  code: z.string(),
  expected: z.string(),
  facts: zFacts,
});
export type ImportRemark = z.infer<typeof zImportRemark>;

/** What an import did or would do. Any fault: nothing was brought in. */
export const zImportAccount = z.object({
  done: z.boolean(),
  brought: z.object({
    customers: z.int(),
    machines: z.int(),
    dialReadings: z.int(),
    points: z.int(),
    sizes: z.int(),
    renewals: z.int(),
    moves: z.int(),
    findings: z.int(),
    classes: z.int(),
  }),
  faults: z.array(zImportRemark),
  /** kept out of the forecast until answered */
  cautions: z.array(zImportRemark),
  /** things passed over: extra columns, rows after the as-of day */
  notes: z.array(zImportRemark),
});
export type ImportAccount = z.infer<typeof zImportAccount>;

/** One file of a CSV folder, its bytes as base64: the encoding is found by the importer. */
export const zCsvFile = z.object({ name: z.string().max(200), base64: z.string().max(32_000_000) });

export const zBackup = z.object({ file: z.string(), madeAt: z.string(), bytes: z.int(), counts: z.string() });

export const recordState = operation('record/state', z.object({}), zRecordState, {
  title: 'Which record is open, and how much is in it',
});
export const recordStartEmpty = operation(
  'record/startEmpty',
  z.object({ path: z.string().max(1000).optional() }),
  zRecordState,
  { title: 'Lay down an empty record and open it' },
);
export const recordOpenDemo = operation('record/openDemo', z.object({}), zRecordState, {
  title: 'Open the demo workshop: an invented shop, in a record of its own',
});
export const recordOpen = operation('record/open', z.object({ path: z.string().min(1).max(1000) }), zRecordState, {
  title: 'Open another record file',
});
export const recordBringIn = operation(
  'record/bringIn',
  z.object({ files: z.array(zCsvFile).min(1).max(20), dryRun: z.boolean() }),
  zImportAccount,
  { title: 'Bring in a folder of CSV files, all or nothing' },
);
export const recordBackUp = operation('record/backUp', z.object({}), zBackup, { title: 'Make a backup now' });
export const recordBackups = operation('record/backups', z.object({}), z.object({ backups: z.array(zBackup) }), {
  title: 'The backups of this record, newest first',
});
export const recordRestore = operation(
  'record/restore',
  z.object({ file: z.string().min(1).max(1000) }),
  zRecordState,
  { title: 'Put a backup in place of the record; the record as it stands is backed up first' },
);
