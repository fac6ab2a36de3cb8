import { lineThroughOrigin } from '#core/maths/leastSquares.ts';
import { normalCdf, normalQuantile } from '#core/maths/normal.ts';
import type { KeptBack } from './lastReadingOut.ts';
import { crps, type ReadingCase } from './scores.ts';

/** A reading kept back, foretold by the part's own line through zero wear, its range from the gauge errors alone. */
export function lineForetell(set: KeptBack): ReadingCase[] {
  return set.keptBack.flatMap((kept, i) => {
    if (kept === null) return [];
    const { readings } = set.series[i]!;
    const hours = readings.map((reading) => reading.workedHours);
    const found = lineThroughOrigin(
      hours,
      readings.map((reading) => reading.wearMm),
    );
    if (!found.ok) return [];
    const middle = found.value.slope * kept.workedHours;
    const sd = kept.errorSdMm * Math.hypot(1, kept.workedHours / Math.hypot(...hours));
    const below = (y: number) => normalCdf((y - middle) / sd);
    const z = normalQuantile(0.9);
    return [
      {
        low: middle - z * sd,
        middle,
        high: middle + z * sd,
        truth: kept.wearMm,
        pit: below(kept.wearMm),
        crps: crps(below, kept.wearMm, middle - 4 * sd, middle + 4 * sd),
      },
    ];
  });
}
