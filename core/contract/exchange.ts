import { z } from 'zod';
import { operation } from './operation.ts';
import { zImportRemark } from './record.ts';

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
    tables: z.int(),
    rows: z.int(),
    faults: z.array(zImportRemark),
    notes: z.array(zImportRemark),
  }),
  { title: 'Bring an exported folder back, as a record of its own' },
);
