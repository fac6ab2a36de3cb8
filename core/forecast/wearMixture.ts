import type { PartLaw } from '../fit/partLaw.ts';
import { quickNormalCdf } from '../maths/normal.ts';
import { risingOrder } from '../maths/risingOrder.ts';
import { wearNodes } from './wearLaw.ts';

/** What a reading at some hours would show, as few normals: chance, mean [mm] and sd [mm] of each, by rising mean. */
export type WearMixture = readonly { weight: number; mean: number; sd: number }[];

/** Nodes whose means lie within this share of a node's sd are told as one. */
const NEAR = 0.5;

/**
 * The thousand nodes of a law at some hours drawn together to some dozens, neighbours into one of the same mean and variance:
 * where many chances of one moment are wanted. Chances differ from the law's own by less than 0.002.
 *
 * @param errorSdMm 1 sd of a look [mm]; 0: true wear
 * @source own derivation: moments of a mixture
 */
export function wearMixture(law: PartLaw, hours: number, errorSdMm: number, delta: number): WearMixture {
  const count = law.weight.length;
  const nodes = wearNodes(law, hours, delta);
  const order = risingOrder(nodes.mean, count);
  const groups: WearMixture[number][] = [];
  let [weight, sum, square, reach] = [0, 0, 0, Number.NEGATIVE_INFINITY];
  for (let place = 0; place < count; place++) {
    const i = order[place]!;
    const at = nodes.mean[i]!;
    const variance = nodes.variance[i]! + errorSdMm ** 2;
    if (at > reach) {
      if (weight > 0) groups.push(normalOf(weight, sum, square));
      weight = 0;
      sum = 0;
      square = 0;
      reach = at + NEAR * Math.sqrt(variance);
    }
    weight += law.weight[i]!;
    sum += law.weight[i]! * at;
    square += law.weight[i]! * (variance + at * at);
  }
  if (weight > 0) groups.push(normalOf(weight, sum, square));
  return groups;
}

function normalOf(weight: number, sum: number, square: number): WearMixture[number] {
  const mean = sum / weight;
  return { weight, mean, sd: Math.sqrt(Math.max(1e-12, square / weight - mean * mean)) };
}

/** Chance that it lies below x. */
export function mixtureBelow(mixture: WearMixture, x: number): number {
  let below = 0;
  for (const { weight, mean, sd } of mixture) below += weight * quickNormalCdf((x - mean) / sd);
  return Math.min(1, below);
}

/** From where to where it may lie: six sd beyond every node [mm]. */
export const mixtureReach = (mixture: WearMixture): [number, number] => [
  Math.min(...mixture.map(({ mean, sd }) => mean - 6 * sd)),
  Math.max(...mixture.map(({ mean, sd }) => mean + 6 * sd)),
];
