import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { RANGE_CHANCES, type Range, wearQuantiles } from './wearAt.ts';

/** True wear to be expected at hours to come: the fan of the wear chart, finer than a line on any screen. Hours before the last size are left out. */
export function wearFan(
  law: PartLaw,
  hours: readonly number[],
  settings: ModelSettings,
): ({ workedHours: number } & Range)[] {
  const from = law.lastHours ?? 0;
  const chances = [RANGE_CHANCES.low, RANGE_CHANCES.middle, RANGE_CHANCES.high];
  return hours
    .filter((workedHours) => workedHours >= from)
    .map((workedHours) => {
      const [low, middle, high] = wearQuantiles(law, workedHours, chances, settings.driftDelta);
      return { workedHours, low: low!, middle: middle!, high: high! };
    });
}
