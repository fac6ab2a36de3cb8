import { useEffect, useRef, useState } from 'react';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { useWidth } from '#renderer/screens/machines/useWidth.ts';
import { slipsWords } from '#renderer/words/slipsWords.ts';
import { drawPage, layText, openPdf, type PDFDocumentProxy, type PDFPageProxy, pageWidthPx } from './openPdf.ts';

type Opened = { of: Uint8Array; pages: PDFPageProxy[] };

/** The paper itself, page under page, as sharp as the screen allows, with its words to be read and copied. */
export default function PaperPages({ bytes, label }: { bytes: Uint8Array; label: string }) {
  const [opened, setOpened] = useState<Opened | null>(null);
  const [failed, setFailed] = useState(false);
  const box = useRef<HTMLDivElement>(null);
  const roomPx = useWidth(box);
  useEffect(() => {
    let left = false;
    let pdf: PDFDocumentProxy | null = null;
    setFailed(false);
    openPdf(bytes)
      .then(async (document) => {
        pdf = document;
        if (left) return document.loadingTask.destroy();
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
  return (
    <div className="paper-pages" ref={box}>
      {opened?.of !== bytes && <FillingRule words={slipsWords.drawing} />}
      {opened?.of === bytes &&
        roomPx > 0 &&
        opened.pages.map((page) => (
          <Page
            key={page.pageNumber}
            page={page}
            roomPx={roomPx}
            label={`${label}. ${slipsWords.page(page.pageNumber, opened.pages.length)}`}
          />
        ))}
    </div>
  );
}

/** A page drawn finer than this gains nothing that an eye can see, and costs memory. */
const MOST_DEVICE_PIXELS = 3;

function Page({ page, roomPx, label }: { page: PDFPageProxy; roomPx: number; label: string }) {
  const canvas = useRef<HTMLCanvasElement>(null);
  const words = useRef<HTMLDivElement>(null);
  // its own size on paper; narrower where there is no room for that
  const widthPx = Math.round(Math.min(pageWidthPx(page), roomPx - 2));
  const { width, height } = page.getViewport({ scale: 1 });
  const heightPx = Math.round((widthPx * height) / width);
  const devicePixels = useDevicePixels();
  useEffect(() => {
    const [on, over] = [canvas.current, words.current];
    if (!on || !over) return;
    const drawing = drawPage(page, on, widthPx, devicePixels);
    drawing.done
      .then(() => layText(page, over, widthPx))
      // left off: another drawing has taken its place, or the page is gone
      .catch(() => undefined);
    return drawing.leaveOff;
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
