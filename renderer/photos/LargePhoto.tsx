import type { ReactNode } from 'react';
import { Key } from '#renderer/controls/Key.tsx';
import { photoWords as words } from '#renderer/words/photoWords.ts';
import { Photo, type ThumbPhoto } from './Thumbs.tsx';

/** One photo as large as there is room, under the row it belongs to; arrows turn to the next. */
export function LargePhoto({
  photos,
  photoId,
  of,
  onShow,
  onClose,
  keys,
  children,
}: {
  photos: readonly ThumbPhoto[];
  photoId: number;
  of: string;
  onShow: (photoId: number) => void;
  onClose: () => void;
  keys?: ReactNode;
  children?: ReactNode;
}) {
  const at = Math.max(
    0,
    photos.findIndex((photo) => photo.photoId === photoId),
  );
  const beside = (by: number) => photos[(at + by + photos.length) % photos.length]?.photoId ?? photoId;
  return (
    <figure className="large-photo">
      <Photo photoId={photoId} alt={words.showsWhat(of)} />
      <figcaption>
        <span>
          {words.of(at + 1, photos.length, of)} {children}
        </span>
        <div className="keys">
          {photos.length > 1 && (
            <>
              <Key letter="<" onPress={() => onShow(beside(-1))}>
                {words.before}
              </Key>
              <Key letter=">" onPress={() => onShow(beside(1))}>
                {words.next}
              </Key>
            </>
          )}
          {keys}
          <Key letter="Escape" onPress={onClose} autoFocus>
            {words.close}
          </Key>
        </div>
      </figcaption>
    </figure>
  );
}
