import { useState } from 'react';
import type { ReplyOf } from '#core/contract/operation.ts';
import { recordBackupFolder, type recordBackups } from '#core/contract/record.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { backupWords as words } from '#renderer/words/backupWords.ts';

type Folder = ReplyOf<typeof recordBackups>['folders'][number];

/** Where backups go and what room they take; a further folder is chosen here, and let go of. */
export function BackupFolders({ folders }: { folders: readonly Folder[] }) {
  const choose = useDo(recordBackupFolder);
  const [path, setPath] = useState('');
  const chosen = folders.find((folder) => folder.chosen);
  const chooseTyped = () => void choose.run({ folder: path.trim() }).then((reply) => reply && setPath(''));
  return (
    <section className="backup-folders" aria-label={words.where}>
      <h3>{words.where}</h3>
      <ul>
        {folders.map((folder) => (
          <li key={`${folder.chosen} ${folder.folder}`}>
            {folder.chosen ? words.chosen : words.own}: {folder.folder}
            <br />
            {lineOf(folder)}
          </li>
        ))}
      </ul>
      <TextField label={words.folder} value={path} onChange={setPath} hint={words.folderHint} maxLength={1000} />
      <div className="keys">
        <Key disabled={choose.busy || path.trim() === ''} onPress={chooseTyped}>
          {chosen ? words.chooseOther : words.choose}
        </Key>
        {chosen && (
          <Key disabled={choose.busy} onPress={() => void choose.run({ folder: null })}>
            {words.letGo}
          </Key>
        )}
      </div>
      {choose.fault && <FaultBox fault={choose.fault} />}
    </section>
  );
}

function lineOf({ reachable, backups, bytes, freeBytes }: Folder): string {
  if (!reachable) return words.away;
  return [words.holds(backups, bytes), ...(freeBytes === null ? [] : [words.free(freeBytes)])].join('; ');
}
