import type { PartClass } from '../shop/partClass.ts';
import type { ModelSettings } from './modelSettings.ts';

/** What is held of a class's wear rate before any reading: ln(wear in hRefHours [mm]) ~ N(m0, s0^2). */
export type ClassPrior = {
  partClass: string;
  /** typical life: the unit of the model's time [h] */
  hRefHours: number;
  m0: number;
  s0: number;
  from: 'trade' | 'wide';
};

/** z between the 10 % and the 90 % point of a normal: 2 x 1.2816. */
const Z_10_TO_90 = 2.563;

/**
 * Prior of a class's ln wear rate.
 *   with trade knowledge "w1 to w2 mm in H1 to H2 hours", read as 10 to 90 %:
 *     hRef = sqrt(H1 H2),  m0 = ln sqrt(w1 w2),  s0 = distrust x sqrt((ln(w2/w1)/2.563)^2 + (ln(H2/H1)/2.563)^2)
 *   without: hRef a setting, m0 = ln(median limit of the class), s0 a setting
 * A trade range of no width keeps a tenth, so that readings can still move it.
 *
 * @param medianLimitWearMm median wear at the limit of the class's points [mm]; null: no point has a limit
 * @source own derivation, from the quantiles of the lognormal
 * @example classPrior({ name: 'slide', tradeWear: null, newSizeTolMm: null }, 2, defaultModelSettings).m0 // ln 2
 */
export function classPrior(
  partClass: PartClass,
  medianLimitWearMm: number | null,
  settings: ModelSettings,
): ClassPrior {
  const trade = partClass.tradeWear;
  if (trade !== null && trade.wearFromMm > 0 && trade.wearToMm > 0 && trade.hoursFrom > 0 && trade.hoursTo > 0) {
    const wearSpread = Math.log(trade.wearToMm / trade.wearFromMm) / Z_10_TO_90;
    const hoursSpread = Math.log(trade.hoursTo / trade.hoursFrom) / Z_10_TO_90;
    return {
      partClass: partClass.name,
      hRefHours: Math.sqrt(trade.hoursFrom * trade.hoursTo),
      m0: Math.log(Math.sqrt(trade.wearFromMm * trade.wearToMm)),
      s0: Math.max(0.1, settings.tradeDistrust * Math.hypot(wearSpread, hoursSpread)),
      from: 'trade',
    };
  }
  const limit = medianLimitWearMm !== null && medianLimitWearMm > 0 ? medianLimitWearMm : settings.wideLimitWearMm;
  return {
    partClass: partClass.name,
    hRefHours: settings.defaultHRefHours,
    m0: Math.log(limit),
    s0: settings.wideS0,
    from: 'wide',
  };
}
