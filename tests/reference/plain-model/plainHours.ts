import { normalCdf } from '#core/maths/normal.ts';
import type { Kernel } from './plainKernel.ts';

/** All ways a part may wear, as columns: node i goes by the power `powers[powerOf[i]]`. */
export type PlainLaw = {
  hRefHours: number;
  weight: number[];
  rate: number[];
  c2: number[];
  meanMm: number[];
  varMm2: number[];
  powerOf: number[];
  /** powers of time, and model time at the last size by each */
  powers: { g: number; time: number }[];
};

export const emptyLaw = (hRefHours: number): PlainLaw => ({
  hRefHours,
  weight: [],
  rate: [],
  c2: [],
  meanMm: [],
  varMm2: [],
  powerOf: [],
  powers: [],
});

/** One way more: its ln rate, and what is held of true wear at the last size if it goes that way. */
export function addNode(law: PlainLaw, weight: number, beta: number, c: number, power: number, at: Kernel): void {
  law.weight.push(weight);
  law.rate.push(Math.exp(beta));
  law.c2.push(c ** 2);
  law.meanMm.push(at.meanMm);
  law.varMm2.push(at.varMm2);
  law.powerOf.push(power);
}

export function summingToOne(law: PlainLaw): PlainLaw {
  const total = law.weight.reduce((sum, weight) => sum + weight, 0);
  return { ...law, weight: law.weight.map((weight) => weight / total) };
}

/** Sum over nodes of weight x chance that true wear at hours x, with an error added to it, is at most y. */
function chanceBelow(
  law: PlainLaw,
  last: number | null,
  x: number,
  y: number,
  errorVar: number,
  delta: number,
): number {
  const { weight, rate, c2, meanMm, varMm2, powerOf } = law;
  const since = law.powers.map(({ g, time }) => (x / law.hRefHours) ** g - time);
  const drift = last !== null && last > 0 ? Math.exp(delta ** 2 * Math.log(x / last)) - 1 : 0;
  let chance = 0;
  for (let i = 0; i < weight.length; i++) {
    const dt = since[powerOf[i]!]!;
    const b = rate[i]!;
    const variance = varMm2[i]! + b * b * (c2[i]! * dt + drift * dt * dt) + errorVar;
    chance += weight[i]! * normalCdf((y - meanMm[i]! - b * dt) / Math.sqrt(variance));
  }
  return chance;
}

/** F(x): chance that the limit is reached by hours x. */
export const plainChance = (law: PlainLaw, last: number | null, limitMm: number, x: number, delta: number): number =>
  1 - chanceBelow(law, last, x, limitMm, 0, delta);

/** Chance that a reading at hours x is at most y. */
export const plainReadingBelow = (
  law: PlainLaw,
  last: number | null,
  y: number,
  sdMm: number,
  x: number,
  delta: number,
): number => chanceBelow(law, last, x, y, sdMm ** 2, delta);

/** Hours at which F reaches F0 + (1 - F0) u: bracketed by doubling, then by false position. null: past 20 hRef */
export function plainHours(
  law: PlainLaw,
  last: number | null,
  limitMm: number,
  u: number,
  delta: number,
): number | null {
  const { hRefHours } = law;
  const from = last ?? 0;
  const chance = (x: number) => plainChance(law, last, limitMm, x, delta);
  const past0 = chance(Math.max(from, 1e-9));
  const target = past0 + (1 - past0) * u;
  let low = from;
  let atLow = past0;
  let high = low + hRefHours / 16;
  let atHigh = chance(high);
  while (atHigh < target) {
    if (high > 20 * hRefHours) return null;
    [low, atLow, high] = [high, atHigh, high + 2 * (high - low)];
    atHigh = chance(high);
  }
  return falsePosition(chance, target, low, high, atLow, atHigh);
}

/**
 * Where a rising function reaches a target, within a bracket, to 1e-7 of it.
 * @source the Illinois rule: M. Dowell and P. Jarratt, BIT 11 (1971) 168-174
 */
function falsePosition(
  f: (x: number) => number,
  target: number,
  low: number,
  high: number,
  atLow: number,
  atHigh: number,
): number {
  let below = atLow - target;
  let above = atHigh - target;
  let last = 0;
  for (let i = 0; i < 100 && high - low > 1e-7 * high; i++) {
    const x = (low * above - high * below) / (above - below);
    const at = f(x) - target;
    if (Math.abs(at) < 1e-7) return x;
    if (at < 0) {
      [low, below] = [x, at];
      if (last === -1) above /= 2;
      last = -1;
    } else {
      [high, above] = [x, at];
      if (last === 1) below /= 2;
      last = 1;
    }
  }
  return 0.5 * (low + high);
}
