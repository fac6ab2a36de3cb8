import Papa from 'papaparse';
import type { FileBytes } from './readFolder.ts';

/** A cell as it is written: text is kept inert by whoever gives it (inertText.ts). */
export type WrittenCell = string | number | null;

/** Tells a spreadsheet that the file is UTF-8: without it an umlaut comes out as two odd letters. */
const BYTE_ORDER_MARK = '\ufeff';
const LINE_END = '\r\n';

/**
 * A CSV file: UTF-8 with a byte order mark, comma, decimal point, a heading, CRLF at the end of every line. A number is
 * the shortest figure that reads back as the same. The same rows give the same bytes.
 *
 * @source RFC 4180, section 2
 */
export function csvFile(
  name: string,
  columns: readonly string[],
  rows: readonly (readonly WrittenCell[])[],
): FileBytes {
  const lines = Papa.unparse([columns, ...rows] as WrittenCell[][], { newline: LINE_END });
  return { name, bytes: new TextEncoder().encode(BYTE_ORDER_MARK + lines + LINE_END) };
}
