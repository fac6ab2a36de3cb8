import { getDocument } from 'pdfjs-dist/legacy/build/pdf.mjs';

/** What a PDF says: the text of each page, pieces in the order they are drawn, and its size [mm]. */
export type PdfPage = { text: string; widthMm: number; heightMm: number };

const MM_PER_POINT = 25.4 / 72; // a PDF's unit is 1/72 inch (ISO 32000-1, 8.3.2.3)

/** Reads a PDF by another program's reader than the one that wrote it. */
export async function pdfPages(bytes: Uint8Array): Promise<PdfPage[]> {
  const loading = getDocument({ data: new Uint8Array(bytes), verbosity: 0 });
  const document = await loading.promise;
  try {
    const pages: PdfPage[] = [];
    for (let number = 1; number <= document.numPages; number += 1) {
      const page = await document.getPage(number);
      const { items } = await page.getTextContent();
      const { width, height } = page.getViewport({ scale: 1 });
      const text = items.map((item) => ('str' in item ? item.str + (item.hasEOL ? '\n' : '') : '')).join('');
      pages.push({ text, widthMm: width * MM_PER_POINT, heightMm: height * MM_PER_POINT });
    }
    return pages;
  } finally {
    await loading.destroy();
  }
}
