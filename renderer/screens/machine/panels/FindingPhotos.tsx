import { useState } from 'react';
import type { FindingWhole } from '#core/contract/machine.ts';
import { findingAddPhotos, findingStrikePhoto } from '#core/contract/photo.ts';
import { TextField } from '#renderer/controls/Field.tsx';
import { Key, Keys } from '#renderer/controls/Key.tsx';
import { FaultBox } from '#renderer/controls/Notice.tsx';
import { LargePhoto } from '#renderer/photos/LargePhoto.tsx';
import { TakePhotos } from '#renderer/photos/TakePhotos.tsx';
import { useTakePhotos } from '#renderer/photos/useTakePhotos.ts';
import { useDo } from '#renderer/useAsk.ts';
import { findingText } from '#renderer/words/findingText.ts';
import { panelWords } from '#renderer/words/machineWords.ts';
import { photoWords } from '#renderer/words/photoWords.ts';
import { ByField, useBy } from './ByField.tsx';

/** Photos put to a finding on record: each is in the record as soon as it is small. */
export function AddPhotos({ finding, onDone }: { finding: FindingWhole; onDone: () => void }) {
  const add = useDo(findingAddPhotos);
  const [by, setBy] = useBy();
  const taking = useTakePhotos(async (photoId) => {
    await add.run({ findingId: finding.findingId, photoIds: [photoId], by });
  });
  return (
    <div className="row-form">
      <p>{photoWords.takeFact(findingText(finding))}</p>
      <div className="fields">
        <ByField value={by} onChange={setBy} />
      </div>
      <TakePhotos taking={taking} letter="A" />
      {add.fault && <FaultBox fault={add.fault} />}
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
  finding,
  photoId,
  onShow,
  onClose,
}: {
  finding: FindingWhole;
  photoId: number;
  onShow: (photoId: number) => void;
  onClose: () => void;
}) {
  const [striking, setStriking] = useState(false);
  const photo = finding.photos.find((one) => one.photoId === photoId);
  return (
    <>
      <LargePhoto
        photos={finding.photos}
        photoId={photoId}
        of={findingText(finding)}
        onShow={onShow}
        onClose={onClose}
        keys={photo && !photo.struck && <Key onPress={() => setStriking(true)}>{photoWords.strike}</Key>}
      >
        {photo?.struck && photoWords.struckFor(photo.reason)}
      </LargePhoto>
      {striking && <StrikePhoto findingId={finding.findingId} photoId={photoId} onDone={() => setStriking(false)} />}
    </>
  );
}

function StrikePhoto({ findingId, photoId, onDone }: { findingId: number; photoId: number; onDone: () => void }) {
  const strike = useDo(findingStrikePhoto);
  const [reason, setReason] = useState('');
  const [by, setBy] = useBy();
  const complete = reason.trim() !== '';
  const send = async () => {
    if (complete && (await strike.run({ findingId, photoId, reason, by }))) onDone();
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
      {strike.fault && <FaultBox fault={strike.fault} />}
      <Keys>
        <Key first red type="submit" disabled={!complete || strike.busy} onPress={() => {}}>
          {photoWords.strikePhoto}
        </Key>
        <Key letter="Escape" onPress={onDone}>
          {panelWords.leave}
        </Key>
      </Keys>
    </form>
  );
}
