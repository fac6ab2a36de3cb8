import type { Handler } from '../../contract/operation.ts';
import type { rebuildAddPhotos, rebuildStrikePhoto } from '../../contract/rebuild.ts';
import { type Context, entryNow, recordOf } from '../context.ts';
import { addPhotosAt, strikePhotoFrom } from '../photosAt.ts';
import { rebuildOrRefuse } from './rebuildOrRefuse.ts';

/** Also to a job that was handed over: what it looked like is worth having afterwards. */
export const rebuildAddPhotosHandler: Handler<typeof rebuildAddPhotos, Context> = (context, request) => {
  const { rebuildId, photoIds, by } = request;
  rebuildOrRefuse(recordOf(context), rebuildId);
  const made = entryNow(context, 'rebuild/addPhotos', by);
  addPhotosAt(recordOf(context), made, { at: 'rebuild', id: rebuildId }, photoIds);
  return { rebuildId };
};

export const rebuildStrikePhotoHandler: Handler<typeof rebuildStrikePhoto, Context> = (context, request) => {
  const { rebuildId, by } = request;
  rebuildOrRefuse(recordOf(context), rebuildId);
  const made = entryNow(context, 'rebuild/strikePhoto', by);
  strikePhotoFrom(recordOf(context), made, { at: 'rebuild', id: rebuildId }, request);
  return { rebuildId };
};
