import { PickBox } from '#renderer/controls/PickBox.tsx';
import { jobWords as words } from '#renderer/words/jobWords.ts';
import type { Place } from './placesOf.ts';

/** One of a machine's places, or the machine as a whole. */
export const PlacePick = ({
  places,
  positionId,
  onPick,
}: {
  places: readonly Place[];
  positionId: number | null;
  onPick: (positionId: number | null) => void;
}) => (
  <PickBox
    label={words.place}
    options={places.map((place) => ({ id: String(place.positionId), text: `${place.item} ${place.position}` }))}
    value={positionId === null ? null : String(positionId)}
    onChange={(id) => onPick(id === null ? null : Number(id))}
    hint={words.wholeMachine}
    opens="input"
  />
);
