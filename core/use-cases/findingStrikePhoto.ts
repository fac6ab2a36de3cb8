import type { Handler } from '../contract/operation.ts';
import type { findingStrikePhoto } from '../contract/photo.ts';
import { type Context, entryNow, recordOf } from './context.ts';
import { findingOrRefuse } from './findingOrRefuse.ts';
import { strikePhotoFrom } from './photosAt.ts';

export const findingStrikePhotoHandler: Handler<typeof findingStrikePhoto, Context> = (context, request) => {
  const { findingId, by } = request;
  findingOrRefuse(recordOf(context), findingId);
  const made = entryNow(context, 'finding/strikePhoto', by);
  strikePhotoFrom(recordOf(context), made, { at: 'finding', id: findingId }, request);
  return { findingId };
};
