import type { Line } from './remark.ts';

/** A cell of a sheet: text as it stands there (a day of a workbook as ISO text), a number of a workbook, or nothing. */
export type SheetCell = string | number | null;

/** A line of a sheet; `row` is the line of a CSV file, or the row of a workbook's sheet, that it begins on. */
export type SheetLine = { row: number; cells: readonly SheetCell[] };

/** A sheet as a person sees it before anything is read from it. */
export type Sheet = {
  file: string;
  kind: 'csv' | 'xlsx';
  /** sheets of the workbook; a CSV file is one */
  sheets: readonly string[];
  sheet: string;
  /** what parts the cells of a CSV file */
  delimiter: string | null;
};

export const cellAsText = (cell: SheetCell | undefined): string =>
  cell === null || cell === undefined ? '' : typeof cell === 'number' ? String(cell) : cell.trim();

/** A line for remarks to point at: its cells under our own column names. */
export const lineAt = (file: string, { row, cells }: SheetLine, columns: ReadonlyMap<string, number>): Line =>
  new SheetLineAt(file, row, cells, columns);

/** A million of these are kept until an import is thought through: their texts are made only when one is remarked on. */
class SheetLineAt implements Line {
  readonly file: string;
  readonly row: number;
  readonly columns: ReadonlyMap<string, number>;
  readonly #cells: readonly SheetCell[];

  constructor(file: string, row: number, cells: readonly SheetCell[], columns: ReadonlyMap<string, number>) {
    this.file = file;
    this.row = row;
    this.columns = columns;
    this.#cells = cells;
  }

  get cells(): string[] {
    return this.#cells.map(cellAsText);
  }
}
