import type { Handler } from '../contract/operation.ts';
import { PHOTO, type photoKeep } from '../contract/photo.ts';
import { jpegFrame } from '../exchange/jpegFrame.ts';
import { RefusedError } from '../outcome.ts';
import { writePlain } from '../record/entry.ts';
import { insertPhoto } from '../record/photoStore.ts';
import { type Context, recordOf } from './context.ts';

/** Keeps a photo the window made small. Whatever window asks: a bare JPEG, no larger and no heavier than a photo may be. */
export const photoKeepHandler: Handler<typeof photoKeep, Context> = (context, { jpegBase64 }) => {
  const record = recordOf(context);
  const jpeg = Buffer.from(jpegBase64, 'base64');
  const size = soundPhoto(jpeg);
  const photoId = writePlain(record, (w) => insertPhoto(w, { jpeg, ...size, keptAt: context.now() }));
  return { photoId, ...size };
};

/** @throws RefusedError photo-not-a-jpeg, photo-carries-data, photo-too-heavy, photo-too-large */
function soundPhoto(jpeg: Buffer): { widthPx: number; heightPx: number } {
  const path = 'jpegBase64';
  const { mostBytes, mostPx } = PHOTO;
  const frame = jpegFrame(jpeg);
  if (frame === 'not-a-jpeg') throw new RefusedError({ code: 'photo-not-a-jpeg', facts: { path } });
  if (frame === 'carries-data') throw new RefusedError({ code: 'photo-carries-data', facts: { path } });
  if (jpeg.length > mostBytes)
    throw new RefusedError({ code: 'photo-too-heavy', facts: { path, bytes: jpeg.length, mostBytes } });
  const { widthPx, heightPx } = frame;
  if (Math.max(widthPx, heightPx) > mostPx || Math.min(widthPx, heightPx) < 1)
    throw new RefusedError({ code: 'photo-too-large', facts: { path, widthPx, heightPx, mostPx } });
  return frame;
}
