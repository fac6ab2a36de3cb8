import Papa from 'papaparse';
import { RefusedError } from '../outcome.ts';
import type { SheetCell, SheetLine } from './sheetLines.ts';

/** What may part the cells of a sheet. */
const DELIMITERS = [',', ';', '\t', '|'] as const;
export type SheetDelimiter = (typeof DELIMITERS)[number];

/** A cell this long is a quote that was never closed: the rest of the file went into it. */
const MOST_CELL_CHARACTERS = 1_000_000;

/** Bytes read at a time: progress is told and a cancel heeded between them. */
const PIECE_BYTES = 1 << 20;

/**
 * The text of a CSV file, piece by piece: UTF-8 with or without a byte order mark, else Windows-1252. Line ends are \n in it.
 * @throws RefusedError encoding-utf16, binary-file
 */
export function* textPieces(bytes: Uint8Array): Generator<{ text: string; bytesRead: number }> {
  const decoder = new TextDecoder(encodingOf(bytes));
  let heldBack = '';
  for (let at = 0; at < bytes.length; at += PIECE_BYTES) {
    const end = Math.min(at + PIECE_BYTES, bytes.length);
    const decoded = heldBack + decoder.decode(bytes.subarray(at, end), { stream: end < bytes.length });
    // a return at the end of a piece may be half a line end
    heldBack = end < bytes.length && decoded.endsWith('\r') ? '\r' : '';
    const text = (heldBack === '' ? decoded : decoded.slice(0, -1)).replace(/\r\n?/g, '\n');
    yield { text, bytesRead: end };
  }
}

/** A control character that no sheet holds: not a tab, an end of a line or page, or the end of an old file (26). */
const isNoText = (byte: number): boolean => byte < 32 && (byte < 9 || byte > 13) && byte !== 26;

function encodingOf(bytes: Uint8Array): 'utf-8' | 'windows-1252' {
  const [first, second] = bytes;
  if ((first === 0xff && second === 0xfe) || (first === 0xfe && second === 0xff))
    throw new RefusedError({ code: 'encoding-utf16' });
  if (bytes.subarray(0, 4096).some(isNoText)) throw new RefusedError({ code: 'binary-file' });
  const utf8 = new TextDecoder('utf-8', { fatal: true });
  try {
    for (let at = 0; at < bytes.length; at += PIECE_BYTES)
      utf8.decode(bytes.subarray(at, at + PIECE_BYTES), { stream: at + PIECE_BYTES < bytes.length });
    return 'utf-8';
  } catch {
    return 'windows-1252';
  }
}

/** What parts the cells: what stands most often outside quotes in the first lines, and as often in each. */
export function sheetDelimiter(text: string): SheetDelimiter {
  const lines = text
    .replace(/"(?:[^"]|"")*"/g, '')
    .split('\n')
    .filter((line) => line.trim() !== '')
    .slice(0, 20);
  const scored = DELIMITERS.map((delimiter) => {
    const counts = lines.map((line) => line.split(delimiter).length - 1);
    const most = Math.max(0, ...counts);
    return { delimiter, score: most === 0 ? 0 : counts.filter((count) => count === most).length * 100 + most };
  });
  return scored.reduce((best, one) => (one.score > best.score ? one : best)).delimiter;
}

/**
 * The lines of a CSV file, a piece's worth at a time; lines with nothing in them are passed over.
 * @throws RefusedError quote-not-closed, encoding-utf16, binary-file
 */
export function* csvSheetLines(
  bytes: Uint8Array,
  delimiter: SheetDelimiter,
): Generator<{ lines: SheetLine[]; bytesRead: number }> {
  let rest = '';
  let row = 1;
  for (const { text, bytesRead } of textPieces(bytes)) {
    const piece = parsePiece(rest + text, delimiter, row, bytesRead === bytes.length);
    rest = piece.rest;
    row = piece.row;
    if (rest.length > MOST_CELL_CHARACTERS)
      throw new RefusedError({ code: 'quote-not-closed', facts: { row, value: rest.slice(0, 40) } });
    yield { lines: piece.lines, bytesRead };
  }
}

/** Whole lines of a text; the last, which may go on in the next piece, is given back unless it is the file's last. */
function parsePiece(text: string, delimiter: string, fromRow: number, isLast: boolean) {
  const lines: SheetLine[] = [];
  let row = fromRow;
  let read = 0;
  let held: { line: SheetLine; broken: boolean; from: number } | null = null;
  const keep = () => {
    if (!held) return;
    if (held.broken)
      throw new RefusedError({
        code: 'quote-not-closed',
        facts: { row: held.line.row, value: String(held.line.cells[0] ?? '').slice(0, 40) },
      });
    if (held.line.cells.some((cell) => cell !== '')) lines.push(held.line);
  };
  Papa.parse<string[]>(text, {
    delimiter,
    newline: '\n',
    fastMode: false,
    step: ({ data, errors, meta }) => {
      keep();
      held = { line: { row, cells: data.map(cellOf) }, broken: errors.length > 0, from: read };
      for (let at = text.indexOf('\n', read); at !== -1 && at < meta.cursor; at = text.indexOf('\n', at + 1)) row++;
      read = meta.cursor;
    },
  });
  // control flow does not see what the step did
  const last = held as { line: SheetLine; broken: boolean; from: number } | null;
  if (isLast) keep();
  return { lines, row: isLast || !last ? row : last.line.row, rest: isLast ? '' : last ? text.slice(last.from) : text };
}

const cellOf = (cell: string): SheetCell => cell.trim();
