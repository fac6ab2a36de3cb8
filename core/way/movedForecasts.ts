import type { PointForecast } from '../contract/forecast.ts';
import type { Moved } from '../contract/forecastSettings.ts';

/** Less than a twentieth of the part's hours is within what nobody would plan by (common practice, no source). */
const MOVED_BEYOND_SHARE = 0.05;

/**
 * How many forecasts differ: middle hours at limit by more than a twentieth of what they were. Points without hours left
 * before or after are not counted.
 */
export function movedForecasts(before: readonly PointForecast[], after: readonly PointForecast[]): Moved {
  const later = new Map(after.map((forecast) => [forecast.pointId, forecast]));
  let forecasts = 0;
  let moved = 0;
  let most: { share: number; told: Moved['most'] } = { share: 0, told: null };
  for (const was of before) {
    const is = later.get(was.pointId);
    const partHoursAtLimit = (was.hoursLeft.middle ?? 0) + (was.partHours ?? 0);
    if (was.hoursLeft.middle === null || !is || is.hoursLeft.middle === null || partHoursAtLimit <= 0) continue;
    forecasts++;
    const share = Math.abs(is.hoursLeft.middle - was.hoursLeft.middle) / partHoursAtLimit;
    if (share > MOVED_BEYOND_SHARE) moved++;
    if (share > most.share) {
      const { machine, position, point } = was;
      const told = {
        machine,
        position,
        point,
        beforeHoursLeft: was.hoursLeft.middle,
        afterHoursLeft: is.hoursLeft.middle,
      };
      most = { share, told };
    }
  }
  return { forecasts, moved, movedBeyondShare: MOVED_BEYOND_SHARE, most: most.told };
}
