import { assertInvariant } from '../outcome.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import { type BlockState, blockState, keepState, restoreState } from './blockState.ts';
import { type HarshnessWord, harshness, harshnessWord, muWithout } from './classEvidence.ts';
import { heardKey } from './heardKey.ts';
import type { ClassLearning, ClassNode, MachineWord, ShopLearning } from './learnShop.ts';
import { heaviestOf } from './learnShop.ts';
import {
  clearBlock,
  type MachineBlock,
  machineBlock,
  nodesOfPart,
  partLaws,
  setBlockTimes,
  sweepBlock,
} from './machineBlock.ts';
import type { ModelSettings } from './modelSettings.ts';
import type { PartLaw, PartShape } from './partLaw.ts';
import type { PartSite } from './partSite.ts';
import { makeTilt } from './partTilt.ts';
import { MOST_NODES } from './tiltRoom.ts';

/** Nodes lighter than this change no figure that is shown. */
const LIGHTEST = 1e-7;

type ClassOnMachine = {
  learning: ClassLearning;
  block: MachineBlock;
  /** what the learning already holds of this machine in this class; taken out before it is forecast */
  heard: MachineWord | undefined;
  heardIsCurrent: boolean;
  /** where its sites stood at the heaviest node when it was last asked; null: never yet */
  settled: BlockState | null;
  /** what was held of mu when its one node was swept for its word; null: it was not */
  swept: MuHeld | null;
};

/**
 * What is held of each present part of one machine, class figures as learned.
 * The machine's own word in the learning is taken out and said afresh from the series given,
 * so one new size may be forecast before the class is learned again.
 *
 * @param series of one machine: all classes, finished ones too
 * @param rough true: classes of one node are swept once and no more, for judgements that look far out
 * @returns one law a present series, in the order given
 * @throws broken invariant when a class was not among those learned
 */
export function machineLaws(
  learning: ShopLearning,
  series: readonly WearSeries[],
  settings: ModelSettings,
  rough = false,
): PartLaw[] {
  const classes = classesOnMachine(learning, series);
  const words = classes.map((one) => wordOfHarshness(one, classes, settings));
  const laws = new Map<WearSeries, PartLaw>();
  for (const [k, one] of classes.entries()) {
    const others = sum(words.filter((_, other) => other !== k));
    for (const law of lawsOfClass(one, others, settings, rough)) laws.set(law.series, law.law);
  }
  return series.filter((one) => one.present).map((one) => laws.get(one)!);
}

function classesOnMachine(learning: ShopLearning, series: readonly WearSeries[]): ClassOnMachine[] {
  const byClass = Map.groupBy(series, (one) => one.partClass);
  return [...byClass.keys()].sort().map((name) => {
    const of = learning.classes.find((one) => one.partClass === name);
    assertInvariant(of !== undefined, `part class ${name} has been learned`);
    const parts = byClass.get(name)!;
    const machineId = parts[0]!.machineId;
    const heard = of.machines.find((machine) => machine.machineId === machineId);
    const read = parts.filter((part) => part.readings.length > 0);
    return {
      learning: of,
      block: machineBlock(machineId, parts, of.sharedErrors),
      heard,
      heardIsCurrent: heard === undefined ? read.length === 0 : heard.key === heardKey(read),
      settled: null,
      swept: null,
    };
  });
}

const sum = (words: readonly (HarshnessWord | undefined)[]): HarshnessWord => {
  const total = { eta: 0, lambda: 0 };
  for (const word of words) {
    total.eta += word?.eta ?? 0;
    total.lambda += word?.lambda ?? 0;
  }
  return total;
};

/** What a class's parts on the machine say of its harshness: as learned while that is current, else afresh. */
function wordOfHarshness(
  one: ClassOnMachine,
  classes: readonly ClassOnMachine[],
  settings: ModelSettings,
): HarshnessWord | undefined {
  if (one.heardIsCurrent) return one.heard?.harshness;
  const others = sum(classes.map((other) => (other === one ? undefined : other.heard?.harshness)));
  const { block, learning } = one;
  const word = { eta: 0, lambda: 0 };
  const hear = (node: ClassNode, mu: MuHeld) => {
    if (node.machineScatter === 0) return;
    const said = harshnessWord(block, mu.mean, mu.variance);
    word.eta += node.weight * said.eta;
    word.lambda += node.weight * said.lambda;
  };
  if (learning.nodes.length === 1) {
    // the sweep that settles the block says it
    clearBlock(block);
    one.swept = sweepAt(one, 0, others, settings);
    hear(learning.nodes[0]!, one.swept);
  } else forEachNode(one, others, settings, hear);
  return word;
}

/** What is held of a class's mean ln rate without the machine's own word. */
type MuHeld = { mean: number; variance: number };

/** One sweep of the block at one node of its class. */
function sweepAt(
  { block, learning, heard }: ClassOnMachine,
  index: number,
  others: HarshnessWord,
  settings: ModelSettings,
): MuHeld {
  const { nodes, prior } = learning;
  const node = nodes[index]!;
  const own = heard === undefined ? NOTHING_SAID : { eta: heard.muEta[index]!, lambda: heard.muLambda[index]! };
  const mu = muWithout(node.muEta, node.muLambda, own, prior);
  const a = harshness(node.machineScatter, others, block.expected);
  setBlockTimes(block, prior.hRefHours, node);
  sweepBlock(block, mu.mean + a.mean, mu.variance + a.variance, node, partLaws(node.partScatter, settings));
  return mu;
}

const NOTHING_SAID: HarshnessWord = { eta: 0, lambda: 0 };

/** Sweeps the block at the heaviest node, unless it was asked before, then at each node from there: that settles it. */
function forEachNode(
  one: ClassOnMachine,
  others: HarshnessWord,
  settings: ModelSettings,
  use: (node: ClassNode, mu: MuHeld, index: number) => void,
): void {
  const { block, learning } = one;
  const { nodes } = learning;
  const settle = () => {
    clearBlock(block);
    if (block.read.length > 1) sweepAt(one, nodes.indexOf(heaviestOf(nodes)), others, settings);
  };
  if (nodes.length === 1) {
    if (one.swept === null) settle();
    use(nodes[0]!, sweepAt(one, 0, others, settings), 0);
    return;
  }
  if (one.settled === null) {
    settle();
    one.settled = stateOf(block);
  }
  const state = one.settled;
  nodes.forEach((node, index) => {
    restoreState([block], state);
    use(node, sweepAt(one, index, others, settings), index);
  });
}

function stateOf(block: MachineBlock): BlockState {
  const state = blockState([block]);
  keepState([block], state);
  return state;
}

function lawsOfClass(
  one: ClassOnMachine,
  others: HarshnessWord,
  settings: ModelSettings,
  rough: boolean,
): { series: WearSeries; law: PartLaw }[] {
  const { learning, block, swept } = one;
  const present = [...block.read, ...block.unread].filter((part) => part.series.present);
  if (present.length === 0) return [];
  const builders = present.map((part, place) => lawBuilder(part, learning, place));
  const add = (node: ClassNode, mu: MuHeld, index: number) => {
    for (const builder of builders) builder.add(block, node, mu, index, settings);
  };
  if (rough && swept) add(learning.nodes[0]!, swept, 0);
  else forEachNode(one, others, settings, add);
  return builders.map((builder, k) => ({ series: present[k]!.series, law: builder.finish() }));
}

const tilted = makeTilt();

/** Mean and variance of a mixture, summed up piece by piece. */
function mixtureVariance() {
  let sum0 = 0;
  let sum1 = 0;
  let sum2 = 0;
  return {
    add(weight: number, mean: number, variance: number): void {
      sum0 += weight;
      sum1 += weight * mean;
      sum2 += weight * (variance + mean * mean);
    },
    mean: () => sum1 / sum0,
    variance: () => Math.max(0, sum2 / sum0 - (sum1 / sum0) ** 2),
  };
}

/** Where the laws of one class on a machine are gathered, each in its place; kept and grown to the largest met. */
type LawRoom = Pick<PartLaw, 'weight' | 'rate' | 'wearMm' | 'wearVar' | 'shapeOf'>;
const lawRooms: LawRoom[] = [];

function lawRoom(place: number, most: number): LawRoom {
  const kept = lawRooms[place];
  if (kept && kept.weight.length >= most) return kept;
  const room = {
    weight: new Float64Array(most),
    rate: new Float64Array(most),
    wearMm: new Float64Array(most),
    wearVar: new Float64Array(most),
    shapeOf: new Uint16Array(most),
  };
  lawRooms[place] = room;
  return room;
}

function lawBuilder(part: PartSite, learning: ClassLearning, place: number) {
  const { weight, rate, wearMm, wearVar, shapeOf } = lawRoom(place, learning.nodes.length * MOST_NODES);
  const shapes: PartShape[] = [];
  let length = 0;
  const held = mixtureVariance();
  const withMachine = mixtureVariance();
  const classOnly = mixtureVariance();

  return {
    add(block: MachineBlock, node: ClassNode, mu: MuHeld, index: number, settings: ModelSettings) {
      const laws = partLaws(node.partScatter, settings);
      const partVar = laws.share.reduce((total, share, r) => total + share * laws.sd[r]! ** 2, 0);
      const known = nodesOfPart(block, part, node, laws, tilted);
      classOnly.add(node.weight, mu.mean, mu.variance + node.machineScatter ** 2 + partVar);
      withMachine.add(node.weight, known.cavityMean, known.cavityVar + partVar);
      shapes.push({
        pathScatter: node.pathScatter,
        power: node.power,
        lastTime: part.n > 0 ? part.t[part.n - 1]! : 0,
        visitErrorMm: node.visitErrorMm,
      });
      const { nodes } = tilted;
      let total = 0;
      let top = Number.NEGATIVE_INFINITY;
      for (let i = 0; i < nodes.count; i++) top = Math.max(top, nodes.lnWeight[i]!);
      for (let i = 0; i < nodes.count; i++) total += Math.exp(nodes.lnWeight[i]! - top);
      for (let i = 0; i < nodes.count; i++) {
        const chance = (node.weight * Math.exp(nodes.lnWeight[i]! - top)) / total;
        if (!(chance > LIGHTEST)) continue;
        weight[length] = chance;
        rate[length] = Math.exp(nodes.beta[i]!);
        wearMm[length] = nodes.wearMm[i]!;
        wearVar[length] = nodes.wearVar[i]!;
        shapeOf[length] = index;
        length++;
        held.add(chance, nodes.beta[i]!, 0);
      }
    },
    finish(): PartLaw {
      const { series } = part;
      let total = 0;
      for (let i = 0; i < length; i++) total += weight[i]!;
      for (let i = 0; i < length; i++) weight[i] = weight[i]! / total;
      return {
        pointId: series.pointId,
        ordinal: series.ordinal,
        machineId: series.machineId,
        partClass: series.partClass,
        hRefHours: learning.prior.hRefHours,
        readings: part.n,
        lastHours: part.n > 0 ? part.hours[part.n - 1]! : null,
        weight: weight.slice(0, length),
        rate: rate.slice(0, length),
        wearMm: wearMm.slice(0, length),
        wearVar: wearVar.slice(0, length),
        shapeOf: shapeOf.slice(0, length),
        shapes,
        basis: {
          own: part.n === 0 ? 0 : explained(held.variance(), withMachine.variance()),
          machine: explained(withMachine.variance(), classOnly.variance()),
          lnRateMean: held.mean(),
          lnRateVar: held.variance(),
          lnRateVarClassAndMachine: withMachine.variance(),
          lnRateVarClass: classOnly.variance(),
        },
      };
    },
  };
}

/** Share of a variance that is gone. */
const explained = (after: number, before: number): number =>
  before > 0 ? Math.min(1, Math.max(0, 1 - after / before)) : 0;
