import { zipSync } from 'fflate';
import readExcelFile from 'read-excel-file/universal';
import { orRefuse, RefusedError } from '../outcome.ts';
import type { SheetCell, SheetLine } from './sheetLines.ts';
import { filesOfZip } from './zipFiles.ts';

/** Beyond these a workbook is refused before it is read; a CSV file of it is read piece by piece. */
export const MOST_WORKBOOK_BYTES = 50_000_000;
export const MOST_WORKBOOK_ROWS = 100_000;
const MOST_COLUMNS = 200;
/** XML of a sheet of that many rows stays well below; a zip that claims more hides something. */
const MOST_UNPACKED_BYTES = 200_000_000;

const isSheetXml = (name: string): boolean => /(^|\/)worksheets\/[^/]+\.xml$/.test(name);
const isWorkbookXml = (name: string): boolean => /\.(xml|rels)$/.test(name) && !name.startsWith('xl/media/');

export type WorkbookSheet = { name: string; lines: SheetLine[] };

/** A zip begins PK, 3, 4 (APPNOTE.TXT of the ZIP format, 4.3.7). */
export const isZip = (bytes: Uint8Array): boolean =>
  bytes[0] === 0x50 && bytes[1] === 0x4b && bytes[2] === 3 && bytes[3] === 4;

/**
 * Every sheet of an XLSX file. Its bytes, what it unpacks to by its own directory, and the rows and columns its sheets
 * claim are looked at before any of it is read as cells.
 *
 * @throws RefusedError workbook-too-large, workbook-too-many-rows, workbook-too-wide, workbook-broken
 */
export async function workbookSheets(bytes: Uint8Array): Promise<WorkbookSheet[]> {
  if (bytes.length > MOST_WORKBOOK_BYTES)
    throw new RefusedError({
      code: 'workbook-too-large',
      facts: { MB: Math.ceil(bytes.length / 1e6), mostMB: MOST_WORKBOOK_BYTES / 1e6 },
    });
  const unpacked = filesOfZip(bytes, isWorkbookXml, MOST_UNPACKED_BYTES);
  if (!unpacked.ok && unpacked.refusal.code === 'zip-broken') throw new RefusedError({ code: 'workbook-broken' });
  const files = orRefuse(unpacked);
  for (const { name, bytes: xml } of files) if (isSheetXml(name)) refuseHugeSheet(name, xml);
  // packed again without squeezing: the library then unpacks in place, and only what was looked at
  const plain = zipSync(Object.fromEntries(files.map((file) => [file.name, file.bytes])), { level: 0 });
  try {
    const sheets = await readExcelFile(plain.buffer as ArrayBuffer);
    return sheets.map(({ sheet, data }) => ({ name: sheet, lines: linesOf(data) }));
  } catch {
    throw new RefusedError({ code: 'workbook-broken' });
  }
}

/** Rows and columns are told by each row's and cell's own address, however few of them are filled. */
function refuseHugeSheet(name: string, xml: Uint8Array): void {
  const text = new TextDecoder().decode(xml);
  let rows = 0;
  for (const [, prefix = '', address] of text.matchAll(
    /<(?:\w+:)?(?:row|c)\b[^>]*?\sr\s*=\s*["']([A-Za-z]*)(\d+)["']/g,
  )) {
    rows = Math.max(rows, Number(address));
    if (rows > MOST_WORKBOOK_ROWS + 1)
      throw new RefusedError({ code: 'workbook-too-many-rows', facts: { sheet: name, mostRows: MOST_WORKBOOK_ROWS } });
    if (columnNumber(prefix) > MOST_COLUMNS)
      throw new RefusedError({ code: 'workbook-too-wide', facts: { sheet: name, mostColumns: MOST_COLUMNS } });
  }
  const unaddressed = text.match(/<(?:\w+:)?row\b/g)?.length ?? 0;
  if (Math.max(rows, unaddressed) > MOST_WORKBOOK_ROWS + 1)
    throw new RefusedError({ code: 'workbook-too-many-rows', facts: { sheet: name, mostRows: MOST_WORKBOOK_ROWS } });
}

/** "A" is 1, "AA" is 27. */
const columnNumber = (letters: string): number =>
  [...letters.toUpperCase()].reduce((number, letter) => number * 26 + letter.charCodeAt(0) - 64, 0);

type CellRead = string | number | boolean | Date | null | undefined;

const linesOf = (data: readonly (readonly unknown[])[]): SheetLine[] =>
  data.flatMap((cells, index) => {
    const read = cells.map((cell) => cellOf(cell as CellRead));
    return read.some((cell) => cell !== null && cell !== '') ? [{ row: index + 1, cells: read }] : [];
  });

function cellOf(cell: CellRead): SheetCell {
  if (cell === null || cell === undefined) return null;
  if (cell instanceof Date) return Number.isNaN(cell.valueOf()) ? null : cell.toISOString().slice(0, 10);
  if (typeof cell === 'boolean') return cell ? 'yes' : 'no';
  return typeof cell === 'string' ? cell.trim() : cell;
}
