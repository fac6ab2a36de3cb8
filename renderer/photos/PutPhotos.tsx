import { type ReactNode, useState } from 'react';
import type { Fault } from '#core/contract/operation.ts';
import type { StandingPhoto } from '#core/contract/photo.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { ByField, useBy } from '#renderer/screens/machine/panels/ByField.tsx';
import { panelWords } from '#renderer/words/machineWords.ts';
import { photoWords } from '#renderer/words/photoWords.ts';
import { LargePhoto } from './LargePhoto.tsx';
import { TakePhotos } from './TakePhotos.tsx';
import { useTakePhotos } from './useTakePhotos.ts';

/** Something asked for that may be refused. */
type Done = { fault: Fault | null; busy: boolean };

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

export function StrikePhoto({
  strike,
  doing,
  onDone,
}: {
  strike: (reason: string, by: string) => Promise<unknown>;
  doing: Done;
  onDone: () => void;
}) {
  const [reason, setReason] = useState('');
  const [by, setBy] = useBy();
  const complete = reason.trim() !== '';
  const send = async () => {
    if (complete && (await strike(reason, by))) onDone();
  };
  return (
    <form
      className="row-form"
      onSubmit={(event) => {
        event.preventDefault();
        void send();
      }}
    >
      <p>{photoWords.strikeFact}</p>
      <div className="fields">
        <TextField label={photoWords.why} value={reason} onChange={setReason} maxLength={2000} autoFocus />
        <ByField value={by} onChange={setBy} />
      </div>
      {doing.fault && <FaultBox fault={doing.fault} />}
      <Keys>
        <Key first red type="submit" disabled={!complete || doing.busy} onPress={() => {}}>
          {photoWords.strikePhoto}
        </Key>
        <Key letter="Escape" onPress={onDone}>
          {panelWords.leave}
        </Key>
      </Keys>
    </form>
  );
}
