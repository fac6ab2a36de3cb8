import { strToU8, zipSync } from 'fflate';
import writeExcelFile from 'write-excel-file/node';

/** A workbook of one sheet, as a spreadsheet would save it. */
export const aWorkbook = async (
  rows: (string | number | Date | boolean | null)[][],
  sheet = 'Sheet1',
): Promise<Uint8Array> =>
  writeExcelFile(
    rows.map((row) =>
      row.map((cell) => (cell instanceof Date ? { value: cell, type: Date, format: 'dd/mm/yyyy' } : cell)),
    ),
    { sheet },
  ).toBuffer();

/** A workbook with the sheet's XML as given: what no spreadsheet saves, but anybody can make. */
export const rawWorkbook = (sheetXml: string): Uint8Array =>
  zipSync({
    '[Content_Types].xml': strToU8(
      '<?xml version="1.0"?><Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"><Default Extension="xml" ContentType="application/xml"/></Types>',
    ),
    'xl/workbook.xml': strToU8(
      '<?xml version="1.0"?><workbook xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><sheets><sheet name="S" sheetId="1" r:id="rId1"/></sheets></workbook>',
    ),
    'xl/_rels/workbook.xml.rels': strToU8(
      '<?xml version="1.0"?><Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships"><Relationship Id="rId1" Type="http://schemas.openxmlformats.org/officeDocument/2006/relationships/worksheet" Target="worksheets/sheet1.xml"/></Relationships>',
    ),
    'xl/worksheets/sheet1.xml': strToU8(
      `<?xml version="1.0"?><worksheet xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"><sheetData>${sheetXml}</sheetData></worksheet>`,
    ),
  });
