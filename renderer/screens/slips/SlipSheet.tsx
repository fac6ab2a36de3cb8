import { type ReactNode, useMemo, useState } from 'react';
import type { Slip } from '#core/contract/slip.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { lazyPart } from '#renderer/controls/lazyPart.tsx';
import { planningAidCell, Sheet, type TitleCell } from '#renderer/controls/Sheet.tsx';
import { shared } from '#renderer/words/english.ts';
import { slipsWords } from '#renderer/words/slipsWords.ts';
import { bytesOfBase64, savePdf } from './paperBytes.ts';
import './slips.css';

const PaperPages = lazyPart(() => import('./PaperPages.tsx'));

type SlipSheetProps = {
  title: string;
  sub: string;
  slip: Slip;
  pdfBase64: string;
  fileName: string;
  /** under the head */
  banner?: ReactNode;
  /** keys before those of print and save */
  keys: ReactNode;
  /** what may be printed and saved: a slip that was made, not a preview */
  made: boolean;
  aside: ReactNode;
};

/** A slip: the paper on the left as it leaves the printer, on the right what can be done with it. */
export function SlipSheet({ title, sub, slip, pdfBase64, fileName, keys, made, aside, banner }: SlipSheetProps) {
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
      sub={sub}
      actions={
        <>
          {keys}
          {made && (
            <>
              <Key letter="S" onPress={() => savePdf(bytes, fileName)}>
                {slipsWords.save}
              </Key>
              <Key first letter="P" disabled={printing} onPress={print}>
                {slipsWords.print}
              </Key>
            </>
          )}
        </>
      }
      banner={banner}
      block={blockOf(slip)}
      bleed
    >
      <div className="slip-body">
        {/* biome-ignore lint/a11y/noNoninteractiveTabindex: it scrolls, and has nothing in it that takes the focus */}
        <section className="slip-paper cell" aria-label={title} tabIndex={0}>
          <PaperPages bytes={bytes} label={title} meanwhile={<FillingRule words={slipsWords.drawing} />} />
        </section>
        <aside className="slip-aside">{aside}</aside>
      </div>
    </Sheet>
  );
}

const blockOf = (slip: Slip): TitleCell[] => [
  { label: slipsWords.numberCell, value: slip.number ?? slipsWords.notYet },
  { label: shared.asOf, value: slip.asOf },
  planningAidCell,
  { label: slipsWords.restsOn, value: slipsWords.readings(slip.restsOn.ownReadings, slip.restsOn.likeParts) },
  { label: slipsWords.measuredBy, value: slip.measuredBy || shared.notKnown, grow: true },
];
