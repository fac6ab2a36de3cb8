import { useRef, useState } from 'react';
import type { Fault } from '#core/contract/operation.ts';
import { photoKeep } from '#core/contract/photo.ts';
import { answerTo } from '#renderer/ask.ts';
import { smallPhoto } from './smallPhoto.ts';

export type TakingPhotos = {
  take: (files: Iterable<File>) => Promise<void>;
  /** how many are being made small */
  busy: number;
  /** names of files this window cannot read as pictures */
  unread: readonly string[];
  fault: Fault | null;
};

/** Makes files small and keeps them, one after another; each that is kept is told of. */
export function useTakePhotos(onKept: (photoId: number) => void | Promise<void>): TakingPhotos {
  const [busy, setBusy] = useState(0);
  const [unread, setUnread] = useState<readonly string[]>([]);
  const [fault, setFault] = useState<Fault | null>(null);
  const latest = useRef(onKept);
  latest.current = onKept;
  const takeOne = async (file: File) => {
    const jpegBase64 = await smallPhoto(file);
    if (jpegBase64 === null) {
      setUnread((names) => [...names, file.name]);
      return;
    }
    const kept = await answerTo(photoKeep, { jpegBase64 });
    if (kept.ok) await latest.current(kept.value.photoId);
    else setFault(kept.fault);
  };
  return {
    busy,
    unread,
    fault,
    take: async (files) => {
      setUnread([]);
      setFault(null);
      const all = [...files];
      setBusy((count) => count + all.length);
      for (const file of all) {
        try {
          await takeOne(file);
        } finally {
          setBusy((count) => count - 1);
        }
      }
    },
  };
}
