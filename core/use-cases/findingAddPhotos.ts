import type { Handler } from '../contract/operation.ts';
import type { findingAddPhotos } from '../contract/photo.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { findingOrRefuse } from './findingOrRefuse.ts';
import { addPhotosAt } from './photosAt.ts';

/** Also to a finding that is closed: what it looked like is worth having afterwards. */
export const findingAddPhotosHandler: Handler<typeof findingAddPhotos, Context> = (context, request) => {
  const { findingId, photoIds, by } = request;
  findingOrRefuse(recordOf(context), findingId);
  const made = entryNow(context, 'finding/addPhotos', by);
  addPhotosAt(recordOf(context), made, { at: 'finding', id: findingId }, photoIds);
  return { findingId };
};
