import { type ReactNode, useMemo, useState } from 'react';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { lazyPart } from '#renderer/controls/lazyPart.tsx';
import { Sheet, type TitleCell } from '#renderer/controls/Sheet.tsx';
import { paperWords as words } from '#renderer/words/paperWords.ts';
import { bytesOfBase64, savePdf } from './paperBytes.ts';
import './slips.css';

const PaperPages = lazyPart(() => import('./PaperPages.tsx'));

/** A paper as it leaves the printer, with its keys; on the right what goes with it. */
export function PaperSheet({
  title,
  sub,
  pdfBase64,
  fileName,
  keys,
  aside,
  banner,
  block,
}: {
  title: string;
  sub: string;
  pdfBase64: string;
  fileName: string;
  /** before those of save and print */
  keys: ReactNode;
  aside?: ReactNode;
  banner?: ReactNode;
  block: readonly TitleCell[];
}) {
  const bytes = useMemo(() => bytesOfBase64(pdfBase64), [pdfBase64]);
  const [printing, setPrinting] = useState(false);
  const print = async () => {
    setPrinting(true);
    try {
      const { printPaper } = await import('./printPaper.ts');
      await printPaper(bytes);
    } finally {
      setPrinting(false);
    }
  };
  return (
    <Sheet
      title={title}
      banner={banner}
      sub={sub}
      actions={
        <>
          {keys}
          <Key letter="S" onPress={() => savePdf(bytes, fileName)}>
            {words.save}
          </Key>
          <Key first letter="P" disabled={printing} onPress={print}>
            {words.print}
          </Key>
        </>
      }
      block={block}
      bleed
    >
      <div className="slip-body">
        {/* scrolled by keys before its pages are there to be gone to */}
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: a region that scrolls is reached by keys */}
        <section className="slip-paper" aria-label={title} tabIndex={0}>
          <PaperPages bytes={bytes} label={title} meanwhile={<FillingRule words={words.drawing} />} />
        </section>
        {aside && <aside className="slip-aside">{aside}</aside>}
      </div>
    </Sheet>
  );
}
