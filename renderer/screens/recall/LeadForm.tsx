import { useState } from 'react';
import { recallSaveLead } from '#core/contract/recall.ts';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
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
    <form
      className="recall-panel"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <p>{words.leadFact}</p>
      <div className="fields">
        <FigureField
          label={words.leadLabel}
          unit={words.leadUnit}
          text={text}
          onText={setText}
          fault={days === null ? words.leadWrong : null}
        />
      </div>
      {save.fault && <FaultBox fault={save.fault} />}
      <Keys>
        <Key first type="submit" disabled={days === null || save.busy} onPress={() => {}}>
          {words.save}
        </Key>
        <Key letter="Escape" onPress={onDone}>
          {words.leave}
        </Key>
      </Keys>
    </form>
  );
}
