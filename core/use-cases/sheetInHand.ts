import { type SheetDelimiter, sheetDelimiter, textPieces } from '../exchange/sheetCsv.ts';
import { isZip, type WorkbookSheet, workbookSheets } from '../exchange/sheetWorkbook.ts';
import { RefusedError } from '../outcome.ts';
import { refuseField } from './asked.ts';
import type { FileInHand } from './givenFiles.ts';

/** Whether a file is read as a workbook, else as CSV. @throws RefusedError workbook-broken where only its name says so */
export function isWorkbook({ name, bytes }: FileInHand): boolean {
  if (isZip(bytes)) return true;
  if (bytes.length > 0 && /\.(xlsx|zip)$/i.test(name)) throw new RefusedError({ code: 'workbook-broken' });
  return false;
}

/** What parts the cells of a CSV file, told by its beginning. */
export function delimiterOf(bytes: Uint8Array): SheetDelimiter {
  for (const { text } of textPieces(bytes)) return sheetDelimiter(text.slice(0, 100_000));
  throw new RefusedError({ code: 'file-empty' });
}

/** The sheet of that name (null: the first), and the names of all. @throws RefusedError as workbookSheets */
export async function sheetOfWorkbook(
  bytes: Uint8Array,
  name: string | null,
): Promise<{ sheet: WorkbookSheet; names: string[] }> {
  const sheets = await workbookSheets(bytes);
  const names = sheets.map((one) => one.name);
  const sheet = name === null ? sheets[0] : sheets.find((one) => one.name === name);
  if (!sheet) return refuseField('sheet', `one of ${names.join(', ')}`);
  return { sheet, names };
}
