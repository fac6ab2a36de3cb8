import type { Handler } from '../contract/operation.ts';
import { type findingAddPhotos, PHOTO } from '../contract/photo.ts';
import { writeEntry } from '../record/entry.ts';
import { insertFindingPhoto, photosOfFindings } from '../record/photoStore.ts';
import { refuseField, refuseUnknownPhotos } from './asked.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { findingOrRefuse } from './findingOrRefuse.ts';

/** Also to a finding that is closed: what it looked like is worth having afterwards. */
export const findingAddPhotosHandler: Handler<typeof findingAddPhotos, Context> = (context, request) => {
  const record = recordOf(context);
  const { findingId, photoIds, by } = request;
  findingOrRefuse(record, findingId);
  refuseUnknownPhotos(record, photoIds, 'photoIds');
  const there = photosOfFindings(record, [findingId]).filter(({ struck }) => !struck);
  const taken = [...there.map(({ photoId }) => photoId), ...photoIds];
  if (new Set(taken).size < taken.length) refuseField('photoIds', 'each photo once at a finding');
  if (taken.length > PHOTO.mostAtFinding) refuseField('photoIds', `at most ${PHOTO.mostAtFinding} photos at a finding`);
  writeEntry(record, entryNow(context, 'finding/addPhotos', by), (w, entryId) => {
    for (const photoId of photoIds) insertFindingPhoto(w, entryId, findingId, photoId);
  });
  return { findingId };
};
