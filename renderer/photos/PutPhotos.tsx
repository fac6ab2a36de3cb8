import { type ReactNode, useState } from 'react';
import type { StandingPhoto } from '#core/contract/photo.ts';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { type Done, StrikeForm } from '#renderer/screens/machine/panels/StrikeForm.tsx';
import { photoWords } from '#renderer/words/photoWords.ts';
import { LargePhoto } from './LargePhoto.tsx';
import { TakePhotos } from './TakePhotos.tsx';
import { useTakePhotos } from './useTakePhotos.ts';

/** Photos put to what stands on record: each is there as soon as it is small. */
export function AddPhotos({
  of,
  add,
  doing,
  onDone,
}: {
  /** what they show */
  of: string;
  add: (photoId: number, by: string) => Promise<unknown>;
  doing: Done;
  onDone: () => void;
}) {
  const [by, setBy] = useBy();
  const taking = useTakePhotos(async (photoId) => {
    await add(photoId, by);
  });
  return (
    <div className="row-form">
      <p>{photoWords.takeFact(of)}</p>
      <div className="fields">
        <ByField value={by} onChange={setBy} />
      </div>
      <TakePhotos taking={taking} letter="A" />
      {doing.fault && <FaultBox fault={doing.fault} />}
      <Keys>
        <Key letter="Escape" onPress={onDone}>
          {photoWords.close}
        </Key>
      </Keys>
    </div>
  );
}

/** A photo large, with the key that strikes it. */
export function ShownPhoto({
  photos,
  photoId,
  of,
  onShow,
  onClose,
  strike,
}: {
  photos: readonly StandingPhoto[];
  photoId: number;
  of: string;
  onShow: (photoId: number) => void;
  onClose: () => void;
  /** the form that strikes it */
  strike: (onDone: () => void) => ReactNode;
}) {
  const [striking, setStriking] = useState(false);
  const photo = photos.find((one) => one.photoId === photoId);
  return (
    <>
      <LargePhoto
        photos={photos}
        photoId={photoId}
        of={of}
        onShow={onShow}
        onClose={onClose}
        keys={photo && !photo.struck && <Key onPress={() => setStriking(true)}>{photoWords.strike}</Key>}
      >
        {photo?.struck && photoWords.struckFor(photo.reason)}
      </LargePhoto>
      {striking && strike(() => setStriking(false))}
    </>
  );
}

/** A photo that does not belong where it stands. */
export function StrikePhoto({
  strike,
  doing,
  onDone,
}: {
  strike: (reason: string, by: string) => Promise<unknown>;
  doing: Done;
  onDone: () => void;
}) {
  const { strikeFact: fact, why, strikePhoto: key } = photoWords;
  return <StrikeForm words={{ fact, why, key }} strike={strike} doing={doing} onDone={onDone} />;
}
