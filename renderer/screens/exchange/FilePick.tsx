import { type ReactNode, useRef, useState } from 'react';
import { Key } from '#renderer/controls/Key.tsx';
import { exchangeWords as words } from '#renderer/words/exchangeWords.ts';

/** One file, chosen or dropped. */
export function FilePick({
  letter,
  text,
  accept,
  first = false,
  disabled,
  onPick,
  children,
}: {
  letter: string;
  text: string;
  accept: string;
  first?: boolean;
  disabled: boolean;
  onPick: (file: File) => void;
  children?: ReactNode;
}) {
  const picker = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);
  return (
    <section
      className={over ? 'file-pick over' : 'file-pick'}
      aria-label={text}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(!disabled);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        const file = event.dataTransfer.files[0];
        if (file && !disabled) onPick(file);
      }}
    >
      <input
        ref={picker}
        type="file"
        accept={accept}
        className="said"
        tabIndex={-1}
        aria-label={text}
        onChange={(event) => {
          const file = event.target.files?.[0];
          if (file) onPick(file);
          // the same file chosen again, put right meanwhile, is a new choice
          event.target.value = '';
        }}
      />
      <div className="keys">
        <Key first={first} letter={letter} disabled={disabled} onPress={() => picker.current?.click()}>
          {text}
        </Key>
        <span className="second">{words.orDrop}</span>
        {children}
      </div>
    </section>
  );
}
