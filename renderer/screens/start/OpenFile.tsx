import { useRef, useState } from 'react';
import type { Fault } from '#core/contract/operation.ts';
import { pathOfFile } from '#renderer/ask.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { startWords as words } from '#renderer/words/startWords.ts';

/**
 * A file by its whole path: picked where the window is told it (the program's own window), else typed.
 * Records opened before stand below, one key each.
 */
export function OpenFile({
  name,
  verb,
  recent,
  busy,
  fault,
  onOpen,
  onLeave,
}: {
  name: string;
  verb: string;
  recent: readonly string[];
  busy: boolean;
  fault: Fault | null;
  onOpen: (path: string) => void;
  onLeave: () => void;
}) {
  const [path, setPath] = useState('');
  const picker = useRef<HTMLInputElement>(null);
  const tellsPaths = window.hoursAndWear !== undefined;
  return (
    <section
      className="open-file"
      aria-label={name}
      onKeyDown={(event) => {
        if (event.key === 'Enter' && event.target instanceof HTMLInputElement && path.trim() !== '')
          onOpen(path.trim());
        if (event.key === 'Escape') onLeave();
      }}
    >
      <TextField label={words.path} value={path} onChange={setPath} hint={words.pathHint} autoFocus maxLength={1000} />
      <div className="keys">
        <Key first disabled={busy || path.trim() === ''} onPress={() => onOpen(path.trim())}>
          {verb}
        </Key>
        {tellsPaths && (
          <>
            <input
              ref={picker}
              type="file"
              className="said"
              tabIndex={-1}
              aria-label={words.browse}
              onChange={(event) => {
                const file = event.target.files?.[0];
                const whole = file ? pathOfFile(file) : null;
                if (whole) {
                  setPath(whole);
                  onOpen(whole);
                }
              }}
            />
            <Key onPress={() => picker.current?.click()}>{words.browse}</Key>
          </>
        )}
        <Key letter="Escape" onPress={onLeave}>
          {words.closeChoice}
        </Key>
      </div>
      {fault && <FaultBox fault={fault} />}
      {recent.length > 0 && (
        <>
          <h3>{words.recent}</h3>
          <ul className="recent">
            {recent.map((file, i) => (
              <li key={file}>
                <Key {...(i < 9 && { letter: String(i + 1) })} disabled={busy} onPress={() => onOpen(file)}>
                  {file}
                </Key>
              </li>
            ))}
          </ul>
        </>
      )}
    </section>
  );
}
