import { useState } from 'react';
import type { Fault } from '#core/contract/operation.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { panelWords } from '#renderer/words/machineWords.ts';
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
    <form
      className="row-form"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <p>{words.fact}</p>
      <div className="fields">
        <TextField label={words.why} value={reason} onChange={setReason} maxLength={2000} autoFocus />
        <ByField value={by} onChange={setBy} />
      </div>
      {doing.fault && <FaultBox fault={doing.fault} />}
      <Keys>
        <Key first red type="submit" disabled={!complete || doing.busy} onPress={() => {}}>
          {words.key}
        </Key>
        <Key letter="Escape" onPress={onDone}>
          {panelWords.leave}
        </Key>
      </Keys>
    </form>
  );
}
