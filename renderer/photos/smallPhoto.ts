import { PHOTO } from '#core/contract/photo.ts';
import { base64Of } from '../screens/start/csvFiles.ts';
import { type PhotoStep, photoSteps } from './photoSteps.ts';

/**
 * A picture file as a JPEG small enough for the record, as base64; null: this window cannot read it as a picture, or not
 * even its smallest drawing is light enough. It is drawn anew, upright, so that nothing but the picture is left of the
 * file: no place, no time, no camera.
 */
export async function smallPhoto(file: Blob): Promise<string | null> {
  const picture = await createImageBitmap(file, { imageOrientation: 'from-image' }).catch(() => null);
  if (!picture) return null;
  try {
    for (const step of photoSteps(picture.width, picture.height)) {
      const jpeg = await drawn(picture, step);
      if (jpeg.size <= PHOTO.mostBytes) return base64Of(new Uint8Array(await jpeg.arrayBuffer()));
    }
    return null;
  } finally {
    picture.close();
  }
}

/** On white: what is see-through in a drawing would come out black. */
async function drawn(picture: ImageBitmap, { widthPx, heightPx, quality }: PhotoStep): Promise<Blob> {
  const canvas = new OffscreenCanvas(widthPx, heightPx);
  const brush = canvas.getContext('2d');
  if (!brush) throw new Error('this window draws no pictures');
  brush.fillStyle = 'white';
  brush.fillRect(0, 0, widthPx, heightPx);
  brush.imageSmoothingQuality = 'high';
  brush.drawImage(picture, 0, 0, widthPx, heightPx);
  return canvas.convertToBlob({ type: 'image/jpeg', quality });
}
