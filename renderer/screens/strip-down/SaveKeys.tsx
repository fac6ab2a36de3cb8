import type { RefObject } from 'react';
import type { Fault } from '#core/contract/operation.ts';
import type { DecimalMark } from '#core/words/quantityText.ts';
import { Key, Letter } from '#renderer/controls/Key.tsx';
import { FaultBox, Question } from '#renderer/controls/Notice.tsx';
import { questionSentences } from '#renderer/words/questionText.ts';
import { stripDownWords as words } from '#renderer/words/stripDownWords.ts';

export function SaveKeys({
  saveBox,
  busy,
  disabled,
  onSave,
  onDiscard,
}: {
  saveBox: RefObject<HTMLDivElement | null>;
  busy: boolean;
  disabled: boolean;
  onSave: () => void;
  onDiscard: () => void;
}) {
  return (
    <div className="keys" ref={saveBox}>
      <Key disabled={disabled || busy} onPress={onDiscard}>
        {words.discard}
      </Key>
      <Key first disabled={disabled || busy} onPress={onSave}>
        {words.save}
        <Letter>{words.saveKeys}</Letter>
      </Key>
    </div>
  );
}

/** Why saving was refused: a dial that cannot be is said as it is asked about, the rest as any fault. */
export function SaveFault({ fault, mark }: { fault: Fault | null; mark: DecimalMark }) {
  if (!fault) return null;
  const sentence = questionSentences[fault.code];
  if (!sentence) return <FaultBox fault={fault} />;
  const { fact } = sentence(fault.facts, { mark });
  return <FaultBox said={{ what: fact, safe: words.notSaved, next: words.notSavedNext }} />;
}

export const DiscardAsk = ({ onYes, onNo }: { onYes: () => void; onNo: () => void }) => (
  <Question
    fact={words.discardAsk}
    keys={
      <>
        <Key red onPress={onYes}>
          {words.discardYes}
        </Key>
        <Key first autoFocus onPress={onNo}>
          {words.discardNo}
        </Key>
      </>
    }
  />
);
