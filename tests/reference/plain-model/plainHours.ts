import { normalCdf } from '#core/maths/normal.ts';
import type { Kernel } from './plainKernel.ts';

/** One way a part may wear, with its weight; those of a part add up to 1. */
export type PlainNode = Pick<Kernel, 'meanMm' | 'varMm2' | 'time'> & {
  weight: number;
  beta: number;
  c: number;
  g: number;
};

/** All ways a part may wear, as columns: node i goes by the power `powers[powerOf[i]]`. */
export type PlainLaw = {
  hRefHours: number;
  weight: Float64Array;
  rate: Float64Array;
  c2: Float64Array;
  meanMm: Float64Array;
  varMm2: Float64Array;
  powerOf: Int32Array;
  /** powers of time, and model time at the last size by each */
  powers: { g: number; time: number }[];
};

export function plainLaw(nodes: readonly PlainNode[], hRefHours: number): PlainLaw {
  const powers = [...new Map(nodes.map(({ g, time }) => [g, { g, time }])).values()];
  const places = new Map(powers.map(({ g }, place) => [g, place]));
  return {
    hRefHours,
    weight: Float64Array.from(nodes, (node) => node.weight),
    rate: Float64Array.from(nodes, (node) => Math.exp(node.beta)),
    c2: Float64Array.from(nodes, (node) => node.c ** 2),
    meanMm: Float64Array.from(nodes, (node) => node.meanMm),
    varMm2: Float64Array.from(nodes, (node) => node.varMm2),
    powerOf: Int32Array.from(nodes, (node) => places.get(node.g)!),
    powers,
  };
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
