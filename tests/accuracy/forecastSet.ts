import { learnShop, type ShopLearning } from '#core/fit/learnShop.ts';
import { machineLaws } from '#core/fit/machineLaws.ts';
import type { ModelSettings } from '#core/fit/modelSettings.ts';
import type { PartLaw } from '#core/fit/partLaw.ts';
import { hoursAtLimit } from '#core/forecast/hoursAtLimit.ts';
import type { WearSeries } from '#core/series/wearSeries.ts';
import type { HoursCase } from './scores.ts';
import type { ShopSet } from './shopSets.ts';

/** The law of every present part of a shop. */
export function lawsOfShop(
  learning: ShopLearning,
  series: readonly WearSeries[],
  settings: ModelSettings,
): Map<WearSeries, PartLaw> {
  const laws = new Map<WearSeries, PartLaw>();
  for (const own of Map.groupBy(series, (one) => one.machineId).values()) {
    const found = machineLaws(learning, own, settings);
    own
      .filter((one) => one.present)
      .forEach((one, i) => {
        laws.set(one, found[i]!);
      });
  }
  return laws;
}

/** Forecasts of the parts to be scored; hours beyond all speaking count as the most that is spoken of. */
export function forecastSet(
  set: ShopSet,
  settings: ModelSettings,
): {
  cases: (HoursCase & { series: WearSeries; pastAtLastSize: boolean })[];
  learnSeconds: number;
  forecastSeconds: number;
} {
  const start = performance.now();
  const learning = learnShop(set.series, set.priors, settings);
  const learned = performance.now();
  const laws = lawsOfShop(learning, set.series, settings);
  const cases = set.scored.map(({ series, limitWearMm, trueHoursAtLimit }) => {
    const law = laws.get(series)!;
    const most = settings.beyondHRefs * law.hRefHours;
    const at = hoursAtLimit(law, limitWearMm, settings);
    return {
      series,
      pastAtLastSize: at.pastAtLastSize,
      low: at.low ?? most,
      middle: at.middle ?? most,
      high: at.high ?? most,
      truth: trueHoursAtLimit,
    };
  });
  return {
    cases,
    learnSeconds: (learned - start) / 1000,
    forecastSeconds: (performance.now() - learned) / 1000,
  };
}
