import Papa from 'papaparse';
import { decodeText } from './decodeText.ts';
import { asWritten } from './inertText.ts';
import type { FileBytes } from './readFolder.ts';
import { type Remark, remarkOnFile } from './remark.ts';
import {
  ABOUT_FILE,
  EMPTY_TEXT,
  EXPORT_FORMAT,
  fileOfTable,
  IDS_FILE,
  RECORD_FOLDER,
  type StoredCell,
  type TableShape,
} from './storedFiles.ts';

export type ReadStored = {
  tables: { table: TableShape; rows: StoredCell[][] }[];
  idsGivenOut: [table: string, lastId: number][];
  faults: Remark[];
};

/** More faults than this say nothing new. */
const MOST_FAULTS = 200;

/**
 * Reads the further files of an exported folder back, every cell as it was stored. Everything a table holds has to be
 * there: a missing file or column is a fault, since a record brought back in part would look whole.
 *
 * @param files names as in the export, "record/all-sizes.csv"; other files are not looked at
 * @param tables what the record of this program holds
 * @param schemaVersion of this program: only its own exports are read (an older program's record file is migrated instead)
 */
export function readStoredFiles(
  files: readonly FileBytes[],
  tables: readonly TableShape[],
  schemaVersion: number,
): ReadStored {
  const byName = new Map(files.map((file) => [file.name, file]));
  const faults: Remark[] = [];
  if (!madeByThisProgram(byName, schemaVersion, faults)) return { tables: [], idsGivenOut: [], faults };
  const ids = cellsOf(byName, IDS_FILE, ['table', 'last_id'], faults);
  const idsGivenOut = ids.flatMap(({ row, cells: [table = '', lastId = ''] }): [string, number][] => {
    const known = tables.some(({ name }) => name === table) && /^\d{1,15}$/.test(lastId);
    if (!known) faults.push(faultAt(IDS_FILE, row, 'last_id', lastId, 'a table of the record and a whole number'));
    return known ? [[table, Number(lastId)]] : [];
  });
  const read = tables.map((table) => ({ table, rows: rowsOf(byName, table, faults) }));
  const known = new Set([ABOUT_FILE, IDS_FILE, ...tables.map(({ name }) => fileOfTable(name))]);
  for (const { name } of files)
    if (name.startsWith(RECORD_FOLDER) && !known.has(name))
      faults.push(remarkOnFile(name, 'file-not-known', 'only files an export of this program has'));
  return { tables: read, idsGivenOut, faults: faults.slice(0, MOST_FAULTS) };
}

function madeByThisProgram(byName: ReadonlyMap<string, FileBytes>, schemaVersion: number, faults: Remark[]): boolean {
  const before = faults.length;
  const [about] = cellsOf(byName, ABOUT_FILE, ['export_format', 'record_layout'], faults);
  if (faults.length > before) return false;
  const [format, layout] = about?.cells ?? [];
  if (format !== String(EXPORT_FORMAT) || layout !== String(schemaVersion)) {
    const expected = `format ${EXPORT_FORMAT} and record layout ${schemaVersion}: an export made by this version of the program`;
    faults.push(
      remarkOnFile(ABOUT_FILE, 'other-version', expected, {
        row: about?.row ?? 1,
        column: 'record_layout',
        value: `format ${format ?? 'none'}, record layout ${layout ?? 'none'}`,
      }),
    );
  }
  return faults.length === before;
}

function rowsOf(byName: ReadonlyMap<string, FileBytes>, table: TableShape, faults: Remark[]): StoredCell[][] {
  const file = fileOfTable(table.name);
  const names = table.columns.map(({ name }) => name);
  const rows: StoredCell[][] = [];
  for (const { row, cells } of cellsOf(byName, file, names, faults)) {
    const values = table.columns.map((column, place) => {
      const read = readCell(cells[place] ?? '', column, byName);
      if (typeof read === 'object' && read !== null && 'expected' in read) {
        if (faults.length < MOST_FAULTS)
          faults.push(faultAt(file, row, column.name, cells[place] ?? '', read.expected));
        return null;
      }
      return read;
    });
    rows.push(values);
  }
  return rows;
}

type Expected = { expected: string };

function readCell(
  cell: string,
  { type, mayBeNull }: TableShape['columns'][number],
  byName: ReadonlyMap<string, FileBytes>,
): StoredCell | Expected {
  if (cell === '' && mayBeNull) return null;
  if (type === 'TEXT') return cell === EMPTY_TEXT ? '' : asWritten(cell);
  if (type === 'BLOB') return byName.get(cell)?.bytes ?? { expected: 'the name of a file of this folder' };
  const number = cell.trim() === '' ? Number.NaN : Number(cell);
  if (type === 'INTEGER') return Number.isSafeInteger(number) ? number : { expected: 'a whole number' };
  return Number.isFinite(number) ? number : { expected: 'a number like 12.5' };
}

const faultAt = (file: string, row: number, column: string, value: string, expected: string): Remark =>
  remarkOnFile(file, 'not-as-exported', expected, { row, column, value });

type Cells = { row: number; cells: string[] };

/** The rows of a file, their cells in the order of the columns asked for; a fault for each column that is missing. */
function cellsOf(
  byName: ReadonlyMap<string, FileBytes>,
  name: string,
  columns: readonly string[],
  faults: Remark[],
): Cells[] {
  const file = byName.get(name);
  if (!file) {
    faults.push(remarkOnFile(name, 'file-missing', 'every file of the export'));
    return [];
  }
  const text = decodeText(file.bytes);
  if (text === null) {
    faults.push(remarkOnFile(name, 'encoding-utf16', 'UTF-8 text, as exported'));
    return [];
  }
  const { data, errors } = Papa.parse<string[]>(text, { delimiter: ',', skipEmptyLines: true });
  const [broken] = errors;
  if (broken)
    faults.push(remarkOnFile(name, 'quote-not-closed', 'quotes in pairs round a cell', { row: (broken.row ?? 0) + 1 }));
  const [heading = [], ...rows] = data;
  const places = columns.map((column) => heading.indexOf(column));
  for (const [place, column] of columns.entries()) {
    if (places[place] === -1)
      faults.push(remarkOnFile(name, 'column-missing', `a column called ${column}`, { row: 1, column }));
  }
  const extra = heading.find((column) => !columns.includes(column));
  if (extra !== undefined)
    faults.push(remarkOnFile(name, 'column-not-known', columns.join(', '), { row: 1, column: extra, value: extra }));
  if (broken || extra !== undefined || places.includes(-1)) return [];
  return rows.flatMap((cells, index) => {
    if (cells.length === heading.length) return [{ row: index + 2, cells: places.map((place) => cells[place] ?? '') }];
    if (faults.length < MOST_FAULTS)
      faults.push(remarkOnFile(name, 'not-as-exported', `${heading.length} cells`, { row: index + 2 }));
    return [];
  });
}
