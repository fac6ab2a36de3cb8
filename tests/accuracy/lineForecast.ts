import { lineThroughOrigin } from '#core/maths/leastSquares.ts';
import { normalQuantile } from '#core/maths/normal.ts';
import type { HoursCase } from './scores.ts';
import type { ShopSet } from './shopSets.ts';

/**
 * What the trade's ruler would say: a line per part through zero wear, its range from the gauge error alone.
 * A part with a line that does not rise has hours without end; for the scores they are cut at 5 and 10 times what came.
 * A part never read has no line and is left out.
 */
export function lineForecast({ scored }: ShopSet): HoursCase[] {
  return scored.flatMap(({ series, limitWearMm, trueHoursAtLimit }) => {
    const hours = series.readings.map((reading) => reading.workedHours);
    const found = lineThroughOrigin(
      hours,
      series.readings.map((reading) => reading.wearMm),
    );
    if (!found.ok) return [];
    const errorSd = series.readings[0]!.errorSdMm / Math.hypot(...hours);
    const z = normalQuantile(0.9);
    const at = (slope: number, most: number) => {
      const most1 = most * trueHoursAtLimit;
      return slope > 0 ? Math.min(most1, limitWearMm / slope) : most1;
    };
    const { slope } = found.value;
    return [
      {
        low: at(slope + z * errorSd, 10),
        middle: at(slope, 5),
        high: at(slope - z * errorSd, 10),
        truth: trueHoursAtLimit,
      },
    ];
  });
}
