import { normalDensity } from '#core/maths/normal.ts';
import { type Axis, stepOf } from './plainGrid.ts';
import { fillKernel, type Kernel, type PlainPart, timesOf } from './plainKernel.ts';
import type { PlainPrior } from './plainModel.ts';

/**
 * Equal nodes of ln rate, the same for all parts of a class: node k lies at origin + k step, and every mu is one of them, so that
 * how far a rate lies from mu is a whole number of steps.
 */
export type Lattice = { origin: number; step: number; low: number; high: number; stepsOfMu: number };

export const rateAt = ({ origin, step }: Lattice, k: number): number => origin + k * step;

/** A sum over a bell is good to 1e-8 once its steps are no wider than its sd. */
const STEP_OF_SD = 0.9;

/** Close enough for the sharpest bell of any part and the narrowest spread of the class. */
export function lattice(parts: readonly PlainPart[], prior: PlainPrior, mu: Axis, leastSpread: number): Lattice {
  const sharpest = parts.reduce((least, part) => Math.min(least, sharpness(part, prior)), 0.1);
  const stepsOfMu = Math.ceil((stepOf(mu) * Math.hypot(1 / sharpest, 1 / leastSpread)) / STEP_OF_SD);
  const step = stepOf(mu) / stepsOfMu;
  const origin = mu.nodes[0]!;
  const [from, to] = rateRange(parts, prior, mu);
  return { origin, step, low: Math.floor((from - origin) / step), high: Math.ceil((to - origin) / step), stepsOfMu };
}

/** 1 sd of ln rate that a part's sizes could give at best, were there nothing but the gauge. */
function sharpness(part: PlainPart, prior: PlainPrior): number {
  const t2 = part.readings.reduce((sum, r) => sum + (r.hours / prior.hRefHours) ** 2, 0);
  const crude = part.readings.reduce((sum, r) => sum + (r.wearMm * r.hours) / prior.hRefHours, 0) / t2;
  const finest = part.readings.reduce((least, r) => Math.min(least, r.sdMm), Number.POSITIVE_INFINITY);
  return crude > 0 ? finest / (crude * Math.sqrt(t2)) : Number.POSITIVE_INFINITY;
}

/** Parts that may be odd ones and have worn next to nothing may wear as slowly as that [ln]. */
const REACH_OF_ODD_PARTS = 6;

function rateRange(parts: readonly PlainPart[], prior: PlainPrior, mu: Axis): [number, number] {
  const reach = Math.max(3, 5 * prior.s0) + (prior.oddShare > 0 ? REACH_OF_ODD_PARTS : 0);
  const crude = parts.flatMap((part) => {
    const last = part.readings.at(-1);
    return last && last.wearMm > 0 && last.hours > 0 ? [Math.log((last.wearMm * prior.hRefHours) / last.hours)] : [];
  });
  const low = [prior.m0 - reach, mu.nodes[0]!, ...crude.map((x) => x - 1.5)];
  const high = [prior.m0 + reach, mu.nodes.at(-1)!, ...crude.map((x) => x + 1.5)];
  return [low.reduce((least, x) => Math.min(least, x)), high.reduce((most, x) => Math.max(most, x))];
}

/** Chances e^14 below the best count for nothing; e^4.5 below, a bell is 3 sd from its middle. */
const LEAST_LN = 14;
const THREE_SD_LN = 4.5;

/**
 * What a part's sizes say of its ln rate at one (c, g): chance x step at every `every`-th node from `from` on, its top e^lnTop;
 * sd of that bell.
 */
export type PartCurve = { from: number; every: number; chance: Float64Array; lnTop: number; sd: number };

/** @param leastSpread what it is to be multiplied with is no narrower (sd) @param stepOfSd steps, in sd of that product */
export function partCurve(
  part: PlainPart,
  prior: PlainPrior,
  c: number,
  g: number,
  on: Lattice,
  leastSpread: number,
  stepOfSd = STEP_OF_SD,
): PartCurve {
  const times = timesOf(part, prior.hRefHours, g);
  const kernel: Kernel = { lnChance: 0, meanMm: 0, varMm2: 0, time: 0 };
  const at = (k: number): number => {
    fillKernel(kernel, part, times, rateAt(on, k), c);
    return kernel.lnChance;
  };
  const wide = narrowed(at, on.low, on.high);
  const { first, last, sd: sdNodes } = narrowed(at, Math.max(on.low, wide.first), Math.min(on.high, wide.last));
  const every = Math.max(1, Math.floor(stepOfSd / Math.hypot(1 / sdNodes, on.step / leastSpread)));
  const count = Math.floor((last - first) / every) + 1;
  const chance = new Float64Array(count);
  let lnTop = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i++) {
    chance[i] = at(first + i * every);
    if (chance[i]! > lnTop) lnTop = chance[i]!;
  }
  const step = every * on.step;
  for (let i = 0; i < count; i++) chance[i] = Math.exp(chance[i]! - lnTop) * step;
  return { from: first, every, chance, lnTop, sd: bellSd(chance) * step };
}

/** Nodes of a look at a curve. */
const LOOKED_AT = 16;

/** Where a curve with one top counts for something, and about how wide it is at its top, by a look at a few nodes between two. */
function narrowed(at: (k: number) => number, low: number, high: number): { first: number; last: number; sd: number } {
  const stride = Math.max(1, Math.floor((high - low) / LOOKED_AT));
  const values: number[] = [];
  for (let k = low; k <= high; k += stride) values.push(at(k));
  const best = Math.max(...values);
  const place = (i: number) => low + i * stride;
  const first = place(values.findIndex((value) => value > best - LEAST_LN) - 1);
  const last = place(values.findLastIndex((value) => value > best - LEAST_LN) + 1);
  const core = values.filter((value) => value > best - THREE_SD_LN).length - 1;
  return { first, last, sd: (Math.max(1, core) * stride) / 6 };
}

/** 1 sd of a bell given at equal nodes, in nodes. */
export function bellSd(chance: Float64Array): number {
  let total = 0;
  let first = 0;
  let second = 0;
  for (let k = 0; k < chance.length; k++) {
    total += chance[k]!;
    first += chance[k]! * k;
    second += chance[k]! * k * k;
  }
  return Math.sqrt(Math.max(0, second / total - (first / total) ** 2));
}

/** How parts' ln rates scatter about mu at one omega: density at so many steps from mu, `reach` either way. */
export type Spread = { sd: number; reach: number; density: Float64Array };

/** Beyond so many sd a spread holds nothing. */
const SPREAD_REACH = 6.5;

export function spreadAt(omega: number, on: Lattice, prior: PlainPrior): Spread {
  const sd = Math.max(prior.least, omega);
  const { oddShare, oddWidth } = prior;
  const widest = oddShare > 0 ? oddWidth * sd : sd;
  const reach = Math.ceil((SPREAD_REACH * widest) / on.step);
  const density = Float64Array.from({ length: 2 * reach + 1 }, (_, i) => {
    const off = (i - reach) * on.step;
    const odd = oddShare > 0 ? (oddShare * normalDensity(off / (oddWidth * sd))) / (oddWidth * sd) : 0;
    return ((1 - oddShare) * normalDensity(off / sd)) / sd + odd;
  });
  return { sd, reach, density };
}

/** How many nodes of a part's curve its product with a spread may be stepped over: the product of two bells is sharper than either. */
export const strideFor = (curve: PartCurve, spread: Spread, on: Lattice): number =>
  Math.max(1, Math.floor(STEP_OF_SD / Math.hypot(1 / curve.sd, 1 / spread.sd) / (curve.every * on.step)));

/** Z of a part at one (mu, omega): its chance once ln rate is summed out. @param mu its node on the lattice */
export function partChance({ chance, every, from }: PartCurve, spread: Spread, mu: number, stride: number): number {
  const { density, reach } = spread;
  const least = (mu - reach - from) | 0;
  const move = (stride * every) | 0;
  const first = least > 0 ? Math.ceil(least / every) | 0 : 0;
  const last = Math.min(chance.length - 1, Math.floor((least + 2 * reach) / every)) | 0;
  let place = first * every - least;
  let sum = 0;
  for (let i = first; i <= last; i += stride) {
    sum += chance[i]! * density[place]!;
    place += move;
  }
  return sum * stride;
}

/** Adds a spread about one mu, `share` times, to what is held at every node of a part's curve. */
export function addSpread(held: Float64Array, { every, from }: PartCurve, spread: Spread, mu: number, share: number) {
  const { density, reach } = spread;
  const least = (mu - reach - from) | 0;
  const first = least > 0 ? Math.ceil(least / every) | 0 : 0;
  const last = Math.min(held.length - 1, Math.floor((least + 2 * reach) / every)) | 0;
  let place = first * every - least;
  for (let i = first; i <= last; i++) {
    held[i] = held[i]! + share * density[place]!;
    place += every;
  }
}
