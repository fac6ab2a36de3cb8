import type { ClassPrior } from '#core/fit/classPrior.ts';
import type { ModelSettings } from '#core/fit/modelSettings.ts';
import type { WearReading, WearSeries } from '#core/series/wearSeries.ts';
import { type PlainLaw, plainHours, plainReadingBelow } from '../reference/plain-model/plainHours.ts';
import type { PlainPart } from '../reference/plain-model/plainKernel.ts';
import { fittedPlainClass, type PlainPrior, plainPart } from '../reference/plain-model/plainModel.ts';
import type { KeptBack } from './lastReadingOut.ts';
import { crps, type HoursCase, type ReadingCase } from './scores.ts';
import type { ShopSet } from './shopSets.ts';

export const plainPrior = (prior: ClassPrior, settings: ModelSettings): PlainPrior => ({
  hRefHours: prior.hRefHours,
  m0: prior.m0,
  s0: prior.s0,
  omegaScale: settings.partScatterScale,
  cScale: settings.pathScatterScale,
  lnGSd: settings.lnPowerSd,
  lnGTail: settings.lnPowerTail,
  oddShare: settings.oddPartShare,
  oddWidth: settings.oddPartWidth,
  least: 0.01,
});

export const plainPartOf = (series: WearSeries): PlainPart => ({
  tau0Mm: series.newSizeSdMm,
  readings: series.readings.map((r) => ({ hours: r.workedHours, wearMm: r.wearMm, sdMm: r.errorSdMm })),
});

/** As it was published: no tail to the power, no odd parts. */
const asPublished = (settings: ModelSettings): ModelSettings => ({ ...settings, lnPowerTail: 0, oddPartShare: 0 });

/** Hours at limit of the parts to be scored by the plain reference model: one class, parts each on a machine of its own. */
export function plainForecastSet({ series, priors, scored }: ShopSet, settings: ModelSettings): HoursCase[] {
  const [prior] = [...priors.values()];
  const found = fittedPlainClass(series.map(plainPartOf), plainPrior(prior!, asPublished(settings)));
  const most = settings.beyondHRefs * prior!.hRefHours;
  return scored.map(({ series: one, limitWearMm, trueHoursAtLimit }) => {
    const law = plainPart(found, plainPartOf(one));
    const last = one.readings.at(-1)?.workedHours ?? null;
    const at = (chance: number) => plainHours(law, last, limitWearMm, chance, settings.driftDelta) ?? most;
    return { low: at(0.1), middle: at(0.5), high: at(0.9), truth: trueHoursAtLimit };
  });
}

/** The same scores from the plain reference model. */
export function plainForetell(set: KeptBack, settings: ModelSettings): ReadingCase[] {
  const parts = set.series.map(plainPartOf);
  const found = fittedPlainClass(parts, plainPrior(set.prior, asPublished(settings)));
  return set.keptBack.flatMap((kept, i) =>
    kept === null ? [] : [scorePlain(plainPart(found, parts[i]!), set.series[i]!, set.prior, kept, settings)],
  );
}

function scorePlain(
  law: PlainLaw,
  series: WearSeries,
  prior: ClassPrior,
  kept: WearReading,
  settings: ModelSettings,
): ReadingCase {
  const last = series.readings.at(-1)?.workedHours ?? null;
  const below = (y: number) => plainReadingBelow(law, last, y, kept.errorSdMm, kept.workedHours, settings.driftDelta);
  const at = (chance: number): number => {
    let low = -100 * Math.exp(prior.m0);
    let high = 100 * Math.exp(prior.m0);
    for (let i = 0; i < 40; i++) {
      const middle = 0.5 * (low + high);
      if (below(middle) < chance) low = middle;
      else high = middle;
    }
    return 0.5 * (low + high);
  };
  return {
    low: at(0.1),
    middle: at(0.5),
    high: at(0.9),
    truth: kept.wearMm,
    pit: below(kept.wearMm),
    crps: crps(below, kept.wearMm, at(1e-4), at(1 - 1e-4)),
  };
}
