import { Sheet } from '#renderer/controls/Sheet.tsx';
import { useRecord } from '#renderer/record.tsx';
import { exchangeWords as words } from '#renderer/words/exchangeWords.ts';
import { BringBack } from './BringBack.tsx';
import { BringInSheet } from './BringInSheet.tsx';
import { TakeOut } from './TakeOut.tsx';
import './exchange.css';

/** In and out: one sheet into the record, the record out as files, and an export back. */
export default function Exchange() {
  const { path } = useRecord();
  return (
    <Sheet
      title={words.title}
      sub={words.sub}
      block={[
        { label: words.block.record, value: path?.split(/[\\/]/).at(-1) ?? '' },
        { label: words.block.safe, value: words.block.safeIs, grow: true },
      ]}
    >
      <div className="exchange">
        <BringInSheet />
        <TakeOut />
        <BringBack />
      </div>
    </Sheet>
  );
}
