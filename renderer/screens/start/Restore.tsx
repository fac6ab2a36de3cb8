import { useState } from 'react';
import type { Fault } from '#core/contract/operation.ts';
import { type Backup, type RestorePreview, recordBackups, recordRestorePreview } from '#core/contract/record.ts';
import { day } from '#core/units/day.ts';
import { dayText } from '#core/words/quantityText.ts';
import { FillingRule } from '#renderer/controls/FillingRule.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox, Question } from '#renderer/controls/Notice.tsx';
import { useAsk } from '#renderer/useAsk.ts';
import { lostText, startWords as words } from '#renderer/words/startWords.ts';
import { BackupFolders } from './BackupFolders.tsx';
import { OpenFile } from './OpenFile.tsx';

/**
 * Backups of the record, newest first, and any other by its path. Before one takes the record's place it is looked
 * into, and what would be lost is said.
 */
export function Restore({
  open,
  busy,
  fault,
  onRestore,
  onLeave,
}: {
  /** a record is open; else the backups are those of the record the program was started with */
  open: boolean;
  busy: boolean;
  fault: Fault | null;
  onRestore: (file: string) => void;
  onLeave: () => void;
}) {
  const backups = useAsk(recordBackups, {});
  const [asked, setAsked] = useState<string | null>(null);
  const preview = useAsk(recordRestorePreview, asked === null ? null : { file: asked });
  const chosen = backups.value?.backups.find(({ file }) => file === asked);
  return (
    <>
      {backups.value && (open || backups.value.backups.length > 0) && (
        <section className="backups" aria-label={words.backups}>
          <h3>{backups.value.backups.length === 0 ? words.noBackups : words.backups}</h3>
          <ul>
            {backups.value.backups.map((backup) => (
              <li key={backup.file}>
                <Key disabled={busy} onPress={() => setAsked(backup.file)}>
                  {lineOf(backup)}
                </Key>
              </li>
            ))}
          </ul>
        </section>
      )}
      {asked !== null && preview.waiting && <FillingRule words={words.looking} />}
      {asked !== null && preview.fault && <FaultBox fault={preview.fault} />}
      {asked !== null && preview.value && (
        <Question
          fact={words.restoreAsk(chosen ? words.theBackup(dayOf(chosen.madeAt), timeOf(chosen.madeAt)) : asked)}
          then={`${whatIsLost(preview.value)} ${words.restoreSafe}`}
          keys={
            <>
              <Key disabled={busy} onPress={() => onRestore(asked)}>
                {words.restoreIt}
              </Key>
              <Key first autoFocus onPress={() => setAsked(null)}>
                {words.leave}
              </Key>
            </>
          }
        />
      )}
      <OpenFile
        name={words.restore}
        verb={words.lookInto}
        recent={[]}
        busy={busy}
        fault={fault}
        onOpen={setAsked}
        onLeave={onLeave}
      />
      {open && backups.value && <BackupFolders folders={backups.value.folders} />}
    </>
  );
}

function lineOf({ madeAt, counts, kind, alsoAt }: Backup): string {
  const more = [kind === 'before-migrating' ? words.beforeMigrating : '', alsoAt === null ? '' : words.alsoAt];
  return [words.backupLine(dayOf(madeAt), timeOf(madeAt), counts), ...more.filter(Boolean)].join(', ');
}

function whatIsLost({ lost, sameRecord, record }: RestorePreview): string {
  const said = lost.entries === 0 ? words.lostNothing : words.lost(lost.entries, lostText(lost));
  if (record === null) return '';
  return sameRecord ? said : `${words.otherRecord} ${lost.entries === 0 ? '' : said}`.trim();
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
