import type { DecimalMark } from './decimalMark.ts';
import { readNumberCell } from './decimalMark.ts';
import type { FolderRows } from './readFolder.ts';
import { type Line, type Remark, remarkAt } from './remark.ts';
import { type DateOrder, readSheetDay } from './sheetDay.ts';
import { cellAsText, lineAt, type SheetCell, type SheetLine } from './sheetLines.ts';
import { columnsOfNoun, fileOfNoun, type NounColumn, type SheetNoun, wordAliases } from './sheetNouns.ts';

/** How a sheet is read: where each of our columns comes from, and what was asked once for the whole of it. */
export type SheetMapping = {
  columns: readonly MappedColumn[];
  dateOrder: DateOrder;
  decimalMark: DecimalMark;
  /** row of the sheet its heads stand on */
  headRow: number;
};

export type MappedColumn = {
  /** ours: "size_mm" */
  column: string;
  /** column of the sheet, from 0; null: `fixed` stands in every row */
  place: number | null;
  fixed: string;
  /** of the sheet's numbers; null: as ours */
  unit: 'mm' | 'in' | 'h' | null;
};

const MM_PER_INCH = 25.4; // exactly: international yard and pound agreement, 1959

/** A row of any noun, read: one value a column, and the line it stands on. */
type ReadRow = Record<string, unknown> & { line: Line };

/** Reads the lines of a sheet as rows of a noun; a line with a fault gives no row. */
export function sheetRowReader(file: string, noun: SheetNoun, mapping: SheetMapping) {
  const places = new Map(mapping.columns.flatMap(({ column, place }) => (place === null ? [] : [[column, place]])));
  const columns = columnsOfNoun(noun).map((column) => ({
    column,
    read: cellReader(column, mapping, known(mapping, column.name)),
    mapped: known(mapping, column.name),
  }));
  const texts = new Map<string, string>();
  /** The same name a million times over is kept once. */
  const once = (value: unknown): unknown => {
    if (typeof value !== 'string') return value;
    const kept = texts.get(value);
    if (kept !== undefined) return kept;
    if (texts.size < 200_000) texts.set(value, value);
    return value;
  };
  return (sheetLine: SheetLine): { row: ReadRow | null; faults: Remark[] } => {
    const line = lineAt(file, sheetLine, places);
    const row: ReadRow = { line };
    const faults: Remark[] = [];
    for (const { column, read, mapped } of columns) {
      const cell = !mapped ? null : mapped.place === null ? mapped.fixed : (sheetLine.cells[mapped.place] ?? null);
      const reading = read(cell);
      if ('expected' in reading) faults.push({ ...remarkAt(line, column.name, reading.code, reading.expected) });
      else row[column.name] = once(reading.value);
    }
    return { row: faults.length === 0 ? row : null, faults };
  };
}

const known = (mapping: SheetMapping, name: string): MappedColumn | undefined =>
  mapping.columns.find(({ column }) => column === name);

type Reading = { value: unknown } | { code: string; expected: string };

function cellReader(
  { name, kind, empty, unit, holds }: NounColumn,
  { dateOrder, decimalMark }: SheetMapping,
  mapped: MappedColumn | undefined,
): (cell: SheetCell) => Reading {
  const mark = { mark: decimalMark, unclear: false };
  const plain = { mark: '.' as const, unclear: false };
  const inches = unit === 'mm' && mapped?.unit === 'in';
  const expected = () => {
    const reading = kind.read('', mark);
    return 'expected' in reading ? reading.expected : 'some text';
  };
  return (cell) => {
    const text = cellAsText(cell);
    if (text === '') return empty ?? { code: 'cell-empty', expected: expected() };
    if (holds === 'day') {
      const day = readSheetDay(text, dateOrder);
      return day === null
        ? { code: 'not-a-day', expected: `a day that exists, like ${DAY_LIKE[dateOrder]}` }
        : kind.read(day, plain);
    }
    if (holds === 'number') {
      if (inches) return readInches(text, typeof cell === 'number' ? plain : mark, (mm) => kind.read(mm, plain));
      return kind.read(text, typeof cell === 'number' ? plain : mark);
    }
    const aliases = wordAliases[name];
    if (!aliases) return kind.read(text, mark);
    const word = text.toLowerCase().replace(/[\s_]+/g, '-');
    return kind.read(Object.hasOwn(aliases, word) ? (aliases[word] ?? word) : word, mark);
  };
}

const DAY_LIKE: Record<DateOrder, string> = { ymd: '2026-10-12', dmy: '12.10.2026', mdy: '10/12/2026' };

function readInches(
  text: string,
  mark: { mark: DecimalMark; unclear: boolean },
  asMm: (mm: string) => Reading,
): Reading {
  const number = readNumberCell(text.replace(/\s*(?:in|inch|inches|["\u2033])\.?$/i, ''), null, mark);
  if ('code' in number)
    return { code: number.code, expected: number.expected.replace('a number', 'a number of inches') };
  // to a millionth of a millimetre, so that an inch's own roundness is kept and a binary fraction's is not
  return asMm(String(Math.round(number.value * MM_PER_INCH * 1e6) / 1e6));
}

/** Rows of one noun as the folder they would be: every other file of it empty. */
export function asFolder(noun: SheetNoun, rows: readonly ReadRow[]): FolderRows {
  const empty: FolderRows = {
    'machines.csv': [],
    'hours.csv': [],
    'points.csv': [],
    'sizes.csv': [],
    'moves.csv': [],
    'classes.csv': [],
    'findings.csv': [],
  };
  // the reader has read every column of the noun by that file's own kinds
  return { ...empty, [fileOfNoun(noun)]: rows } as FolderRows;
}
