import { resolve } from 'node:path';
import type { exchangeExportWorkbook } from '../contract/exchange.ts';
import type { Handler } from '../contract/operation.ts';
import { MOST_SHEET_ROWS, workbookFile } from '../exchange/writeWorkbook.ts';
import { RefusedError } from '../outcome.ts';
import { writeNewFile } from '../record/folderOnDisk.ts';
import { machinePlan } from '../way/machinePlan.ts';
import type { Context } from './context.ts';
import { workbookSheets } from './exportWorkbookSheets.ts';
import { shopNow } from './shopNow.ts';

/** Writes one XLSX for people: what counts today, and the forecasts made from it. */
export const exchangeExportWorkbookHandler: Handler<typeof exchangeExportWorkbook, Context> = async (
  context,
  { toFile },
) => {
  const { shop, ofMachine } = shopNow(context);
  const sheets = workbookSheets({
    life: shop.life,
    forecasts: shop.life.machines.flatMap(({ machineId }) => ofMachine(machineId).points),
    hoursOf: (machineId) => {
      const { now, hoursPerYear } = machinePlan(shop, machineId, ofMachine(machineId).points);
      return { now, perYear: hoursPerYear?.middle ?? null };
    },
  });
  const long = sheets.find(({ rows }) => rows > MOST_SHEET_ROWS);
  if (long)
    throw new RefusedError({
      code: 'sheet-too-long',
      facts: { sheet: long.name, rows: long.rows, mostRows: MOST_SHEET_ROWS },
    });
  const bytes = await workbookFile(sheets);
  const file = toFile === null ? null : resolve(toFile);
  if (file !== null) writeNewFile(file, bytes);
  return {
    file,
    sheets: sheets.map(({ name, rows }) => ({ name, rows })),
    fileName: `hours-and-wear-${context.today()}.xlsx`,
    xlsxBase64: file === null ? Buffer.from(bytes).toString('base64') : null,
  };
};
