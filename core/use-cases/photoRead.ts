import type { Handler } from '../contract/operation.ts';
import type { photoRead } from '../contract/photo.ts';
import { RefusedError } from '../outcome.ts';
import { readPhoto } from '../record/photoStore.ts';
import { type Context, recordOf } from './context.ts';

export const photoReadHandler: Handler<typeof photoRead, Context> = (context, { photoId }) => {
  const photo = readPhoto(recordOf(context), photoId);
  if (!photo) throw new RefusedError({ code: 'unknown-photo', facts: { path: 'photoId', photoId } });
  const { jpeg, widthPx, heightPx } = photo;
  return { jpegBase64: jpeg.toString('base64'), widthPx, heightPx };
};
