import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { chanceWornPast } from './wearLaw.ts';

/**
 * Chance that the limit is reached by some worked hours since the renewal, given only that the part
 * was not past at its own last size: (F(x) - F0) / (1 - F0); 0 before that size. Its 10, 50 and 90 % points are
 * those of hoursAtLimit().
 */
export function chanceByHours(law: PartLaw, limitWearMm: number, settings: ModelSettings): (hours: number) => number {
  const from = law.lastHours ?? 0;
  const past0 = chanceWornPast(law, limitWearMm, from, settings.driftDelta);
  return (hours) => {
    if (hours <= from || past0 >= 1) return hours <= from ? 0 : 1;
    const past = chanceWornPast(law, limitWearMm, hours, settings.driftDelta);
    return Math.min(1, Math.max(0, (past - past0) / (1 - past0)));
  };
}
