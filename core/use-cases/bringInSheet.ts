import type { BringInSheet, exchangeBringInSheet, SheetAccount } from '../contract/exchange.ts';
import type { Handler } from '../contract/operation.ts';
import type { Remark } from '../exchange/remark.ts';
import { csvSheetLines, type SheetDelimiter } from '../exchange/sheetCsv.ts';
import { foldHead } from '../exchange/sheetHeads.ts';
import { cellAsText, type SheetLine } from '../exchange/sheetLines.ts';
import { columnsOfNoun } from '../exchange/sheetNouns.ts';
import { asFolder, type SheetMapping, sheetRowReader } from '../exchange/sheetRows.ts';
import { RefusedError } from '../outcome.ts';
import { type EntryMade, writePlain } from '../record/entry.ts';
import { keepMapping } from '../record/mappingStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import type { Day } from '../units/day.ts';
import { refuseField } from './asked.ts';
import { bringInRows, type Told } from './bring-in/bringIn.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { type FileInHand, fileInHand } from './givenFiles.ts';
import { delimiterOf, isWorkbook, sheetOfWorkbook } from './sheetInHand.ts';

/** Beyond this a file is no shop's sheet. */
const MOST_ROWS = 2_000_000;
/** Of a long list the first so many are told, and how many there are. */
const MOST_TOLD = 500;

export type AskedSheet = Omit<BringInSheet, 'file'>;
export type BringingIn = { asOf: Day; told: Told };

export const exchangeBringInSheetHandler: Handler<typeof exchangeBringInSheet, Context> = (
  context,
  { file, ...asked },
) =>
  bringInSheet(
    recordOf(context),
    fileInHand(context, file),
    asked,
    entryNow(context, 'exchange/bringInSheet', 'brought in'),
    { asOf: context.today(), told: () => {} },
  );

/**
 * Brings one sheet in, read as its mapping says: all of it, or nothing when there is a fault. Rows the record has already
 * make no doubles. How it was read is kept for the next sheet with these heads.
 */
export async function bringInSheet(
  record: ReadableRecord,
  file: FileInHand,
  asked: AskedSheet,
  made: EntryMade,
  { asOf, told }: BringingIn,
): Promise<SheetAccount> {
  refuseUnmapped(asked);
  const read = await readSheet(file, asked, told);
  const { faults, rows, heads } = read;
  const account = bringInRows(
    record,
    // with faults nothing is brought in: the rows without one are still fitted, so that all faults are told at once
    { rows: asFolder(asked.noun, rows), misread: [], faults, notes: [] },
    made,
    { asOf, dryRun: asked.dryRun, told },
  );
  if (account.done) keepForNext(record, asked, heads, made.madeAt);
  const inTheirWords = (remarks: readonly Remark[]) => remarks.slice(0, MOST_TOLD).map(headNamed(asked.mapping, heads));
  return {
    ...account,
    rows: read.rowCount,
    faults: inTheirWords(account.faults),
    faultCount: account.faults.length + read.faultsLeftOut,
    cautions: inTheirWords(account.cautions),
    cautionCount: account.cautions.length,
    notes: inTheirWords(account.notes),
    noteCount: account.notes.length,
  };
}

function refuseUnmapped({ noun, mapping }: AskedSheet): void {
  const columns = columnsOfNoun(noun);
  for (const [index, { column }] of mapping.columns.entries()) {
    if (!columns.some(({ name }) => name === column))
      refuseField(`mapping.columns.${index}.column`, `one of ${columns.map(({ name }) => name).join(', ')}`);
  }
  const missing = columns.find(({ name, needed }) => needed && !mapping.columns.some(({ column }) => column === name));
  if (missing) refuseField('mapping.columns', `a column of the sheet, or a word for every row, for ${missing.name}`);
}

type ReadSheet = {
  rows: Parameters<typeof asFolder>[1][number][];
  rowCount: number;
  faults: Remark[];
  faultsLeftOut: number;
  heads: string[];
};

async function readSheet(file: FileInHand, asked: AskedSheet, told: Told): Promise<ReadSheet> {
  const { headRow } = asked.mapping;
  const read: ReadSheet = { rows: [], rowCount: 0, faults: [], faultsLeftOut: 0, heads: [] };
  const readRow = sheetRowReader(file.name, asked.noun, asked.mapping);
  for await (const { lines, share } of linesOf(file, asked)) {
    told('reading', share);
    for (const line of lines) {
      if (line.row === headRow) read.heads = line.cells.map(cellAsText);
      if (line.row <= headRow) continue;
      if (++read.rowCount > MOST_ROWS)
        throw new RefusedError({ code: 'too-many-rows', facts: { mostRows: MOST_ROWS } });
      const { row, faults } = readRow(line);
      if (row) read.rows.push(row);
      for (const fault of faults) {
        if (read.faults.length < MOST_TOLD) read.faults.push(fault);
        else read.faultsLeftOut++;
      }
    }
  }
  return read;
}

async function* linesOf(
  file: FileInHand,
  asked: AskedSheet,
): AsyncGenerator<{ lines: readonly SheetLine[]; share: number }> {
  if (isWorkbook(file)) {
    yield { lines: (await sheetOfWorkbook(file.bytes, asked.sheet)).sheet.lines, share: 1 };
    return;
  }
  const delimiter: SheetDelimiter = delimiterOf(file.bytes);
  for (const { lines, bytesRead } of csvSheetLines(file.bytes, delimiter))
    yield { lines, share: bytesRead / file.bytes.length };
}

/** What a sheet's heads are kept under. */
export const headsKey = (heads: readonly string[]): string[] =>
  heads.map((head) => {
    const { text, unit } = foldHead(head);
    return unit === null ? text : `${text} [${unit}]`;
  });

function keepForNext(record: ReadableRecord, { noun, mapping }: AskedSheet, heads: string[], keptAt: string): void {
  writePlain(record, (w) => keepMapping(w, noun, headsKey(heads), mapping, keptAt));
}

/** Remarks name columns as the sheet does. */
const headNamed =
  ({ columns }: SheetMapping, heads: readonly string[]) =>
  (remark: Remark): Remark => {
    const place = columns.find(({ column }) => column === remark.column)?.place ?? null;
    return place === null || !heads[place] ? remark : { ...remark, column: heads[place] };
  };
