import { photoDrop } from '#core/contract/photo.ts';
import { answerTo } from '#renderer/ask.ts';

/** Lets go of photos that were taken and put to no finding. One that cannot be let go only takes up room. */
export function dropPhotos(photoIds: readonly number[]): void {
  for (const photoId of photoIds) void answerTo(photoDrop, { photoId });
}
