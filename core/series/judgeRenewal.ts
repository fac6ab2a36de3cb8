import type { Caution } from '../outcome.ts';
import { limitsOn } from '../shop/limitsOn.ts';
import type { PointLife, Renewal } from '../shop/measuringPoint.ts';
import { slipOf } from './judgeSize.ts';
import { newSizeTolOf } from './partWalk.ts';
import { wearOf } from './visitSizes.ts';

/**
 * What is odd about the size of a part put in, as it is typed:
 *  - wrong-unit, ten-times-off: far out, and another reading of it fits
 *  - not-oversize: said to be oversize, and no larger than what stood there
 *  - put-in-worn: at or past its limit already
 *  - put-in-larger, put-in-smaller: no size of an ordinary new part, by more than 3 sqrt(tau0^2 + s^2), and nobody said oversize
 * Of a strip turned over nothing but a slip can be odd: it goes back in as worn as it came out.
 *
 * @param point as it stood before the renewal
 * @returns null: nothing is odd
 * @source shop practice; thresholds of three sd: common practice, no source
 */
export function judgeRenewal(
  point: PointLife,
  renewal: Pick<Renewal, 'takenOn' | 'sizeMm' | 'kind'>,
  classNewSizeTolMm: number | null,
): Caution | null {
  const { sizeMm, kind = 'new-part', takenOn } = renewal;
  const limits = limitsOn(point, takenOn);
  if (sizeMm === null || limits.newSizeMm <= 0) return null;
  const newSizeTolMm = newSizeTolOf(limits, classNewSizeTolMm);
  const context = { wears: point.wears, limits: { ...limits, newSizeTolMm }, last: null };
  const slip = slipOf(sizeMm, context);
  if (slip) return slip;
  if (kind === 'turned') return null;
  const facts = { sizeMm, newSizeMm: limits.newSizeMm, renewAtMm: limits.renewAtMm };
  const oddMm = 3 * Math.hypot(newSizeTolMm / 4, point.gaugeErrorMm);
  if (kind === 'oversize') return sizeMm <= limits.newSizeMm ? { code: 'not-oversize', facts } : null;
  if (limits.renewAtMm !== null && wearOf(point.wears, limits.renewAtMm, sizeMm) >= 0)
    return { code: 'put-in-worn', facts };
  if (sizeMm > limits.newSizeMm + oddMm) return { code: 'put-in-larger', facts };
  return sizeMm < limits.newSizeMm - oddMm ? { code: 'put-in-smaller', facts } : null;
}
