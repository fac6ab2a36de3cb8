import type { Handler } from '../contract/operation.ts';
import type { findingStrikePhoto } from '../contract/photo.ts';
import { RefusedError } from '../outcome.ts';
import { writeEntry } from '../record/entry.ts';
import { strikeFindingPhoto } from '../record/photoStore.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { findingOrRefuse } from './findingOrRefuse.ts';

/** Struck, not thrown away: it stays in the record and in sight, with why. */
export const findingStrikePhotoHandler: Handler<typeof findingStrikePhoto, Context> = (context, request) => {
  const record = recordOf(context);
  const { findingId, photoId, reason, by } = request;
  findingOrRefuse(record, findingId);
  writeEntry(record, entryNow(context, 'finding/strikePhoto', by), (w, entryId) => {
    if (!strikeFindingPhoto(w, entryId, { findingId, photoId, reason }))
      throw new RefusedError({ code: 'unknown-photo', facts: { path: 'photoId', photoId } });
  });
  return { findingId };
};
