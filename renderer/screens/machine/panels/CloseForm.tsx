import { useState } from 'react';
import type { Finding } from '#core/contract/machine.ts';
import { findingClose } from '#core/contract/stripDown.ts';
import type { Day } from '#core/units/day.ts';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useToday } from '#renderer/record.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { findingText } from '#renderer/words/findingText.ts';
import { panelWords } from '#renderer/words/machineWords.ts';
import { ByField, useBy } from './ByField.tsx';

/** What became of a finding, and from which day on it is closed. */
export function CloseForm({ finding, onDone }: { finding: Finding; onDone: () => void }) {
  const today = useToday();
  const close = useDo(findingClose);
  const [closedOn, setClosedOn] = useState<Day | null>(today);
  const [outcome, setOutcome] = useState('');
  const [by, setBy] = useBy();
  const complete = closedOn !== null && outcome.trim() !== '';
  const send = async () => {
    if (!complete) return;
    if (await close.run({ findingId: finding.findingId, closedOn, outcome, by })) onDone();
  };
  return (
    <RowForm
      fact={panelWords.closeFact(findingText(finding))}
      complete={complete}
      doing={close}
      send={panelWords.closeFinding}
      onSend={send}
      onLeave={onDone}
    >
      <TextField
        label={panelWords.outcome}
        hint={panelWords.outcomeHint}
        value={outcome}
        onChange={setOutcome}
        autoFocus
      />
      <DayField label={panelWords.closedOn} value={closedOn} onChange={setClosedOn} today={today} />
      <ByField value={by} onChange={setBy} />
    </RowForm>
  );
}
