import type { FindingWhole } from '#core/contract/machine.ts';
import { findingAddPhotos, findingStrikePhoto } from '#core/contract/photo.ts';
import { AddPhotos, ShownPhoto, StrikePhoto } from '#renderer/photos/PutPhotos.tsx';
import { useDo } from '#renderer/useAsk.ts';
import { findingText } from '#renderer/words/findingText.ts';

/** Photos put to a finding on record. */
export function AddFindingPhotos({ finding, onDone }: { finding: FindingWhole; onDone: () => void }) {
  const add = useDo(findingAddPhotos);
  const { findingId } = finding;
  return (
    <AddPhotos
      of={findingText(finding)}
      add={(photoId, by) => add.run({ findingId, photoIds: [photoId], by })}
      doing={add}
      onDone={onDone}
    />
  );
}

/** A finding's photo large, with the key that strikes it. */
export function ShownFindingPhoto({
  finding,
  ...shown
}: {
  finding: FindingWhole;
  photoId: number;
  onShow: (photoId: number) => void;
  onClose: () => void;
}) {
  const strike = useDo(findingStrikePhoto);
  const { findingId, photos } = finding;
  const { photoId } = shown;
  return (
    <ShownPhoto
      {...shown}
      photos={photos}
      of={findingText(finding)}
      strike={(onDone) => (
        <StrikePhoto
          strike={(reason, by) => strike.run({ findingId, photoId, reason, by })}
          doing={strike}
          onDone={onDone}
        />
      )}
    />
  );
}
