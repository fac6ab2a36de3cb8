import type { FileBytes } from '../exchange/readFolder.ts';
import { writeShopFiles } from '../exchange/writeShopFiles.ts';
import { writeStoredFiles } from '../exchange/writeStoredFiles.ts';
import { idsGivenOut, rowsOfTable, tablesOnRecord } from '../record/allRows.ts';
import { homesOf, positionsOf } from '../record/assemblyStore.ts';
import { loadShopLife } from '../record/loadShopLife.ts';
import { listMachines } from '../record/machineStore.ts';
import { schemaVersion } from '../record/openRecord.ts';
import type { ReadableRecord } from '../record/recordFile.ts';

/**
 * The whole record as files: the shop's own seven, in the format that is brought in, and under `record/` every table as it
 * is stored. All of it is seen at one moment. The same record gives the same bytes, whenever it is asked.
 */
export const exportedFiles = (record: ReadableRecord): FileBytes[] =>
  record.sqlite.transaction(() => [
    ...writeShopFiles(loadShopLife(record), listMachines(record), positionsOf(record), homesOf(record)),
    ...writeStoredFiles(
      tablesOnRecord(record).map((table) => ({ table, rows: rowsOfTable(record, table) })),
      idsGivenOut(record),
      schemaVersion(),
    ),
  ])();
