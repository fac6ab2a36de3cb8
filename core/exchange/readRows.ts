import type { Column } from './columns.ts';
import type { CsvTable } from './csvTable.ts';
import { type FoundMark, findDecimalMark, withoutUnit } from './decimalMark.ts';
import { cellText, type Line, type Remark, remarkAt, remarkOnFile } from './remark.ts';

type Columns = Record<string, Column<unknown>>;

/** A row of a file, read: one value a column, and the line it stands on. */
export type Row<C extends Columns> = { [K in keyof C]: C[K] extends Column<infer T> ? T : never } & { line: Line };

export type ReadRows<C extends Columns> = {
  rows: Row<C>[];
  /** lines that gave no row, for a fault in them */
  misread: Line[];
  faults: Remark[];
  notes: Remark[];
};

/** Reads the lines of a table by its columns; a line with a fault gives no row. */
export function readRows<C extends Columns>(table: CsvTable, columns: C): ReadRows<C> {
  const faults = [...table.faults, ...missingColumns(table, columns)];
  const notes = extraColumns(table, columns);
  if (faults.length > table.faults.length) return { rows: [], misread: table.lines, faults, notes };
  const mark = findDecimalMark(numbersOf(table, columns), table.delimiter);
  const misread: Line[] = [];
  const rows = table.lines.flatMap((line) => {
    const { row, faults: found } = readLine(line, columns, mark);
    faults.push(...found);
    if (!row) misread.push(line);
    return row ? [row] : [];
  });
  return { rows, misread, faults, notes };
}

/** A file without any heading is told of as a whole. */
const missingColumns = (table: CsvTable, columns: Columns): Remark[] =>
  Object.entries(table.columns.size === 0 ? {} : columns)
    .filter(([name, column]) => !column.empty && !table.columns.has(name))
    .map(([name]) => remarkOnFile(table.file, 'column-missing', `a column called ${name}`, { row: 1, column: name }));

const extraColumns = (table: CsvTable, columns: Columns): Remark[] =>
  [...table.columns.keys()]
    .filter((name) => !Object.hasOwn(columns, name))
    .map((name) =>
      remarkOnFile(table.file, 'column-passed-over', Object.keys(columns).join(', '), {
        row: 1,
        column: name,
        value: name,
      }),
    );

function* numbersOf(table: CsvTable, columns: Columns): Generator<string> {
  for (const [name, { kind }] of Object.entries(columns)) {
    if (!kind.number) continue;
    for (const line of table.lines) yield withoutUnit(cellText(line, name), kind.number.unit);
  }
}

function readLine<C extends Columns>(
  line: Line,
  columns: C,
  mark: FoundMark,
): { row: Row<C> | null; faults: Remark[] } {
  const faults: Remark[] = [];
  const row: Record<string, unknown> = { line };
  for (const [name, { kind, empty }] of Object.entries(columns)) {
    const cell = cellText(line, name);
    if (cell === '') {
      if (empty) row[name] = empty.value;
      else faults.push(remarkAt(line, name, 'cell-empty', expectedHere(kind, mark)));
      continue;
    }
    const reading = kind.read(cell, mark);
    if ('code' in reading) faults.push(remarkAt(line, name, reading.code, reading.expected));
    else row[name] = reading.value;
  }
  return { row: faults.length === 0 ? (row as Row<C>) : null, faults };
}

/** What a kind says of an empty cell is what it expects; a kind that would take it expects some text. */
function expectedHere(kind: Column<unknown>['kind'], mark: FoundMark): string {
  const reading = kind.read('', mark);
  return 'code' in reading ? reading.expected : 'some text';
}
