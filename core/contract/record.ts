import { z } from 'zod';
import { operation } from './operation.ts';
import { zCaution, zDay, zFacts } from './shapes.ts';

export const zRecordCounts = z.object({
  customers: z.int(),
  machines: z.int(),
  points: z.int(),
  sizes: z.int(),
  findings: z.int(),
});

/** Which record is open: tells it from every other, and from what stood in its place before; `none`: none is open. */
export const zRecordId = z.string();

export const zRecordState = z.object({
  open: z.boolean(),
  recordId: zRecordId,
  /** whole path of the record file; null while none is open */
  path: z.string().nullable(),
  /** where a new record would be laid down */
  defaultPath: z.string(),
  schemaVersion: z.int(),
  isDemo: z.boolean(),
  today: zDay,
  counts: zRecordCounts,
  shopName: z.string(),
  /** decimal mark on screens and papers; the record always holds points */
  decimalMark: z.enum(['.', ',']),
  /** in which lengths are shown and typed */
  lengths: z.enum(['mm', 'inch']),
  recent: z.array(z.string()),
  /**
   * why the record the program was started with is not open: a refusal's code and facts, `file` among them
   * (record-damaged, record-newer, record-in-use, ...); null: nothing is wrong, or another record has been opened since
   */
  trouble: zCaution.nullable(),
  /**
   * what endangers the record though it is open: record-on-network {fileSystem}, record-may-be-synced {folder, sign},
   * record-synced {folder}, record-read-only, backup-failed {reason}, backup-folder-failed {folder, reason}; said once by record/openDemo:
   * demo-laid-down-anew {kept}, a file or empty
   */
  warnings: z.array(zCaution),
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
    /** packing put in or taken out too */
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

export const zBackup = z.object({
  file: z.string(),
  madeAt: z.string(),
  bytes: z.int(),
  counts: z.string(),
  /** before-migrating: the record as an earlier program left it */
  kind: z.enum(['kept', 'before-migrating']),
  /** the same backup in the folder the shop chose; null: not there */
  alsoAt: z.string().nullable(),
});
export type Backup = z.infer<typeof zBackup>;

/** A folder backups go to: the program's own, and the one the shop chose. */
export const zBackupFolder = z.object({
  folder: z.string(),
  chosen: z.boolean(),
  /** false: a stick that is not plugged in, a share that is off */
  reachable: z.boolean(),
  backups: z.int(),
  /** what they take [bytes] */
  bytes: z.int(),
  /** left on that disk [bytes]; null: not known */
  freeBytes: z.int().nullable(),
});

export const zBackups = z.object({ backups: z.array(zBackup), folders: z.array(zBackupFolder) });

/** What putting a backup in the record's place would change. */
export const zRestorePreview = z.object({
  backup: z.object({
    file: z.string(),
    /** the last entry in it; null: it holds none */
    lastEntryAt: z.string().nullable(),
    counts: zRecordCounts,
    schemaVersion: z.int(),
  }),
  /** what the record holds now; null: none is open, or it cannot be read */
  record: zRecordCounts.nullable(),
  /** false: the backup is of another shop, or of a record laid down afresh */
  sameRecord: z.boolean(),
  /** entries of the record that are not in the backup, how many of each sort of thing, and the last of them, newest first */
  lost: z.object({
    entries: z.int(),
    undone: z.int(),
    customers: z.int(),
    machines: z.int(),
    points: z.int(),
    sizes: z.int(),
    findings: z.int(),
    slips: z.int(),
    last: z.array(z.object({ entryId: z.int(), madeAt: z.string(), madeBy: z.string(), what: z.string() })),
  }),
});
export type RestorePreview = z.infer<typeof zRestorePreview>;

export const recordState = operation('record/state', z.object({}), zRecordState, {
  title: 'Which record is open, and how much is in it',
  meantFor: 'unsaid-too',
});
export const recordStartEmpty = operation(
  'record/startEmpty',
  z.object({ path: z.string().max(1000).optional() }),
  zRecordState,
  { title: 'Lay down an empty record and open it', meantFor: 'any', opensRecord: true },
);
export const recordOpenDemo = operation('record/openDemo', z.object({}), zRecordState, {
  title: 'Open the demo workshop: an invented shop, in a record of its own',
  meantFor: 'any',
  opensRecord: true,
});
export const recordOpen = operation('record/open', z.object({ path: z.string().min(1).max(1000) }), zRecordState, {
  title: 'Open another record file',
  meantFor: 'any',
  opensRecord: true,
});
export const recordBringIn = operation(
  'record/bringIn',
  z.object({ files: z.array(zCsvFile).min(1).max(20), dryRun: z.boolean() }),
  // where none was open yet, of the one it laid down
  zImportAccount.extend({ recordId: zRecordId }),
  { title: 'Bring in a folder of CSV files, all or nothing', opensRecord: true },
);
export const recordBackUp = operation(
  'record/backUp',
  z.object({}),
  // with a folder chosen: why the copy did not go there too; the backup itself was made
  zBackup.extend({ notAlso: zCaution.nullable() }),
  { title: 'Make a backup now' },
);
export const recordBackups = operation('record/backups', z.object({}), zBackups, {
  title: 'The backups of this record, newest first, and what room they take',
});
export const recordBackupFolder = operation(
  'record/backupFolder',
  z.object({ folder: z.string().min(1).max(1000).nullable() }),
  zBackups,
  { title: 'Choose a further folder that every backup is copied to; null: none' },
);
export const recordRestorePreview = operation(
  'record/restorePreview',
  z.object({ file: z.string().min(1).max(1000) }),
  zRestorePreview,
  { title: 'What would be lost if a backup took the place of the record' },
);
export const recordRestore = operation(
  'record/restore',
  z.object({ file: z.string().min(1).max(1000) }),
  zRecordState,
  { title: 'Put a backup in place of the record; the record as it stands is backed up first', opensRecord: true },
);
export const recordConfirmPlace = operation('record/confirmPlace', z.object({ synced: z.boolean() }), zRecordState, {
  title: 'Say whether another program copies the folder of the record elsewhere, or other computers write to it',
});
