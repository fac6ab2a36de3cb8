import { keptInert } from './inertText.ts';
import type { FileBytes } from './readFolder.ts';
import {
  ABOUT_FILE,
  EMPTY_TEXT,
  EXPORT_FORMAT,
  fileOfTable,
  IDS_FILE,
  PHOTO_FOLDER,
  type StoredCell,
  type TableShape,
} from './storedFiles.ts';
import { csvFile, type WrittenCell } from './writeCsv.ts';

export type StoredTableRows = { table: TableShape; rows: Iterable<readonly StoredCell[]> };

/** The further files of a record; the same record gives the same bytes. */
export function writeStoredFiles(
  tables: Iterable<StoredTableRows>,
  idsGivenOut: readonly (readonly [table: string, lastId: number])[],
  schemaVersion: number,
): FileBytes[] {
  const files = [
    csvFile(ABOUT_FILE, ['export_format', 'record_layout'], [[EXPORT_FORMAT, schemaVersion]]),
    csvFile(IDS_FILE, ['table', 'last_id'], idsGivenOut),
  ];
  for (const one of tables) files.push(...writeTable(one));
  return files;
}

function writeTable({ table, rows }: StoredTableRows): FileBytes[] {
  const photos: FileBytes[] = [];
  const keyPlaces = table.key.map((name) => table.columns.findIndex((column) => column.name === name));
  const written: WrittenCell[][] = [];
  for (const row of rows) {
    const key = keyPlaces.map((place) => String(row[place]).replace(/[^\w-]/g, '_')).join('-');
    written.push(
      row.map((value, place) => {
        if (!(value instanceof Uint8Array)) return cellOf(value, table.columns[place]?.mayBeNull ?? false);
        const photo = { name: photoName(table.name, table.columns[place]?.name ?? '', key, value), bytes: value };
        photos.push(photo);
        return photo.name;
      }),
    );
  }
  const columns = table.columns.map(({ name }) => name);
  return [csvFile(fileOfTable(table.name), columns, written), ...photos];
}

function cellOf(value: string | number | null, mayBeNull: boolean): WrittenCell {
  if (typeof value !== 'string') return value;
  return value === '' && mayBeNull ? EMPTY_TEXT : keptInert(value);
}

/** A JPEG begins FF D8 FF (ISO/IEC 10918-1, annex B: start of image, then a marker). */
const isJpeg = (bytes: Uint8Array): boolean => bytes[0] === 0xff && bytes[1] === 0xd8 && bytes[2] === 0xff;

const photoName = (table: string, column: string, key: string, bytes: Uint8Array): string =>
  `${PHOTO_FOLDER}${table.replaceAll('_', '-')}-${key}-${column.replaceAll('_', '-')}.${isJpeg(bytes) ? 'jpg' : 'bin'}`;
