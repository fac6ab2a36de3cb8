import { readFileSync } from 'node:fs';
import { learnShop } from '#core/fit/learnShop.ts';
import { machineLaws } from '#core/fit/machineLaws.ts';
import type { ModelSettings } from '#core/fit/modelSettings.ts';
import { hoursAtLimit } from '#core/forecast/hoursAtLimit.ts';
import { laserPrior, laserSeries } from './lastReadingOut.ts';
import type { HoursCase } from './scores.ts';
import type { ShopSet } from './shopSets.ts';

/** Hours to 5 % of 15 lasers, foretold from their first three readings: early, gentle curvature. A known loss. */
export function laserCrossing(): ShopSet {
  const file = new URL('../reference/gaas-laser/expected.json', import.meta.url);
  const truth: Record<string, number> = JSON.parse(readFileSync(file, 'utf8')).interpolated_hours_at_5pct;
  const series = laserSeries([250, 500, 750], 0.02);
  return {
    series,
    priors: new Map([['laser', laserPrior]]),
    scored: series.map((one, i) => ({ series: one, limitWearMm: 5, trueHoursAtLimit: Object.values(truth)[i]! })),
  };
}

export function laserCrossingForecast(settings: ModelSettings): HoursCase[] {
  const { series, priors, scored } = laserCrossing();
  const learning = learnShop(series, priors, settings);
  return scored.map(({ series: one, limitWearMm, trueHoursAtLimit }) => {
    const at = hoursAtLimit(machineLaws(learning, [one], settings)[0]!, limitWearMm, settings);
    return { low: at.low!, middle: at.middle!, high: at.high!, truth: trueHoursAtLimit };
  });
}
