import type { Handler } from '../contract/operation.ts';
import type { photoDrop } from '../contract/photo.ts';
import { RefusedError } from '../outcome.ts';
import { writePlain } from '../record/entry.ts';
import { dropPhoto, standsSomewhere } from '../record/photoStore.ts';
import { refuseUnknownPhotos } from './asked.ts';
import { type Context, recordOf } from './context.ts';

/** A photo of a sheet still being typed is thrown away; one that stands at a finding or a job is struck there instead. */
export const photoDropHandler: Handler<typeof photoDrop, Context> = (context, { photoId }) => {
  const record = recordOf(context);
  const facts = { path: 'photoId', photoId };
  refuseUnknownPhotos(record, [photoId], 'photoIds');
  if (standsSomewhere(record, photoId)) throw new RefusedError({ code: 'photo-at-finding', facts });
  return { dropped: writePlain(record, (w) => dropPhoto(w, photoId)) };
};
