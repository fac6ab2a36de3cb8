import { GlobalWorkerOptions, getDocument, type PDFDocumentProxy, type PDFPageProxy, TextLayer } from 'pdfjs-dist';

/*
 * Pages of a PDF drawn in the window itself, by pdfjs-dist: no plug-in, no other window, and the same in Electron and in
 * a browser. This file is fetched only when a slip is opened; it is the heaviest part of the window.
 */

let worker: Worker | null = null;

/** @throws what the reader throws for bytes that are no PDF */
export async function openPdf(bytes: Uint8Array): Promise<PDFDocumentProxy> {
  worker ??= new Worker(new URL('./pdfWorker.ts', import.meta.url), { type: 'module' });
  GlobalWorkerOptions.workerPort = worker;
  // a copy: the worker takes the bytes away. Our pages hold letters and lines: no picture codecs are fetched
  return getDocument({ data: bytes.slice(), useWasm: false, useSystemFonts: false }).promise;
}

/** PDF measures in points, a screen in CSS pixels: 96 to 72. */
const PX_PER_POINT = 96 / 72;

/** Width of a page at its own size on paper [px]. */
export const pageWidthPx = (page: PDFPageProxy): number => page.getViewport({ scale: PX_PER_POINT }).width;

/** A page being drawn; to leave off sets its canvas free for another drawing. */
export type Drawing = { done: Promise<void>; leaveOff: () => void };

/**
 * Draws a page onto a canvas at so many device pixels to one CSS pixel.
 * @param widthPx width it takes on screen [CSS px]
 * @throws (by `done`) when it was left off
 */
export function drawPage(
  page: PDFPageProxy,
  canvas: HTMLCanvasElement,
  widthPx: number,
  devicePixels: number,
): Drawing {
  const scale = widthPx / page.getViewport({ scale: 1 }).width;
  const viewport = page.getViewport({ scale: scale * devicePixels });
  canvas.width = Math.round(viewport.width);
  canvas.height = Math.round(viewport.height);
  const task = page.render({ canvas, viewport });
  return { done: task.promise, leaveOff: () => task.cancel() };
}

/** Lays the page's words over it, unseen, to be read out, found and copied. */
export async function layText(page: PDFPageProxy, container: HTMLElement, widthPx: number): Promise<void> {
  const scale = widthPx / page.getViewport({ scale: 1 }).width;
  container.replaceChildren();
  container.style.setProperty('--total-scale-factor', String(scale));
  const layer = new TextLayer({
    textContentSource: await page.getTextContent(),
    container,
    viewport: page.getViewport({ scale }),
  });
  await layer.render();
}

export type { PDFDocumentProxy, PDFPageProxy };
