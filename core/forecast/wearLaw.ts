import type { PartLaw } from '../fit/partLaw.ts';
import { quickNormalCdf } from '../maths/normal.ts';

/** Model time (h / H)^g at worked hours h. */
const timeAt = (hours: number, hRefHours: number, power: number): number =>
  hours <= 0 ? 0 : power === 1 ? hours / hRefHours : (hours / hRefHours) ** power;

// times of each shape at the hours in hand; grown to the most shapes met
let sinceLast = new Float64Array(16);

/** Fills `sinceLast`: model time gone since the last size, for each shape. */
function setTimesSinceLast(law: PartLaw, hours: number): void {
  const { shapes } = law;
  if (sinceLast.length < shapes.length) sinceLast = new Float64Array(2 * shapes.length);
  for (let k = 0; k < shapes.length; k++) {
    const shape = shapes[k]!;
    sinceLast[k] = Math.max(0, timeAt(hours, law.hRefHours, shape.power) - shape.lastTime);
  }
}

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
  return hours <= from ? 0 : ((hours / from) ** (delta * delta) - 1) * (law.widenedBy ?? 1) ** 2;
}

/**
 * Chance that true wear at some worked hours is at or past a limit. Per node:
 *   mean M = m + b dt,  variance V = P + b^2 (c^2 dt + drift dt^2),  chance Phi((M - L) / sqrt V)
 * @param hours worked hours since the renewal, at or after the last size [h]
 * @source own derivation; this is the law of Z. W. Birnbaum and S. C. Saunders, "A new family of life distributions",
 *   Journal of Applied Probability 6 (1969), mixed over what is not known of the part
 */
export function chanceWornPast(law: PartLaw, limitWearMm: number, hours: number, delta: number): number {
  setTimesSinceLast(law, hours);
  const drift = driftSince(law, hours, delta);
  const { weight, rate, wearMm, wearVar, shapeOf, shapes } = law;
  let chance = 0;
  for (let i = 0; i < weight.length; i++) {
    const k = shapeOf[i]!;
    const dt = sinceLast[k]!;
    const b = rate[i]!;
    const c = shapes[k]!.pathScatter;
    const over = wearMm[i]! + b * dt - limitWearMm;
    const variance = wearVar[i]! + b * b * dt * (c * c + drift * dt);
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
  setTimesSinceLast(law, hours);
  const drift = driftSince(law, hours, delta);
  let chance = 0;
  for (let i = 0; i < law.weight.length; i++) {
    const k = law.shapeOf[i]!;
    const dt = sinceLast[k]!;
    const b = law.rate[i]!;
    const shape = law.shapes[k]!;
    const error = errorSdMm > 0 ? errorSdMm ** 2 + shape.visitErrorMm ** 2 : 0;
    const below = wearMm - law.wearMm[i]! - b * dt;
    const variance = law.wearVar[i]! + b * b * dt * (shape.pathScatter ** 2 + drift * dt) + error;
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
  setTimesSinceLast(law, hours);
  const drift = driftSince(law, hours, delta);
  return Array.from(law.weight, (weight, i) => {
    const k = law.shapeOf[i]!;
    const dt = sinceLast[k]!;
    const b = law.rate[i]!;
    const variance = law.wearVar[i]! + b * b * dt * (law.shapes[k]!.pathScatter ** 2 + drift * dt);
    return { weight, mean: law.wearMm[i]! + b * dt, variance };
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
  setTimesSinceLast(law, hours);
  const drift = driftSince(law, hours, delta);
  let mean = 0;
  let square = 0;
  for (let i = 0; i < law.weight.length; i++) {
    const k = law.shapeOf[i]!;
    const dt = sinceLast[k]!;
    const b = law.rate[i]!;
    const at = law.wearMm[i]! + b * dt;
    const variance = law.wearVar[i]! + b * b * dt * (law.shapes[k]!.pathScatter ** 2 + drift * dt);
    mean += law.weight[i]! * at;
    square += law.weight[i]! * (variance + at * at);
  }
  return { meanMm: mean, sdMm: Math.sqrt(Math.max(0, square - mean * mean)) };
}
