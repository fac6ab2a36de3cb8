import { useState } from 'react';
import type { Finding } from '#core/contract/machine.ts';
import { findingDecline, findingStrikeDecline } from '#core/contract/stripDown.ts';
import type { Day } from '#core/units/day.ts';
import { DayField } from '#renderer/controls/DayField.tsx';
import { TextField } from '#renderer/controls/Field.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { useToday } from '#renderer/record.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { findingText } from '#renderer/words/findingText.ts';
import { panelWords } from '#renderer/words/machineWords.ts';
import { ByField, useBy } from './ByField.tsx';
import { StrikeForm } from './StrikeForm.tsx';

/** The customer was told and refuses: who said so, when, and in which words. */
export function RefuseForm({ finding, onDone }: { finding: Finding; onDone: () => void }) {
  const today = useToday();
  const refuse = useDo(findingDecline);
  const [saidOn, setSaidOn] = useState<Day | null>(today);
  const [saidBy, setSaidBy] = useState('');
  const [words, setWords] = useState('');
  const [by, setBy] = useBy();
  const complete = saidOn !== null && saidBy.trim() !== '' && words.trim() !== '';
  const send = async () => {
    if (!complete) return;
    if (await refuse.run({ findingId: finding.findingId, saidOn, saidBy, words, by })) onDone();
  };
  return (
    <RowForm
      fact={panelWords.refuseFact(findingText(finding))}
      complete={complete}
      doing={refuse}
      send={panelWords.noteRefusal}
      onSend={send}
      onLeave={onDone}
      below={
        <TextField
          label={panelWords.refusedWords}
          hint={panelWords.refusedWordsHint}
          value={words}
          onChange={setWords}
          maxLength={400}
        />
      }
    >
      <TextField label={panelWords.refusedBy} value={saidBy} onChange={setSaidBy} maxLength={120} autoFocus />
      <DayField label={panelWords.refusedOn} value={saidOn} onChange={setSaidOn} today={today} />
      <ByField value={by} onChange={setBy} />
    </RowForm>
  );
}

/** What was noted of a refusal was wrong. */
export function StrikeRefusal({ declineId, onDone }: { declineId: number; onDone: () => void }) {
  const { run, ...doing } = useDo(findingStrikeDecline);
  const { strikeRefusalFact: fact, why, strikeIt: key } = panelWords;
  const strike = (reason: string, by: string) => run({ declineId, reason, by });
  return <StrikeForm words={{ fact, why, key }} strike={strike} doing={doing} onDone={onDone} />;
}
