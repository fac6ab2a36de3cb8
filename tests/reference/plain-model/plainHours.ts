import { normalCdf } from '#core/maths/normal.ts';
import type { PlainNode } from './plainModel.ts';

/** Mean and variance of true wear at hours x, for one node. */
function wearOfNode(node: PlainNode, hRefHours: number, lastHours: number | null, x: number, delta: number) {
  const b = Math.exp(node.beta);
  const dt = (x / hRefHours) ** node.g - node.time;
  const drift = lastHours !== null && lastHours > 0 ? Math.exp(delta ** 2 * Math.log(x / lastHours)) - 1 : 0;
  return { mean: node.meanMm + b * dt, variance: node.varMm2 + b * b * (node.c ** 2 * dt + drift * dt * dt) };
}

/** F(x): chance that the limit is reached by hours x. */
export function plainChance(
  nodes: readonly PlainNode[],
  hRefHours: number,
  lastHours: number | null,
  limitMm: number,
  x: number,
  delta: number,
): number {
  let chance = 0;
  for (const node of nodes) {
    const { mean, variance } = wearOfNode(node, hRefHours, lastHours, x, delta);
    chance += node.weight * normalCdf((mean - limitMm) / Math.sqrt(variance));
  }
  return chance;
}

/** Chance that a reading at hours x is at most y. */
export function plainReadingBelow(
  nodes: readonly PlainNode[],
  hRefHours: number,
  lastHours: number | null,
  y: number,
  sdMm: number,
  x: number,
  delta: number,
): number {
  let chance = 0;
  for (const node of nodes) {
    const { mean, variance } = wearOfNode(node, hRefHours, lastHours, x, delta);
    chance += node.weight * normalCdf((y - mean) / Math.sqrt(variance + sdMm ** 2));
  }
  return chance;
}

/** Hours at which F reaches F0 + (1 - F0) u: bracketed by doubling, then by false position. null: past 20 hRef */
export function plainHours(
  nodes: readonly PlainNode[],
  hRefHours: number,
  lastHours: number | null,
  limitMm: number,
  u: number,
  delta: number,
): number | null {
  const from = lastHours ?? 0;
  const chance = (x: number) => plainChance(nodes, hRefHours, lastHours, limitMm, x, delta);
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
 * Where a rising function reaches a target, within a bracket, to 1e-8 of it.
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
  for (let i = 0; i < 100 && high - low > 1e-8 * high; i++) {
    const x = (low * above - high * below) / (above - below);
    const at = f(x) - target;
    if (Math.abs(at) < 1e-11) return x;
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
