/**
 * The further files of an exported folder: every table of the record, row by row as it is stored, put right and undone rows
 * too. One CSV a table under `record/`, with a column for each of its own; what is no text (photos) becomes a file of its
 * own beside it. The shop's own files (writeShopFiles.ts) are for reading and for bringing in; these bring a record back.
 */
export const RECORD_FOLDER = 'record/';
export const PHOTO_FOLDER = 'photos/';
export const ABOUT_FILE = `${RECORD_FOLDER}about-this-export.csv`;
export const IDS_FILE = `${RECORD_FOLDER}ids-given-out.csv`;

/** Raised when the manner of these files changes so that an older program could not read them. */
export const EXPORT_FORMAT = 1;

/** "dial_readings" -> "record/all-dial-readings.csv"; "all", as "sizes.csv" already stands for those that count. */
export const fileOfTable = (table: string): string => `${RECORD_FOLDER}all-${table.replaceAll('_', '-')}.csv`;

/** What stands in the record for a table: name, columns, rows. */
export type TableShape = {
  name: string;
  columns: readonly { name: string; type: 'INTEGER' | 'REAL' | 'TEXT' | 'BLOB'; mayBeNull: boolean }[];
  key: readonly string[];
};
export type StoredCell = string | number | Uint8Array | null;

/** An empty text where nothing at all may stand too: a lone apostrophe, which no other text is written as. */
export const EMPTY_TEXT = "'";
