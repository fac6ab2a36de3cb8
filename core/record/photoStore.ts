import { eq } from 'drizzle-orm';
import { bulk } from './bulk.ts';
import { counting, isLastOfChain, NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { findingPhotos, photos } from './schema.ts';
import { strikeOut } from './supersede.ts';

export type PhotoOnRecord = typeof photos.$inferSelect;

export const insertPhoto = (w: WritableRecord, photo: Omit<PhotoOnRecord, 'id'>): number =>
  insertInto(w, photos, photo);

export const readPhoto = (db: ReadableRecord, photoId: number): PhotoOnRecord | null =>
  db.read.select().from(photos).where(eq(photos.id, photoId)).get() ?? null;

export const isPhoto = (db: ReadableRecord, photoId: number): boolean =>
  bulk(db, 'SELECT 1 FROM photos WHERE id = @photoId', { photoId }).length > 0;

/** A photo that ever stood at a finding stays. */
export const standsAtFinding = (db: ReadableRecord, photoId: number): boolean =>
  db.read.select({ id: findingPhotos.id }).from(findingPhotos).where(eq(findingPhotos.photoId, photoId)).limit(1).all()
    .length > 0;

/** Throws away a photo that never stood at a finding. @returns whether there was one */
export const dropPhoto = (w: WritableRecord, photoId: number): boolean =>
  !standsAtFinding(w, photoId) && w.write.delete(photos).where(eq(photos.id, photoId)).run().changes > 0;

export const insertFindingPhoto = (w: WritableRecord, entryId: number, findingId: number, photoId: number): number =>
  insertInto(w, findingPhotos, { findingId, photoId, entryId });

/** Strikes a photo at a finding; @returns false: it does not stand there */
export function strikeFindingPhoto(
  w: WritableRecord,
  entryId: number,
  { findingId, photoId, reason }: { findingId: number; photoId: number; reason: string },
): boolean {
  const row = bulk<[number]>(
    w,
    `SELECT p.id FROM finding_photos p
     WHERE p.finding_id = @findingId AND p.photo_id = @photoId AND ${counting('finding_photos', 'p')}`,
    { findingId, photoId, knownAt: NOW_KNOWN },
  )[0];
  if (!row) return false;
  strikeOut(w, findingPhotos, row[0], entryId, reason);
  return true;
}

export type FindingPhotoRow = {
  findingId: number;
  photoId: number;
  widthPx: number;
  heightPx: number;
  struck: boolean;
  reason: string;
};

/** Photos at findings, struck ones too, in the order they were put there. */
export const photosOfFindings = (db: ReadableRecord, findingIds: readonly number[]): FindingPhotoRow[] =>
  bulk<[number, number, number, number, number, string]>(
    db,
    `SELECT p.finding_id, p.photo_id, o.width_px, o.height_px, p.struck, p.reason
     FROM finding_photos p JOIN photos o ON o.id = p.photo_id
     WHERE p.finding_id IN (SELECT value FROM json_each(@ids)) AND ${standing('p')}
       AND ${isLastOfChain('finding_photos', 'p')}
     ORDER BY p.finding_id, COALESCE(p.chain_id, p.id)`,
    { ids: JSON.stringify(findingIds), knownAt: NOW_KNOWN },
  ).map(([findingId, photoId, widthPx, heightPx, struck, reason]) => ({
    findingId,
    photoId,
    widthPx,
    heightPx,
    struck: struck === 1,
    reason,
  }));
