import type { PartLaw } from '../fit/partLaw.ts';
import { modelTime } from '../fit/partSite.ts';
import { QUICK_NORMAL_SD, quickNormalCdf } from '../maths/normal.ts';

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
    // most nodes of a sharp path lie surely on one side
    if (over * over < SURE * variance) chance += weight[i]! * quickNormalCdf(over / Math.sqrt(variance));
    else if (over >= 0) chance += weight[i]!;
  }
  return Math.min(1, chance);
}

/** Square of the sd beyond which a chance is 0 or 1 to the last digit. */
const SURE = QUICK_NORMAL_SD ** 2;

/** True wear at some hours, node by node: mean [mm] and variance [mm^2]. */
type NodesOfWear = { mean: Float64Array; variance: Float64Array };

/** One law at a time; grown to the most nodes met. */
let nodes = { mean: new Float64Array(64), variance: new Float64Array(64) };

/**
 * True wear at some worked hours, node by node, each with its law's weight: mean [mm] and variance [mm^2].
 * @returns in a room of its own, good until it is asked again
 */
export function wearNodes(law: PartLaw, hours: number, delta: number): NodesOfWear {
  const { time, variance: added } = sinceLast(law, hours, delta);
  const { rate, wearMm, wearVar, shapeOf } = law;
  const count = rate.length;
  if (nodes.mean.length < count) nodes = { mean: new Float64Array(2 * count), variance: new Float64Array(2 * count) };
  const { mean, variance } = nodes;
  for (let i = 0; i < count; i++) {
    const k = shapeOf[i]!;
    const b = rate[i]!;
    mean[i] = wearMm[i]! + b * time[k]!;
    variance[i] = wearVar[i]! + b * b * added[k]!;
  }
  return nodes;
}

/**
 * Chance that a reading taken at some worked hours shows at most `wearMm`, its own error and its visit's included.
 * @param errorSdMm 1 sd of the reading [mm]; 0 asks for the true wear, without the visit's error
 */
export const chanceReadingBelow = (
  law: PartLaw,
  wearMm: number,
  hours: number,
  errorSdMm: number,
  delta: number,
): number => readingsBelow(law, hours, errorSdMm, delta)(wearMm);

/** The same for many sizes at one number of hours. Good until it is asked for another law or other hours. */
export function readingsBelow(
  law: PartLaw,
  hours: number,
  errorSdMm: number,
  delta: number,
): (wearMm: number) => number {
  const { weight, rate, wearMm: start, wearVar, shapeOf, shapes } = law;
  const { time, variance: added } = sinceLast(law, hours, delta);
  const count = weight.length;
  if (gains.gain.length < count) gains = { gain: new Float64Array(2 * count), sd: new Float64Array(2 * count) };
  const { gain, sd } = gains;
  for (let i = 0; i < count; i++) {
    const k = shapeOf[i]!;
    const b = rate[i]!;
    const error = errorSdMm > 0 ? errorSdMm ** 2 + shapes[k]!.visitErrorMm ** 2 : 0;
    gain[i] = b * time[k]!;
    sd[i] = Math.sqrt(wearVar[i]! + b * b * added[k]! + error);
  }
  return (wearMm) => {
    let chance = 0;
    for (let i = 0; i < count; i++) {
      const below = wearMm - start[i]! - gain[i]!;
      const reach = QUICK_NORMAL_SD * sd[i]!;
      if (below < reach && below > -reach) chance += weight[i]! * quickNormalCdf(below / sd[i]!);
      else if (below >= 0) chance += weight[i]!;
    }
    return Math.min(1, chance);
  };
}

/** Of each node: what it is worn more since its last size [mm], and 1 sd of what a reading shows [mm]. One law at a time. */
let gains = { gain: new Float64Array(64), sd: new Float64Array(64) };

/** 1 sd of the error sizes of one visit share: root of the mean square over the law's nodes [mm]. */
export function visitErrorSdMm({ weight, shapeOf, shapes }: PartLaw): number {
  let square = 0;
  for (let i = 0; i < weight.length; i++) square += weight[i]! * shapes[shapeOf[i]!]!.visitErrorMm ** 2;
  return Math.sqrt(square);
}

/** Mean and 1 sd of true wear at some worked hours [mm]: where to begin a search. */
export function wearMoments(law: PartLaw, hours: number, delta: number): { meanMm: number; sdMm: number } {
  const { weight } = law;
  const { mean, variance } = wearNodes(law, hours, delta);
  let sum = 0;
  let square = 0;
  for (let i = 0; i < weight.length; i++) {
    sum += weight[i]! * mean[i]!;
    square += weight[i]! * (variance[i]! + mean[i]! * mean[i]!);
  }
  return { meanMm: sum, sdMm: Math.sqrt(Math.max(0, square - sum * sum)) };
}
