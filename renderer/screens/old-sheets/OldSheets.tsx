import { useState } from 'react';
import { type OldSheet, oldSheetsRead } from '#core/contract/oldSheets.ts';
import { shopRead } from '#core/contract/shop.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { Sheet } from '#renderer/controls/Sheet.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { frameWords } from '#renderer/words/frameWords.ts';
import { oldSheetsWords as words } from '#renderer/words/oldSheetsWords.ts';
import { BatchEnd } from './BatchEnd.tsx';
import { Desk } from './Desk.tsx';
import './old-sheets.css';

/** Old sheets: strip-downs from paper, typed one after another; the forecasts wait until the batch ends. */
export default function OldSheets() {
  const batch = useAsk(oldSheetsRead, {});
  const shop = useAsk(shopRead, {});
  const [ended, setEnded] = useState<{ sheets: readonly OldSheet[]; by: string } | null>(null);
  if (ended) return <BatchEnd {...ended} onAgain={() => setEnded(null)} />;
  if (batch.value && shop.value)
    return <Desk batch={batch.value} shop={shop.value} onEnded={(sheets, by) => setEnded({ sheets, by })} />;
  const fault = batch.fault ?? shop.fault;
  return (
    <Sheet title={words.title}>
      {fault ? (
        <FaultBox fault={fault} keys={<Key onPress={batch.again}>{frameWords.tryAgain}</Key>} />
      ) : (
        <FillingRule words={words.loading} />
      )}
    </Sheet>
  );
}
