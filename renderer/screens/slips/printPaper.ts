import { drawPage, openPdf, pageWidthPx } from './openPdf.ts';

/** Dots to an inch: finer than an office printer lays them down for letters and lines. */
const PRINT_DPI = 300;
const CSS_DPI = 96;

/**
 * Prints the pages of a PDF from the window: each drawn at printing sharpness on a sheet of its own, the rest of the window
 * left out (see slips.css). Resolves when the print dialog has been closed.
 */
export async function printPaper(bytes: Uint8Array): Promise<void> {
  const pdf = await openPdf(bytes);
  const sheets = document.createElement('div');
  sheets.className = 'print-sheets';
  for (let number = 1; number <= pdf.numPages; number++) {
    const canvas = document.createElement('canvas');
    const page = await pdf.getPage(number);
    await drawPage(page, canvas, pageWidthPx(page), PRINT_DPI / CSS_DPI).done;
    sheets.append(canvas);
  }
  document.body.append(sheets);
  document.documentElement.classList.add('prints-sheets');
  try {
    window.print();
  } finally {
    document.documentElement.classList.remove('prints-sheets');
    sheets.remove();
    await pdf.loadingTask.destroy();
  }
}
