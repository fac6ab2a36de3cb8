import { useState } from 'react';
import { type OldSheet, oldSheetsRead } from '#core/contract/oldSheets.ts';
import { shopRead } from '#core/contract/shop.ts';
import { NotYetSheet } from '#renderer/controls/NotYet.tsx';
import { useAsk } from '#renderer/useAsk.ts';
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
  return <NotYetSheet title={words.title} of={[batch, shop]} words={words.loading} />;
}
