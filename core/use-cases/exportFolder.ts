import { resolve } from 'node:path';
import type { exchangeExportFolder } from '../contract/exchange.ts';
import type { Handler } from '../contract/operation.ts';
import { zipOf } from '../exchange/zipFiles.ts';
import { writeNewFolder } from '../record/folderOnDisk.ts';
import { type Context, recordOf } from './context.ts';
import { exportedFiles } from './exportedFiles.ts';

/** Writes the whole record out: into a new folder, or as one zip for a window that may not write. */
export const exchangeExportFolderHandler: Handler<typeof exchangeExportFolder, Context> = (context, { toFolder }) => {
  const files = exportedFiles(recordOf(context));
  const folder = toFolder === null ? null : resolve(toFolder);
  if (folder !== null) writeNewFolder(folder, files);
  return {
    folder,
    files: files.map(({ name, bytes }) => ({ name, bytes: bytes.length, rows: linesUnderHeading(name, bytes) })),
    fileName: `hours-and-wear-${context.today()}.zip`,
    zipBase64: folder === null ? Buffer.from(zipOf(files)).toString('base64') : null,
  };
};

/** Rows of a CSV file: line ends outside quotes, without the heading's. */
function linesUnderHeading(name: string, bytes: Uint8Array): number | null {
  if (!name.endsWith('.csv')) return null;
  let lines = 0;
  let inQuotes = false;
  for (const byte of bytes) {
    if (byte === 0x22) inQuotes = !inQuotes;
    else if (byte === 0x0a && !inQuotes) lines++;
  }
  return lines - 1;
}
