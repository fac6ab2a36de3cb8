import { z } from 'zod';
import { operation } from './operation.ts';
import { zId, zNote } from './shapes.ts';

/** A photo in the record: JPEG, its long side and its weight kept small so that one file can be the whole truth. */
export const PHOTO = {
  mostPx: 1600,
  mostBytes: 300_000,
  /** so many stand at one finding, or one job */
  mostAtFinding: 20,
} as const;

const zPhotoId = z.object({ photoId: zId });
const zBy = z.string().max(120);
const zPhotoIds = z.array(zId).max(PHOTO.mostAtFinding);

export { zPhotoIds };

/** A photo that stands at a finding or a job, or stood there and was struck. */
export const zStandingPhoto = zPhotoId.extend({
  widthPx: z.int(),
  heightPx: z.int(),
  struck: z.boolean(),
  /** why it was struck */
  reason: z.string(),
});
export type StandingPhoto = z.infer<typeof zStandingPhoto>;

export const photoKeep = operation(
  'photo/keep',
  z.object({
    /** as the window made it small; what is heavier than a photo may be is refused by its weight, up to here */
    jpegBase64: z.string().max(2_000_000),
  }),
  zPhotoId.extend({ widthPx: z.int(), heightPx: z.int() }),
  { title: 'Keep a photo, to be put to a finding or a job' },
);

export const photoRead = operation(
  'photo/read',
  zPhotoId,
  z.object({ jpegBase64: z.string(), widthPx: z.int(), heightPx: z.int() }),
  { title: 'A photo as it was kept' },
);

export const photoDrop = operation('photo/drop', zPhotoId, z.object({ dropped: z.boolean() }), {
  title: 'Throw away a photo that was taken and put nowhere',
});

export const findingAddPhotos = operation(
  'finding/addPhotos',
  z.object({ findingId: zId, photoIds: zPhotoIds.min(1), by: zBy }),
  z.object({ findingId: zId }),
  { title: 'Put photos to a finding' },
);

export const findingStrikePhoto = operation(
  'finding/strikePhoto',
  z.object({ findingId: zId, photoId: zId, reason: zNote.min(1), by: zBy }),
  z.object({ findingId: zId }),
  { title: 'Strike a photo at a finding; it stays in the record, and in sight' },
);
