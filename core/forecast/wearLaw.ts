import type { PartLaw } from '../fit/partLaw.ts';
import { modelTime } from '../fit/partSite.ts';
import { quickNormalCdf } from '../maths/normal.ts';

/** Before this share of a typical life a wear law shows nothing of itself: neither a slope nor a drift is reckoned from it. */
export const EARLIEST_SHARE = 0.02;

/**
 * How far the wear law may have drifted since the last size: exp(delta^2 ln(x / h_n)) - 1, a variance relative to
 * the wear since. None before the last size, none for a part never read or read only when new. A size taken in the
 * first hours of a life is no law to drift from: h_n is then a fiftieth of a typical life. A law that was widened
 * (widenedLaw.ts) drifts as much wider.
 */
export function driftSince(law: PartLaw, hours: number, delta: number): number {
  if (law.lastHours === null || law.lastHours <= 0) return 0;
  const from = Math.max(law.lastHours, EARLIEST_SHARE * law.hRefHours);
  const widened = law.widenedBy ?? 1;
  return hours <= from ? 0 : (Math.exp(delta * delta * Math.log(hours / from)) - 1) * widened * widened;
}

/**
 * What has been added to each shape since its last size, at some hours: model time dt, and the variance of the wear since as a share of
 * b^2, c^2 dt + drift dt^2. One law at a time; grown to the most shapes met.
 */
let since = { time: new Float64Array(16), variance: new Float64Array(16) };

function sinceLast(law: PartLaw, hours: number, delta: number): typeof since {
  const { shapes } = law;
  const drift = driftSince(law, hours, delta);
  if (since.time.length < shapes.length)
    since = { time: new Float64Array(2 * shapes.length), variance: new Float64Array(2 * shapes.length) };
  for (let k = 0; k < shapes.length; k++) {
    const { power, lastTime, pathScatter } = shapes[k]!;
    const dt = Math.max(0, modelTime(hours, law.hRefHours, power) - lastTime);
    since.time[k] = dt;
    since.variance[k] = dt * (pathScatter * pathScatter + drift * dt);
  }
  return since;
}

/**
 * Chance that true wear at some worked hours is at or past a limit. Per node:
 *   mean M = m + b dt,  variance V = P + b^2 (c^2 dt + drift dt^2),  chance Phi((M - L) / sqrt V)
 * @param hours worked hours since the renewal, at or after the last size [h]
 * @source own derivation; this is the law of Z. W. Birnbaum and S. C. Saunders, "A new family of life distributions",
 *   Journal of Applied Probability 6 (1969), mixed over what is not known of the part
 */
export function chanceWornPast(law: PartLaw, limitWearMm: number, hours: number, delta: number): number {
  const { time, variance: added } = sinceLast(law, hours, delta);
  const { weight, rate, wearMm, wearVar, shapeOf } = law;
  let chance = 0;
  for (let i = 0; i < weight.length; i++) {
    const k = shapeOf[i]!;
    const b = rate[i]!;
    const over = wearMm[i]! + b * time[k]! - limitWearMm;
    const variance = wearVar[i]! + b * b * added[k]!;
    chance += weight[i]! * (variance > 0 ? quickNormalCdf(over / Math.sqrt(variance)) : over >= 0 ? 1 : 0);
  }
  return Math.min(1, chance);
}

/**
 * Chance that a reading taken at some worked hours shows at most `wearMm`, its own error and its visit's included.
 * @param errorSdMm 1 sd of the reading [mm]; 0 asks for the true wear, without the visit's error
 */
export function chanceReadingBelow(
  law: PartLaw,
  wearMm: number,
  hours: number,
  errorSdMm: number,
  delta: number,
): number {
  const { time, variance: added } = sinceLast(law, hours, delta);
  let chance = 0;
  for (let i = 0; i < law.weight.length; i++) {
    const k = law.shapeOf[i]!;
    const b = law.rate[i]!;
    const error = errorSdMm > 0 ? errorSdMm ** 2 + law.shapes[k]!.visitErrorMm ** 2 : 0;
    const below = wearMm - law.wearMm[i]! - b * time[k]!;
    const variance = law.wearVar[i]! + b * b * added[k]! + error;
    chance += law.weight[i]! * (variance > 0 ? quickNormalCdf(below / Math.sqrt(variance)) : below >= 0 ? 1 : 0);
  }
  return Math.min(1, chance);
}

/** True wear at some worked hours, node by node: weight, mean [mm] and variance [mm^2] of each. */
export function wearComponents(
  law: PartLaw,
  hours: number,
  delta: number,
): { weight: number; mean: number; variance: number }[] {
  const { time, variance: added } = sinceLast(law, hours, delta);
  return Array.from(law.weight, (weight, i) => {
    const k = law.shapeOf[i]!;
    const b = law.rate[i]!;
    return { weight, mean: law.wearMm[i]! + b * time[k]!, variance: law.wearVar[i]! + b * b * added[k]! };
  });
}

/** 1 sd of the error sizes of one visit share: root of the mean square over the law's nodes [mm]. */
export function visitErrorSdMm({ weight, shapeOf, shapes }: PartLaw): number {
  let square = 0;
  for (let i = 0; i < weight.length; i++) square += weight[i]! * shapes[shapeOf[i]!]!.visitErrorMm ** 2;
  return Math.sqrt(square);
}

/** Mean and 1 sd of true wear at some worked hours [mm]: where to begin a search. */
export function wearMoments(law: PartLaw, hours: number, delta: number): { meanMm: number; sdMm: number } {
  const { time, variance: added } = sinceLast(law, hours, delta);
  let mean = 0;
  let square = 0;
  for (let i = 0; i < law.weight.length; i++) {
    const k = law.shapeOf[i]!;
    const b = law.rate[i]!;
    const at = law.wearMm[i]! + b * time[k]!;
    const variance = law.wearVar[i]! + b * b * added[k]!;
    mean += law.weight[i]! * at;
    square += law.weight[i]! * (variance + at * at);
  }
  return { meanMm: mean, sdMm: Math.sqrt(Math.max(0, square - mean * mean)) };
}
