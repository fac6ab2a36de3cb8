import { useState } from 'react';
import { contactStrike } from '#core/contract/recall.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { recallWords as words } from '#renderer/words/recallWords.ts';

/** What was just noted, and the key that takes it back. */
export type Noted = { text: string; contactIds: readonly number[] };

export function NotedLine({ noted }: { noted: Noted }) {
  const strike = useDo(contactStrike);
  const [by] = useBy();
  const [takenBack, setTakenBack] = useState(false);
  const takeBack = async () => {
    for (const contactId of noted.contactIds)
      if (!(await strike.run({ contactId, reason: words.takenBackWhy, by }))) return;
    setTakenBack(true);
  };
  return (
    <div className="noted-line">
      <p role="status">{takenBack ? words.takenBack : noted.text}</p>
      {!takenBack && noted.contactIds.length > 0 && (
        <Key letter="U" disabled={strike.busy} onPress={() => void takeBack()}>
          {words.takeBack}
        </Key>
      )}
      {strike.fault && <FaultBox fault={strike.fault} />}
    </div>
  );
}
