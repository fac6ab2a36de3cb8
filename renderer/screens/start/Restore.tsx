import { useState } from 'react';
import type { Fault } from '#core/contract/operation.ts';
import { recordBackups } from '#core/contract/record.ts';
import { day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';
import { Key } from '#renderer/controls/Key.tsx';
import { Question } from '#renderer/controls/Notice.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { startWords as words } from '#renderer/words/startWords.ts';
import { OpenFile } from './OpenFile.tsx';

/** Backups of the open record, newest first, and any other by its path; asked once more before it takes the record's place. */
export function Restore({
  open,
  busy,
  fault,
  onRestore,
  onLeave,
}: {
  /** a record is open, whose backups can be listed */
  open: boolean;
  busy: boolean;
  fault: Fault | null;
  onRestore: (file: string) => void;
  onLeave: () => void;
}) {
  const backups = useAsk(recordBackups, open ? {} : null);
  const [asked, setAsked] = useState<string | null>(null);
  const chosen = backups.value?.backups.find(({ file }) => file === asked);
  return (
    <>
      {open && backups.value && (
        <section className="backups" aria-label={words.backups}>
          <h3>{backups.value.backups.length === 0 ? words.noBackups : words.backups}</h3>
          <ul>
            {backups.value.backups.map(({ file, madeAt, counts }) => (
              <li key={file}>
                <Key disabled={busy} onPress={() => setAsked(file)}>
                  {words.backupLine(dayOf(madeAt), timeOf(madeAt), counts)}
                </Key>
              </li>
            ))}
          </ul>
        </section>
      )}
      {chosen && (
        <Question
          fact={words.restoreAsk(dayOf(chosen.madeAt), timeOf(chosen.madeAt))}
          then={words.restoreSafe}
          keys={
            <>
              <Key onPress={() => onRestore(chosen.file)}>{words.restoreIt}</Key>
              <Key first autoFocus onPress={() => setAsked(null)}>
                {words.leave}
              </Key>
            </>
          }
        />
      )}
      <OpenFile
        name={words.restore}
        verb={words.restoreIt}
        recent={[]}
        busy={busy}
        fault={fault}
        onOpen={onRestore}
        onLeave={onLeave}
      />
    </>
  );
}

/** Day and time of an instant on this computer's clock. */
function dayOf(instant: string): string {
  const at = new Date(instant);
  const iso = [at.getFullYear(), at.getMonth() + 1, at.getDate()].map((n) => String(n).padStart(2, '0')).join('-');
  return dayText(day(iso));
}

function timeOf(instant: string): string {
  const at = new Date(instant);
  return [at.getHours(), at.getMinutes()].map((n) => String(n).padStart(2, '0')).join(':');
}
