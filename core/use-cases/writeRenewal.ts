import { insertLimits } from '../record/pointStore.ts';
import type { WritableRecord } from '../record/recordFile.ts';
import { insertRenewal, type NewRenewal } from '../record/renewalStore.ts';
import type { PointLife } from '../shop/measuringPoint.ts';
import { limitsMovedBy } from '../shop/oversize.ts';
import type { Day } from '../units/day.ts';

/** Writes a renewal, and the limits that move with it. @param life the point as it stood before */
export function writeRenewal(
  w: WritableRecord,
  entryId: number,
  life: PointLife,
  renewal: NewRenewal,
  visit: { takenOn: Day; fitter: string },
): void {
  const renewalId = insertRenewal(w, entryId, renewal);
  if (!renewal.parked) writeLimitsOf(w, entryId, life, { ...renewal, renewalId }, visit);
}

/** @param renewalId first row of the renewal's chain */
export function writeLimitsOf(
  w: WritableRecord,
  entryId: number,
  life: PointLife,
  { renewalId, ...renewal }: Pick<NewRenewal, 'pointId' | 'sizeMm' | 'kind' | 'station'> & { renewalId: number },
  { takenOn, fitter }: { takenOn: Day; fitter: string },
): void {
  const moved = limitsMovedBy(life, { ...renewal, takenOn });
  if (moved)
    insertLimits(w, entryId, { ...moved, pointId: renewal.pointId, fromOn: takenOn, enteredBy: fitter, renewalId });
}
