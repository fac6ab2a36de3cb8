import { useState } from 'react';
import type { Fault } from '#core/contract/operation.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { RowForm } from '#renderer/controls/RowForm.tsx';
import { ByField, useBy } from './ByField.tsx';

/** Something asked for that may be refused. */
export type Done = { fault: Fault | null; busy: boolean };

/** What stands on record is struck for a reason: it stays in sight. */
export function StrikeForm({
  words,
  strike,
  doing,
  onDone,
}: {
  words: { fact: string; why: string; key: string };
  strike: (reason: string, by: string) => Promise<unknown>;
  doing: Done;
  onDone: () => void;
}) {
  const [reason, setReason] = useState('');
  const [by, setBy] = useBy();
  const complete = reason.trim() !== '';
  const send = async () => {
    if (complete && (await strike(reason, by))) onDone();
  };
  return (
    <RowForm fact={words.fact} complete={complete} doing={doing} send={words.key} red onSend={send} onLeave={onDone}>
      <TextField label={words.why} value={reason} onChange={setReason} maxLength={2000} autoFocus />
      <ByField value={by} onChange={setBy} />
    </RowForm>
  );
}
