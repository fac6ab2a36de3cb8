import { PHOTO } from '../contract/photo.ts';
import { RefusedError } from '../outcome.ts';
import { type EntryMade, writeEntry } from '../record/entry.ts';
import { insertPhotoAt, type PhotoPlace, photosAt, strikePhotoAt } from '../record/photoStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import { refuseField, refuseUnknownPhotos } from './asked.ts';

/** Puts photos to a finding or a job. @throws RefusedError unknown-photo; not-as-expected: one twice, or too many */
export function addPhotosAt(
  record: ReadableRecord,
  made: EntryMade,
  place: PhotoPlace,
  photoIds: readonly number[],
): void {
  refuseUnknownPhotos(record, photoIds, 'photoIds');
  const there = photosAt(record, place.at, [place.id]).filter(({ struck }) => !struck);
  refuseCrowdedPhotos([...there.map(({ photoId }) => photoId), ...photoIds]);
  writeEntry(record, made, (w, entryId) => {
    for (const photoId of photoIds) insertPhotoAt(w, entryId, place, photoId);
  });
}

export function refuseCrowdedPhotos(photoIds: readonly number[]): void {
  if (new Set(photoIds).size < photoIds.length) refuseField('photoIds', 'each photo once');
  if (photoIds.length > PHOTO.mostAtFinding) refuseField('photoIds', `at most ${PHOTO.mostAtFinding} photos`);
}

/** Struck, not thrown away: it stays in the record and in sight, with why. @throws RefusedError unknown-photo */
export const strikePhotoFrom = (
  record: ReadableRecord,
  made: EntryMade,
  place: PhotoPlace,
  { photoId, reason }: { photoId: number; reason: string },
): void =>
  writeEntry(record, made, (w, entryId) => {
    if (!strikePhotoAt(w, entryId, place, { photoId, reason }))
      throw new RefusedError({ code: 'unknown-photo', facts: { path: 'photoId', photoId } });
  });
