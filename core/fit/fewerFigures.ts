import type { WearSeries } from '../series/wearSeries.ts';
import { type ClassLearning, type ClassNode, heaviestOf, type ShopLearning } from './learnShop.ts';
import { thinCloud } from './thinCloud.ts';

/** A machine is gone by at so many nodes of its classes, times its parts; of each class at no fewer and no more than these. */
const NODES_BY_PARTS = 270;
const NODES = { fewest: 8, most: 32 };

/**
 * The same with the classes of a machine thinned to a few nodes, none of which is gone through along slices: where classes have few parts
 * up to a hundred times as quick to go by, and near enough until a class that has more to hear is learned again, or where a machine is
 * fitted time after time. Hours of machines of one to three are within 1 % in nine of ten, within 4 % nearly all; of ten machines and more
 * within 0.6 % in 99 of a hundred (simulated shops). Made once of each class and number of nodes.
 * @param parts of the machine that is gone by, finished ones too: the fewer, the more nodes
 * @returns what was given where no class was thinned
 */
export function fewerFigures(learning: ShopLearning, parts: readonly WearSeries[]): ShopLearning {
  const count = Math.min(NODES.most, Math.max(NODES.fewest, Math.round(NODES_BY_PARTS / parts.length)));
  const asked = new Set(parts.map(({ partClass }) => partClass));
  const classes = learning.classes.map((one) => (asked.has(one.partClass) ? thinned(one, count) : one));
  return classes.every((one, place) => one === learning.classes[place]) ? learning : { classes };
}

const thinnedOf = new WeakMap<ClassLearning, Map<number, ClassLearning>>();

function thinned(learned: ClassLearning, count: number): ClassLearning {
  if (learned.byFewer || learned.nodes.length <= count) return learned;
  const known = thinnedOf.get(learned) ?? new Map<number, ClassLearning>();
  thinnedOf.set(learned, known);
  const made = known.get(count) ?? { ...atNodes(learned, fewerNodes(learned, count)), byFewer: true };
  known.set(count, made);
  return made;
}

/** Chances of a part never read are kept with the moments of the figures. */
function fewerNodes({ nodes, prior }: ClassLearning, count: number): Share[] {
  const cloud = nodes.map((node) => ({ figures: node, lnWeight: Math.log(node.weight), bells: neverRead(node) }));
  return thinCloud(cloud, count, prior.m0).map(({ figures, weight }) => ({
    at: nodes.indexOf(figures as ClassNode),
    weight,
  }));
}

/** Mean and sd of the ln rate of a part never read, on a machine of which nothing is known. */
const neverRead = ({ muEta, muLambda, machineScatter, partScatter }: ClassNode): Float64Array =>
  Float64Array.of(muEta / muLambda, Math.hypot(1 / Math.sqrt(muLambda), machineScatter, partScatter));

/**
 * The same with each class's likeliest figures alone: a few times as quick to go by, and near enough where a judgement is rough.
 * Made once of each learning.
 */
export function likeliestFigures(learning: ShopLearning): ShopLearning {
  const made = likeliest.get(learning) ?? { classes: learning.classes.map(atHeaviest) };
  likeliest.set(learning, made);
  return made;
}

const likeliest = new WeakMap<ShopLearning, ShopLearning>();

const atHeaviest = (learned: ClassLearning): ClassLearning =>
  atNodes(learned, [{ at: learned.nodes.indexOf(heaviestOf(learned.nodes)), weight: 1 }]);

/** A node, by its place, and what it weighs now. */
type Share = { at: number; weight: number };

const atNodes = (learned: ClassLearning, shares: readonly Share[]): ClassLearning => ({
  ...learned,
  nodes: shares.map(({ at, weight }) => ({ ...learned.nodes[at]!, weight })),
  machines: learned.machines.map((word) => ({
    ...word,
    muEta: shares.map(({ at }) => word.muEta[at]!),
    muLambda: shares.map(({ at }) => word.muLambda[at]!),
  })),
});
