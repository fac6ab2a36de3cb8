import { RefusedError } from '../outcome.ts';
import { isPhoto } from '../record/photoStore.ts';
import type { ReadableRecord } from '../record/recordFile.ts';
import type { Day } from '../units/day.ts';
import type { Context } from './context.ts';

/** What was asked cannot be as it is: names the field and what was expected, as the door does for a wrong shape. */
export const refuseField = (path: string, expected: string): never => {
  throw new RefusedError({ code: 'not-as-expected', facts: { path, expected } });
};

/** Nothing can have been read or done on a day that has not come. */
export function pastDay(context: Context, asked: string, path: string): Day {
  const today = context.today();
  if (asked > today) refuseField(path, `a day up to today, ${today}`);
  return asked as Day; // the contract has read it as a day
}

/** @throws RefusedError unknown-photo */
export function refuseUnknownPhotos(record: ReadableRecord, photoIds: readonly number[], path: string): void {
  for (const [place, photoId] of photoIds.entries())
    if (!isPhoto(record, photoId))
      throw new RefusedError({ code: 'unknown-photo', facts: { path: `${path}.${place}`, photoId } });
}
