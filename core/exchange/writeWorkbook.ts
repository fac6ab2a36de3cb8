import writeExcelFile, { type Cell, type Sheet } from 'write-excel-file/node';
import type { Day } from '../units/day.ts';

/** What a column of a sheet for people holds; a number's decimals as it is shown. */
export type SheetColumn<Row> = {
  head: string;
  /** characters */
  width: number;
} & (
  | { kind: 'text'; value: (row: Row) => string | null }
  | { kind: 'day'; value: (row: Row) => Day | null }
  | { kind: 'number'; decimals: number; value: (row: Row) => number | null }
);

export type SheetForPeople = { name: string; rows: number; cells: Cell[][]; widths: number[] };

/** Rows an XLSX sheet can hold, less its heading (ECMA-376 as every spreadsheet keeps to it: 2^20). */
export const MOST_SHEET_ROWS = 2 ** 20 - 1;
/** Characters a cell can hold (as every spreadsheet keeps to it). */
const MOST_CELL_TEXT = 32_767;

/** A sheet of rows under one heading: text as text (a formula in it is no formula), numbers as numbers, days as days. */
export const sheetForPeople = <Row>(
  name: string,
  rows: readonly Row[],
  columns: readonly SheetColumn<Row>[],
): SheetForPeople => ({
  name,
  rows: rows.length,
  widths: columns.map(({ width }) => width),
  cells: [
    columns.map(({ head, kind }) => ({
      value: head,
      type: String,
      fontWeight: 'bold' as const,
      wrap: true,
      align: kind === 'number' ? ('right' as const) : ('left' as const),
    })),
    ...rows.map((row) => columns.map((column) => cellOf(column, row))),
  ],
});

function cellOf<Row>(column: SheetColumn<Row>, row: Row): Cell {
  switch (column.kind) {
    case 'text': {
      const text = column.value(row) ?? '';
      return text === '' ? null : { value: asXmlText(text).slice(0, MOST_CELL_TEXT), type: String };
    }
    case 'day': {
      const day = column.value(row);
      return day === null ? null : { value: new Date(`${day}T00:00:00Z`), type: Date, format: 'yyyy-mm-dd' };
    }
    case 'number': {
      const value = column.value(row);
      const format = column.decimals === 0 ? '0' : `0.${'0'.repeat(column.decimals)}`;
      return value === null ? null : { value, type: Number, format };
    }
  }
}

/** Control characters have no place in XML 1.0, section 2.2; they become spaces. */
const asXmlText = (text: string): string =>
  // biome-ignore lint/suspicious/noControlCharactersInRegex: these are the ones XML cannot hold
  text.replace(/[\u0000-\u0008\u000b\u000c\u000e-\u001f\ufffe\uffff]/g, ' ').toWellFormed();

/** One XLSX file; the heading of each sheet stays in sight. */
export async function workbookFile(sheets: readonly SheetForPeople[]): Promise<Uint8Array> {
  const written: Sheet<never>[] = sheets.map(({ name, cells, widths }) => ({
    sheet: name,
    data: cells,
    columns: widths.map((width) => ({ width })),
    stickyRowsCount: 1,
  }));
  return writeExcelFile(written).toBuffer();
}
