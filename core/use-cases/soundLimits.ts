import { RefusedError } from '../outcome.ts';
import type { WearsWay } from '../shop/measuringPoint.ts';

type Limits = { newSizeMm: number; renewAtMm: number | null; rejectAtMm: number | null };

/**
 * Refuses limits that cannot be: one on the unworn side of the new size, or reject-at before renew-at.
 * @param path of the limits in what was asked, "assemblies.0.positions.2.points.0."; empty: at the top
 */
export function refuseOddLimits(wears: WearsWay, limits: Limits, path: string): void {
  const { newSizeMm, renewAtMm, rejectAtMm } = limits;
  const isWorn = (fromMm: number, toMm: number) => (wears === 'down' ? toMm < fromMm : toMm > fromMm);
  for (const [name, limitMm] of [['renewAtMm', renewAtMm] as const, ['rejectAtMm', rejectAtMm] as const]) {
    if (limitMm !== null && !isWorn(newSizeMm, limitMm)) {
      const facts = { path: path + name, limitMm, newSizeMm, wears };
      throw new RefusedError({ code: 'limit-better-than-new', facts });
    }
  }
  if (renewAtMm !== null && rejectAtMm !== null && isWorn(rejectAtMm, renewAtMm)) {
    const facts = { path: `${path}rejectAtMm`, renewAtMm, rejectAtMm };
    throw new RefusedError({ code: 'reject-before-renew', facts });
  }
}
