import { resolve } from 'node:path';
import type { exchangeRestoreFolder, GivenFile } from '../contract/exchange.ts';
import type { Handler, ReplyOf } from '../contract/operation.ts';
import type { FileBytes } from '../exchange/readFolder.ts';
import { type ReadStored, readStoredFiles } from '../exchange/readStoredFiles.ts';
import { type Remark, remarkOnFile } from '../exchange/remark.ts';
import { PHOTO_FOLDER, RECORD_FOLDER } from '../exchange/storedFiles.ts';
import { filesOfZip } from '../exchange/zipFiles.ts';
import { orRefuse, RefusedError } from '../outcome.ts';
import { deferRefers, holdsNothing, putBackRows, setIdsGivenOut, tablesOnRecord } from '../record/allRows.ts';
import { writePlain } from '../record/entry.ts';
import { layDownWhole, readWholeFolder } from '../record/folderOnDisk.ts';
import { openRecord, schemaVersion } from '../record/openRecord.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { recordIdOf } from '../record/recordIdOf.ts';
import { type Context, openInto } from './context.ts';
import { exportedFiles } from './exportedFiles.ts';
import { fileInHand } from './givenFiles.ts';
import { rememberRecord } from './recentRecords.ts';
import { freePath } from './recordStartEmpty.ts';

type Restored = ReplyOf<typeof exchangeRestoreFolder>;

/**
 * Brings an exported folder back, into a record of its own that is then open: rows under the ids they had, put right and
 * undone ones too. With a fault no record is laid down, and the one that is open stays open.
 */
export const exchangeRestoreFolderHandler: Handler<typeof exchangeRestoreFolder, Context> = (context, { from }) => {
  const files = givenFolder(context, from);
  const path = freePath(context.defaultRecordPath);
  try {
    const restored = layDownWhole(path, (passing) => {
      const record = openRecord(passing, { create: true });
      try {
        return restoreInto(record, files);
      } finally {
        record.close();
      }
    });
    openInto(context, path);
    rememberRecord(context, path);
    return { ...restored, path, recordId: recordIdOf(context.record) };
  } catch (thrown) {
    const recordId = recordIdOf(context.record);
    if (thrown instanceof FaultyFolder)
      return { done: false, path: null, recordId, tables: 0, rows: 0, ...thrown.said };
    throw thrown;
  }
};

/** Leaves the laying down of a record with nothing kept. */
class FaultyFolder extends Error {
  readonly said: { faults: Remark[]; notes: Remark[] };
  constructor(said: FaultyFolder['said']) {
    super('the folder has faults');
    this.said = said;
  }
}

function givenFolder(context: Context, from: GivenFile): FileBytes[] {
  if (from.path !== null && !/\.zip$/i.test(from.path)) return readWholeFolder(resolve(from.path));
  return withoutOuterFolder(orRefuse(filesOfZip(fileInHand(context, from).bytes)));
}

/** A folder that was zipped by hand holds its files one folder further down. */
function withoutOuterFolder(files: FileBytes[]): FileBytes[] {
  const about = files.find(({ name }) => /(^|\/)record\/about-this-export\.csv$/.test(name));
  const outer = about ? about.name.slice(0, about.name.indexOf(`${RECORD_FOLDER}about`)) : '';
  return files.flatMap(({ name, bytes }) =>
    name.startsWith(outer) ? [{ name: name.slice(outer.length), bytes }] : [],
  );
}

/**
 * Puts every row of an exported folder into a record that holds nothing yet, in one transaction.
 * @throws FaultyFolder; RefusedError rows-do-not-fit (rows that refer to what is not there, or break a rule of the record)
 */
export function restoreInto(record: ReadableRecord, files: readonly FileBytes[]): Omit<Restored, 'path' | 'recordId'> {
  if (!holdsNothing(record)) throw new RefusedError({ code: 'record-not-empty' });
  const read = readStoredFiles(files, tablesOnRecord(record), schemaVersion());
  if (read.faults.length > 0) throw new FaultyFolder({ faults: read.faults, notes: [] });
  const rows = putBack(record, read);
  return { done: true, tables: read.tables.length, rows, faults: [], notes: changedSinceExport(record, files) };
}

function putBack(record: ReadableRecord, { tables, idsGivenOut }: ReadStored): number {
  let at = '';
  try {
    return writePlain(record, (w) => {
      deferRefers(w);
      let count = 0;
      for (const { table, rows } of tables) {
        at = table.name;
        count += putBackRows(w, table, rows);
      }
      setIdsGivenOut(w, idsGivenOut);
      at = '';
      return count;
    });
  } catch (thrown) {
    if (!isConstraint(thrown)) throw thrown;
    throw new RefusedError({ code: 'rows-do-not-fit', facts: { table: at, reason: thrown.message.slice(0, 200) } });
  }
}

const isConstraint = (thrown: unknown): thrown is Error & { code: string } =>
  thrown instanceof Error && 'code' in thrown && String(thrown.code).startsWith('SQLITE_CONSTRAINT');

/**
 * The shop's own files say nothing that the further files do not: changed by hand since, their changes are not brought
 * back, and that is told. Reading the record whole also shows that the forecast can read it.
 */
function changedSinceExport(record: ReadableRecord, files: readonly FileBytes[]): Remark[] {
  const exported = new Map(exportedFiles(record).map(({ name, bytes }) => [name, bytes]));
  return files.flatMap(({ name, bytes }) => {
    if (name.startsWith(RECORD_FOLDER) || name.startsWith(PHOTO_FOLDER)) return [];
    const ours = exported.get(name);
    if (ours && Buffer.compare(ours, bytes) === 0) return [];
    const expected = ours
      ? 'the file as exported: the record comes back as it was then; bring changed files in afterwards'
      : 'a file of the export';
    return [remarkOnFile(name, ours ? 'changed-since-export' : 'file-passed-over', expected)];
  });
}
