import { csvTable } from './csvTable.ts';
import { type FolderFile, folderColumns, folderFiles } from './folderColumns.ts';
import { type Row, readRows } from './readRows.ts';
import { type Line, type Remark, remarkOnFile } from './remark.ts';

export type FileBytes = { name: string; bytes: Uint8Array };

export type FolderRows = { [F in FolderFile]: Row<(typeof folderColumns)[F]>[] };
export type RowOf<F extends FolderFile> = FolderRows[F][number];

export type ReadFolder = {
  rows: FolderRows;
  /** lines that gave no row: what they name is no unknown name elsewhere */
  misread: readonly Line[];
  faults: Remark[];
  notes: Remark[];
};

/** Reads a folder of CSV files, each on its own; how they fit together is checked afterwards (planFolder.ts). */
export function readFolder(files: readonly FileBytes[]): ReadFolder {
  const byName = new Map<string, FileBytes[]>();
  for (const file of files) {
    const name = baseName(file.name);
    byName.set(name, [...(byName.get(name) ?? []), file]);
  }
  const faults: Remark[] = [];
  const notes: Remark[] = [];
  const misread: Line[] = [];
  const rows = Object.fromEntries(
    folderFiles.map((name) => {
      const [file, second] = byName.get(name) ?? [];
      if (second) faults.push(remarkOnFile(name, 'file-twice', `one file called ${name}`));
      if (!file) return [name, []];
      const read = readRows(csvTable(name, file.bytes), folderColumns[name]);
      faults.push(...read.faults);
      notes.push(...read.notes);
      misread.push(...read.misread);
      return [name, read.rows];
    }),
  ) as unknown as FolderRows;
  for (const name of byName.keys()) {
    if (!isFolderFile(name)) notes.push(remarkOnFile(name, 'file-passed-over', folderFiles.join(', ')));
  }
  if (![...byName.keys()].some(isFolderFile)) {
    faults.push(remarkOnFile('', 'no-files-found', `at least one of ${folderFiles.join(', ')}`));
  }
  return { rows, misread, faults, notes };
}

const isFolderFile = (name: string): name is FolderFile => Object.hasOwn(folderColumns, name);

/** A browser gives "workshop/sizes.csv" for a file of a chosen folder. */
const baseName = (path: string): string => (path.split(/[\\/]/).at(-1) ?? path).toLowerCase();
