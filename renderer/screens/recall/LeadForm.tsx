import { useState } from 'react';
import { recallSaveLead } from '#core/contract/recall.ts';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { FigureField } from '#renderer/screens/take-in/FigureField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { readNumber } from '#renderer/words/readNumber.ts';
import { recallWords as words } from '#renderer/words/recallWords.ts';

/** How long before its deciding hours a machine is called in. */
export function LeadForm({ leadDays, onDone }: { leadDays: number; onDone: () => void }) {
  const save = useDo(recallSaveLead);
  const [text, setText] = useState(String(leadDays));
  const read = readNumber(text, 'h');
  const days = read.ok && Number.isInteger(read.value) && read.value >= 0 && read.value <= 365 ? read.value : null;
  const send = async () => {
    if (days !== null && (await save.run({ leadDays: days, by: '' }))) onDone();
  };
  return (
    <RowForm
      fact={words.leadFact}
      complete={days !== null}
      doing={save}
      send={words.save}
      onSend={send}
      onLeave={onDone}
    >
      <FigureField
        label={words.leadLabel}
        unit={words.leadUnit}
        text={text}
        onText={setText}
        fault={days === null ? words.leadWrong : null}
      />
    </RowForm>
  );
}
