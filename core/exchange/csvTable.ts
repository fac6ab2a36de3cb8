import Papa from 'papaparse';
import { decodeText } from './decodeText.ts';
import { type Line, type Remark, remarkAt, remarkOnFile } from './remark.ts';

export type Delimiter = ',' | ';';

/** A CSV file as lines of cells under named columns. */
export type CsvTable = {
  file: string;
  delimiter: Delimiter;
  columns: ReadonlyMap<string, number>;
  lines: Line[];
  faults: Remark[];
};

/** More faults of one kind than this say nothing new. */
const MOST_FAULTS = 200;

/**
 * Reads one CSV file: comma or semicolon, whichever the heading has more of. Column names are taken in small letters.
 * Lines with nothing in them are passed over. `row` is the line of the file at which the row begins.
 */
export function csvTable(file: string, bytes: Uint8Array): CsvTable {
  const text = decodeText(bytes);
  if (text === null) return noTable(file, remarkOnFile(file, 'encoding-utf16', 'UTF-8 or Windows-1252 text'));
  const delimiter = delimiterOf(text);
  const faults: Remark[] = [];
  let columns: Map<string, number> | null = null;
  const lines: Line[] = [];
  let width = 0;
  let line = 1;
  let read = 0;
  Papa.parse<string[]>(text, {
    delimiter,
    step: ({ data: cells, errors, meta }) => {
      const row = line;
      line += newlines(text, read, meta.cursor);
      read = meta.cursor;
      if (faults.length >= MOST_FAULTS) return;
      if (errors.length > 0)
        faults.push(remarkOnFile(file, 'quote-not-closed', 'quotes in pairs round a cell', { row }));
      else if (cells.every((cell) => cell.trim() === '')) return;
      else if (!columns) {
        columns = headingOf(file, row, cells, faults);
        width = Math.max(0, ...columns.values()) + 1;
      } else addLine(lines, faults, width, { file, row, cells, columns });
    },
  });
  if (!columns) return noTable(file, ...faults, remarkOnFile(file, 'file-empty', 'a heading and rows'));
  return { file, delimiter, columns, lines, faults };
}

const noTable = (file: string, ...faults: Remark[]): CsvTable => ({
  file,
  delimiter: ',',
  columns: new Map(),
  lines: [],
  faults,
});

function delimiterOf(text: string): Delimiter {
  const heading = text.slice(0, text.search(/[\r\n](?!$)|$/)).replace(/"[^"]*"/g, '');
  return heading.split(';').length > heading.split(',').length ? ';' : ',';
}

function newlines(text: string, from: number, to: number): number {
  let count = 0;
  for (let place = from; place < to; place++) {
    const code = text.charCodeAt(place);
    if (code === 10 || (code === 13 && text.charCodeAt(place + 1) !== 10)) count++;
  }
  return count;
}

function headingOf(file: string, row: number, cells: readonly string[], faults: Remark[]): Map<string, number> {
  const columns = new Map<string, number>();
  for (const [place, cell] of cells.entries()) {
    const name = cell.trim().toLowerCase();
    if (name === '') continue;
    if (columns.has(name)) {
      faults.push(remarkOnFile(file, 'column-twice', 'each column once', { row, column: name, value: name }));
    }
    columns.set(name, place);
  }
  return columns;
}

/** A cell beyond the heading is most often a decimal comma that was not put in quotes. */
function addLine(lines: Line[], faults: Remark[], width: number, line: Line): void {
  const beyond = line.cells.slice(width).find((cell) => cell.trim() !== '');
  if (beyond === undefined) lines.push(line);
  else {
    const expected = `${width} cells; a number with a decimal comma in quotes, where commas part the cells`;
    faults.push({ ...remarkAt(line, null, 'too-many-cells', expected), value: beyond.slice(0, 200) });
  }
}
