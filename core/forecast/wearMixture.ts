import type { PartLaw } from '../fit/partLaw.ts';
import { quickNormalCdf } from '../maths/normal.ts';
import { wearComponents } from './wearLaw.ts';

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
  const nodes = wearComponents(law, hours, delta).sort((a, b) => a.mean - b.mean);
  const groups: { weight: number; mean: number; sd: number }[] = [];
  let [weight, sum, square, reach] = [0, 0, 0, Number.NEGATIVE_INFINITY];
  const close = () => {
    if (weight === 0) return;
    const mean = sum / weight;
    groups.push({ weight, mean, sd: Math.sqrt(Math.max(1e-12, square / weight - mean * mean)) });
  };
  for (const node of nodes) {
    const variance = node.variance + errorSdMm ** 2;
    if (node.mean > reach) {
      close();
      [weight, sum, square, reach] = [0, 0, 0, node.mean + NEAR * Math.sqrt(variance)];
    }
    weight += node.weight;
    sum += node.weight * node.mean;
    square += node.weight * (variance + node.mean ** 2);
  }
  close();
  return groups;
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
