import { useEffect, useRef, useState } from 'react';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { slipsWords } from '#renderer/words/slipsWords.ts';
import { drawPage, layText, openPdf, type PDFDocumentProxy, type PDFPageProxy, pageWidthPx } from './openPdf.ts';

type Opened = { of: Uint8Array; pages: PDFPageProxy[] };

/** The paper itself, page under page, as sharp as the screen allows, with its words to be read and copied. */
export default function PaperPages({ bytes, label }: { bytes: Uint8Array; label: string }) {
  const [opened, setOpened] = useState<Opened | null>(null);
  const [failed, setFailed] = useState(false);
  useEffect(() => {
    let left = false;
    let pdf: PDFDocumentProxy | null = null;
    setFailed(false);
    openPdf(bytes)
      .then(async (document) => {
        pdf = document;
        const pages = await Promise.all(Array.from({ length: document.numPages }, (_, i) => document.getPage(i + 1)));
        if (!left) setOpened({ of: bytes, pages });
      })
      .catch(() => !left && setFailed(true));
    return () => {
      left = true;
      void pdf?.loadingTask.destroy();
    };
  }, [bytes]);
  if (failed) return <FaultBox said={{ what: slipsWords.cannotDraw, safe: '', next: slipsWords.cannotDrawNext }} />;
  if (opened?.of !== bytes) return <FillingRule words={slipsWords.drawing} />;
  return (
    <div className="paper-pages">
      {opened.pages.map((page) => (
        <Page
          key={page.pageNumber}
          page={page}
          label={`${label}. ${slipsWords.page(page.pageNumber, opened.pages.length)}`}
        />
      ))}
    </div>
  );
}

/** A page drawn finer than this gains nothing that an eye can see, and costs memory. */
const MOST_DEVICE_PIXELS = 3;

function Page({ page, label }: { page: PDFPageProxy; label: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const words = useRef<HTMLDivElement>(null);
  const widthPx = Math.round(pageWidthPx(page));
  const { width, height } = page.getViewport({ scale: 1 });
  const heightPx = Math.round((widthPx * height) / width);
  const devicePixels = useDevicePixels();
  useEffect(() => {
    const [on, over] = [canvas.current, words.current];
    if (!on || !over) return;
    let left = false;
    void drawPage(page, on, widthPx, devicePixels)
      .then(() => (left ? undefined : layText(page, over, widthPx)))
      // left while being drawn: the page is gone, and nobody waits for it
      .catch(() => undefined);
    return () => {
      left = true;
    };
  }, [page, widthPx, devicePixels]);
  return (
    <article className="paper-page" aria-label={label} style={{ width: widthPx, height: heightPx }}>
      <canvas ref={canvas} style={{ width: widthPx, height: heightPx }} />
      <div ref={words} className="textLayer" />
    </article>
  );
}

/** Device pixels to a CSS pixel, followed when the window is moved to another screen or zoomed. */
function useDevicePixels(): number {
  const [devicePixels, setDevicePixels] = useState(window.devicePixelRatio);
  useEffect(() => {
    const watched = window.matchMedia(`(resolution: ${devicePixels}dppx)`);
    const changed = () => setDevicePixels(window.devicePixelRatio);
    watched.addEventListener('change', changed);
    return () => watched.removeEventListener('change', changed);
  }, [devicePixels]);
  return Math.min(MOST_DEVICE_PIXELS, Math.max(1, devicePixels));
}
