import { renderToBuffer } from '@react-pdf/renderer';
import type { MeasuringSheet } from '../contract/measuringSheet.ts';
import { sheetPages } from './measuringSheetPages.ts';
import { measuringSheetPaper } from './measuringSheetPaper.ts';
import { registerPaperFonts } from './paperFonts.ts';

/** The blank measuring sheet as a PDF on A4, as many pages as its points need. The same sheet gives the same bytes. */
export async function printMeasuringSheet(sheet: MeasuringSheet): Promise<{ pdf: Uint8Array; pages: number }> {
  registerPaperFonts();
  const pages = sheetPages(sheet);
  const paper = measuringSheetPaper(sheet, pages) as Parameters<typeof renderToBuffer>[0];
  return { pdf: await renderToBuffer(paper), pages: pages.length };
}
