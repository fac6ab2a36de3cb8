import { type ReactNode, useEffect, useRef, useState } from 'react';
import { Key } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { photoWords as words } from '#renderer/words/photoWords.ts';
import type { TakingPhotos } from './useTakePhotos.ts';
import './photos.css';

/** Where photos come in: chosen by the key, dropped on it, or pasted while it stands. */
export function TakePhotos({
  taking,
  letter,
  children,
}: {
  taking: TakingPhotos;
  letter?: string;
  children?: ReactNode;
}) {
  const picker = useRef<HTMLInputElement>(null);
  const [over, setOver] = useState(false);
  usePasted((files) => void taking.take(files));
  return (
    <section
      className={over ? 'take-photos over' : 'take-photos'}
      aria-label={words.take}
      onDragOver={(event) => {
        event.preventDefault();
        setOver(true);
      }}
      onDragLeave={() => setOver(false)}
      onDrop={(event) => {
        event.preventDefault();
        setOver(false);
        void taking.take(event.dataTransfer.files);
      }}
    >
      <input
        ref={picker}
        type="file"
        accept="image/*"
        multiple
        className="said"
        tabIndex={-1}
        aria-label={words.take}
        onChange={(event) => {
          void taking.take(event.target.files ?? []);
          event.target.value = '';
        }}
      />
      <div className="take-photos-keys">
        <Key {...(letter && { letter })} onPress={() => picker.current?.click()}>
          {words.take}
        </Key>
        <span className="second" role="status">
          {taking.busy > 0 ? words.making(taking.busy) : words.orDrop}
        </span>
      </div>
      {children}
      {taking.unread.length > 0 && <FaultBox said={words.unread(taking.unread)} />}
      {taking.fault && <FaultBox fault={taking.fault} />}
    </section>
  );
}

/** Pictures pasted anywhere in the window while this stands. */
function usePasted(onFiles: (files: FileList) => void): void {
  const latest = useRef(onFiles);
  latest.current = onFiles;
  useEffect(() => {
    const onPaste = (event: ClipboardEvent) => {
      const files = event.clipboardData?.files;
      if (!files || files.length === 0) return;
      event.preventDefault();
      latest.current(files);
    };
    window.addEventListener('paste', onPaste);
    return () => window.removeEventListener('paste', onPaste);
  }, []);
}
