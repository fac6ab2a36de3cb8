import type { ModelSettings } from '../fit/modelSettings.ts';
import type { PartLaw } from '../fit/partLaw.ts';
import { type Range, wearAt } from './wearAt.ts';

/** True wear to be expected at hours to come: the fan of the wear chart. Hours before the last size are left out. */
export function wearFan(
  law: PartLaw,
  hours: readonly number[],
  settings: ModelSettings,
): ({ workedHours: number } & Range)[] {
  const from = law.lastHours ?? 0;
  return hours
    .filter((workedHours) => workedHours >= from)
    .map((workedHours) => ({ workedHours, ...wearAt(law, workedHours, settings) }));
}
