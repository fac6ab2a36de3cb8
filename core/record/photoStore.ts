import { eq } from 'drizzle-orm';
import { bulk } from './bulk.ts';
import { counting, isLastOfChain, NOW_KNOWN, standing } from './counting.ts';
import { insertInto } from './insertInto.ts';
import type { ReadableRecord, WritableRecord } from './recordFile.ts';
import { findingPhotos, photos, rebuildPhotos } from './schema.ts';
import { strikeOut } from './supersede.ts';

export type PhotoOnRecord = typeof photos.$inferSelect;

export const insertPhoto = (w: WritableRecord, photo: Omit<PhotoOnRecord, 'id'>): number =>
  insertInto(w, photos, photo);

export const readPhoto = (db: ReadableRecord, photoId: number): PhotoOnRecord | null =>
  db.read.select().from(photos).where(eq(photos.id, photoId)).get() ?? null;

export const isPhoto = (db: ReadableRecord, photoId: number): boolean =>
  bulk(db, 'SELECT 1 FROM photos WHERE id = @photoId', { photoId }).length > 0;

/** What photos stand at: a finding, or a job as its machine came in. */
const PLACES = {
  finding: { rows: findingPhotos, name: 'finding_photos', of: 'finding_id' },
  rebuild: { rows: rebuildPhotos, name: 'rebuild_photos', of: 'rebuild_id' },
} as const;
export type PhotoPlace = { at: keyof typeof PLACES; id: number };

/** A photo that ever stood somewhere stays. */
export const standsSomewhere = (db: ReadableRecord, photoId: number): boolean =>
  Object.values(PLACES).some(
    ({ name }) => bulk(db, `SELECT 1 FROM ${name} WHERE photo_id = @photoId LIMIT 1`, { photoId }).length > 0,
  );

/** Throws away a photo that never stood anywhere. @returns whether there was one */
export const dropPhoto = (w: WritableRecord, photoId: number): boolean =>
  !standsSomewhere(w, photoId) && w.write.delete(photos).where(eq(photos.id, photoId)).run().changes > 0;

export const insertPhotoAt = (w: WritableRecord, entryId: number, { at, id }: PhotoPlace, photoId: number): number =>
  at === 'finding'
    ? insertInto(w, findingPhotos, { findingId: id, photoId, entryId })
    : insertInto(w, rebuildPhotos, { rebuildId: id, photoId, entryId });

/** Strikes a photo where it stands; @returns false: it does not stand there */
export function strikePhotoAt(
  w: WritableRecord,
  entryId: number,
  { at, id }: PhotoPlace,
  { photoId, reason }: { photoId: number; reason: string },
): boolean {
  const { rows, name, of } = PLACES[at];
  const row = bulk<[number]>(
    w,
    `SELECT p.id FROM ${name} p WHERE p.${of} = @id AND p.photo_id = @photoId AND ${counting(name, 'p')}`,
    { id, photoId, knownAt: NOW_KNOWN },
  )[0];
  if (!row) return false;
  strikeOut(w, rows, row[0], entryId, reason);
  return true;
}

export type PhotoAtRow = {
  /** the finding or the job */
  at: number;
  photoId: number;
  widthPx: number;
  heightPx: number;
  struck: boolean;
  reason: string;
};

/** Photos at findings or jobs, struck ones too, in the order they were put there. */
export function photosAt(db: ReadableRecord, place: PhotoPlace['at'], ids: readonly number[]): PhotoAtRow[] {
  const { name, of } = PLACES[place];
  return bulk<[number, number, number, number, number, string]>(
    db,
    `SELECT p.${of}, p.photo_id, o.width_px, o.height_px, p.struck, p.reason
     FROM ${name} p JOIN photos o ON o.id = p.photo_id
     WHERE p.${of} IN (SELECT value FROM json_each(@ids)) AND ${standing('p')} AND ${isLastOfChain(name, 'p')}
     ORDER BY p.${of}, COALESCE(p.chain_id, p.id)`,
    { ids: JSON.stringify(ids), knownAt: NOW_KNOWN },
  ).map(([at, photoId, widthPx, heightPx, struck, reason]) => ({
    ...{ at, photoId, widthPx, heightPx, struck: struck === 1, reason },
  }));
}
