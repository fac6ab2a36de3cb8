import { z } from 'zod';
import { operation } from './operation.ts';
import { zImportAccount, zImportRemark, zRecordId } from './record.ts';

/** Whole path on this computer. */
const zPath = z.string().min(1).max(1000);

/**
 * A file to be read: where it lies on this computer, or, from a window that is not told where files lie, one handed over
 * piece by piece before (exchange/takePiece). One of the two.
 */
export const zGivenFile = z
  .object({ path: zPath.nullable(), fileId: z.string().max(40).nullable() })
  .refine(({ path, fileId }) => (path === null) !== (fileId === null), { message: 'either a path or a fileId' });
export type GivenFile = z.infer<typeof zGivenFile>;

export const exchangeTakePiece = operation(
  'exchange/takePiece',
  z.object({
    /** null: the first piece of a new file */
    fileId: z.string().max(40).nullable(),
    name: z.string().min(1).max(200),
    base64: z.string().max(8_000_000),
  }),
  z.object({ fileId: z.string(), bytes: z.int() }),
  { title: 'Hand over a file piece by piece, from a window that is not told where it lies' },
);

export const exchangeDropFile = operation(
  'exchange/dropFile',
  z.object({ fileId: z.string().max(40) }),
  z.object({ dropped: z.boolean() }),
  { title: 'Let go of a file that was handed over' },
);

/** A file of an export. `rows`: lines under the heading; null: no table. */
const zExportedFile = z.object({ name: z.string(), bytes: z.int(), rows: z.int().nullable() });

export const exchangeExportFolder = operation(
  'exchange/exportFolder',
  z.object({
    /** a folder that is not there yet, or an empty one; null: the files come back as one zip */
    toFolder: zPath.nullable(),
  }),
  z.object({
    folder: z.string().nullable(),
    files: z.array(zExportedFile),
    fileName: z.string(),
    zipBase64: z.string().nullable(),
  }),
  { title: 'Write the whole record out as CSV files' },
);

export const exchangeExportWorkbook = operation(
  'exchange/exportWorkbook',
  z.object({
    /** a file that is not there yet; null: its bytes come back */
    toFile: zPath.nullable(),
  }),
  z.object({
    file: z.string().nullable(),
    sheets: z.array(z.object({ name: z.string(), rows: z.int() })),
    fileName: z.string(),
    xlsxBase64: z.string().nullable(),
  }),
  { title: 'Write machines, hours, points, sizes, findings and forecast out as one XLSX file for people' },
);

export const exchangeRestoreFolder = operation(
  'exchange/restoreFolder',
  z.object({
    /** an exported folder, or its zip */
    from: zGivenFile,
  }),
  z.object({
    done: z.boolean(),
    /** the new record file, now open; null: nothing was laid down */
    path: z.string().nullable(),
    recordId: zRecordId,
    tables: z.int(),
    rows: z.int(),
    faults: z.array(zImportRemark),
    notes: z.array(zImportRemark),
  }),
  { title: 'Bring an exported folder back, as a record of its own', opensRecord: true },
);

// ---- one sheet

/** What the rows of a single sheet are. */
export const zSheetNoun = z.enum(['machines', 'hours', 'points', 'sizes', 'findings']);
export type SheetNoun = z.infer<typeof zSheetNoun>;

export const zDateOrder = z.enum(['ymd', 'dmy', 'mdy']);
const zDecimalMark = z.enum(['.', ',']);
const zUnit = z.enum(['mm', 'in', 'h']);

/** How a sheet is read: where each of our columns comes from, and what is asked once for the whole of it. */
export const zSheetMapping = z.object({
  columns: z
    .array(
      z.object({
        /** ours: "size_mm" */
        column: z.string().min(1).max(60),
        /** column of the sheet, from 0; null: `fixed` stands in every row */
        place: z.int().min(0).max(999).nullable(),
        fixed: z.string().max(200),
        /** of the sheet's numbers; null: as ours */
        unit: zUnit.nullable(),
      }),
    )
    .max(40),
  dateOrder: zDateOrder,
  decimalMark: zDecimalMark,
  /** row of the sheet its heads stand on, from 1 */
  headRow: z.int().min(1).max(10_000),
});
export type SheetMapping = z.infer<typeof zSheetMapping>;

export const exchangeLookAtSheet = operation(
  'exchange/lookAtSheet',
  z.object({
    file: zGivenFile,
    /** of a workbook; null: its first */
    sheet: z.string().max(200).nullable(),
    /** null: as its heads suggest */
    noun: zSheetNoun.nullable(),
    /** null: as found */
    headRow: z.int().min(1).max(10_000).nullable(),
  }),
  z.object({
    name: z.string(),
    kind: z.enum(['csv', 'xlsx']),
    bytes: z.int(),
    sheets: z.array(z.string()),
    sheet: z.string(),
    /** rows under the heads that were looked at; `wholeFile` false: there are more */
    rows: z.int(),
    wholeFile: z.boolean(),
    noun: zSheetNoun,
    headRow: z.int(),
    heads: z.array(z.object({ place: z.int(), head: z.string(), samples: z.array(z.string()) })),
    /** ours, and which of the sheet's it seems to be */
    columns: z.array(
      z.object({
        column: z.string(),
        needed: z.boolean(),
        holds: z.enum(['text', 'number', 'day']),
        unit: zUnit.nullable(),
        /** words it takes; empty: any text */
        words: z.array(z.string()),
        place: z.int().nullable(),
        how: z.enum(['same', 'alias', 'near', 'remembered']).nullable(),
        fixed: z.string(),
        /** unit its head names */
        sheetUnit: zUnit.nullable(),
      }),
    ),
    remembered: z.boolean(),
    /** null: the sheet does not tell, a person has to */
    dateOrder: zDateOrder.nullable(),
    decimalMark: zDecimalMark.nullable(),
  }),
  { title: 'Look at a single CSV or XLSX sheet: its heads, and which column each seems to be' },
);

export const zBringInSheet = z.object({
  file: zGivenFile,
  sheet: z.string().max(200).nullable(),
  noun: zSheetNoun,
  mapping: zSheetMapping,
  dryRun: z.boolean(),
});
export type BringInSheet = z.infer<typeof zBringInSheet>;

/** As of a folder; of long lists the first rows are given, and how many there are. */
export const zSheetAccount = zImportAccount.extend({
  rows: z.int(),
  faultCount: z.int(),
  cautionCount: z.int(),
  noteCount: z.int(),
});
export type SheetAccount = z.infer<typeof zSheetAccount>;

export const exchangeBringInSheet = operation('exchange/bringInSheet', zBringInSheet, zSheetAccount, {
  title: 'Bring in a single CSV or XLSX sheet, all or nothing',
});
