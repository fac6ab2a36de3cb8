import { assertInvariant } from '../outcome.ts';
import type { Day } from '../units/day.ts';
import type { PointLife, PointLimits } from './measuringPoint.ts';

/** The limits in force on a day: the last row that began by then, else the first. */
export function limitsOn(point: Pick<PointLife, 'limits'>, on: Day): PointLimits {
  if (point.limits.length === 1) return point.limits[0]!;
  const inForce = point.limits.findLast(({ from }) => from === null || from <= on) ?? point.limits[0];
  assertInvariant(inForce, 'a measuring point has a new size');
  return inForce;
}

/** The limits by which what was found on a day is judged: those of before, where a renewal of that day brought others. */
export const limitsAsFound = (point: Pick<PointLife, 'limits'>, on: Day): PointLimits =>
  point.limits.length === 1
    ? point.limits[0]!
    : limitsOn(
        { limits: point.limits.filter(({ from, withRenewal }) => !(withRenewal === 'here' && from === on)) },
        on,
      );
