import { assertInvariant } from '../outcome.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import { forEachSlice } from './alongSlices.ts';
import { type BlockState, blockState, keepState, restoreState } from './blockState.ts';
import { type HarshnessWord, harshness, harshnessWord, muWithout } from './classEvidence.ts';
import { hasHeard } from './heardKey.ts';
import { lawBuilder } from './lawBuilder.ts';
import type { ClassLearning, ClassNode, MachineWord, ShopLearning } from './learnShop.ts';
import { hasFewParts, heaviestOf, MANY_PARTS } from './learnShop.ts';
import { clearBlock, type MachineBlock, machineBlock, partLaws, setBlockTimes, sweepBlock } from './machineBlock.ts';
import type { ModelSettings } from './modelSettings.ts';
import type { PartLaw } from './partLaw.ts';
import { rateSlices } from './rateSlices.ts';
import type { Outwards, Slice } from './slice.ts';
import { visitSlices } from './visitSlices.ts';

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

/**
 * The classes of a machine's parts have heard all its readings. Of a shop so large that machines are drawn by lot one that no class knows
 * waits for nothing: it was not drawn, or is new, and its classes are quick to go by.
 * @param series of one machine: all classes, finished ones too
 */
export function haveHeard(
  { classes }: ShopLearning,
  series: readonly WearSeries[],
  { machinesPerClass }: ModelSettings,
): boolean {
  const machineId = series[0]?.machineId;
  const words = new Map(
    classes.map((one) => [one.partClass, one.machines.find((word) => word.machineId === machineId)]),
  );
  const isKnown = [...words.values()].some((word) => word !== undefined);
  if (!isKnown && classes.some(({ machinesRead }) => machinesRead >= DRAWN_FROM * machinesPerClass)) return true;
  const read = Map.groupBy(
    series.filter((one) => one.readings.length > 0),
    (one) => one.partClass,
  );
  const partClasses = new Set(series.map((one) => one.partClass));
  return [...partClasses].every((name) => hasHeard(words.get(name), read.get(name) ?? []));
}

/** Machines drawn are up to so many to a class; some of them may have had nothing to say. */
const DRAWN_FROM = 0.5;

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
      block: machineBlock(machineId, parts, {
        sharedErrors: of.sharedErrors,
        fewParts: hasFewParts(of.partsRead, of.machinesRead) && !of.byFewer,
      }),
      heard,
      heardIsCurrent: hasHeard(heard, read),
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

/** What a class's parts on the machine say of its harshness: as learned while that is current, else afresh; of a class in fewer nodes at its likeliest. */
function wordOfHarshness(
  one: ClassOnMachine,
  classes: readonly ClassOnMachine[],
  settings: ModelSettings,
): HarshnessWord | undefined {
  if (one.heardIsCurrent) return one.heard?.harshness;
  const others = sum(classes.map((other) => (other === one ? undefined : other.heard?.harshness)));
  const { block, learning } = one;
  const word = { eta: 0, lambda: 0 };
  const hear = (node: ClassNode, mu: MuHeld, weight = node.weight) => {
    if (node.machineScatter === 0) return;
    const said = harshnessWord(block, mu.mean, mu.variance);
    word.eta += weight * said.eta;
    word.lambda += weight * said.lambda;
  };
  if (learning.nodes.length === 1 || learning.byFewer) {
    // the sweep that settles the block says it
    const at = learning.nodes.indexOf(heaviestOf(learning.nodes));
    clearBlock(block);
    const mu = sweepAt(one, at, others, settings);
    hear(learning.nodes[at]!, mu, 1);
    if (learning.nodes.length === 1) one.swept = mu;
    else one.settled = stateOf(block);
  } else forEachNode(one, others, settings, (node, mu) => hear(node, mu));
  return word;
}

/** What is held of a class's mean ln rate without the machine's own word; and the ln chance of the machine's readings then. */
type MuHeld = { mean: number; variance: number; lnZ: number };

/** One sweep of the block at one node of its class. */
function sweepAt(
  { block, learning, heard }: ClassOnMachine,
  index: number,
  others: HarshnessWord,
  settings: ModelSettings,
  slice?: Slice,
): MuHeld {
  const { nodes, prior } = learning;
  const node = nodes[index]!;
  const own = heard === undefined ? NOTHING_SAID : { eta: heard.muEta[index]!, lambda: heard.muLambda[index]! };
  const mu = muWithout(node.muEta, node.muLambda, own, prior);
  const a = harshness(node.machineScatter, others, block.expected);
  setBlockTimes(block, prior.hRefHours, node);
  const laws = partLaws(node.partScatter, settings);
  const lnZ = sweepBlock(block, mu.mean + a.mean, mu.variance + a.variance, node, laws, slice);
  return { ...mu, lnZ };
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
    const slices = isLight(node, learning) ? null : slicesAt(one, node);
    if (slices === null) {
      for (const builder of builders) builder.add(block, node, mu, index, settings);
      return;
    }
    for (const builder of builders) builder.openSlices(block, node, mu, settings);
    const sweep = (slice: Slice) => sweepAt(one, index, others, settings, slice).lnZ;
    forEachSlice(block, slices, sweep, (lnChance) => {
      for (const builder of builders) builder.slice(block, node, lnChance);
    });
    for (const builder of builders) builder.closeSlices(node, index);
  };
  if (rough && swept) add(learning.nodes[0]!, swept, 0);
  else forEachNode(one, others, settings, add);
  return builders.map((builder, k) => ({ series: present[k]!.series, law: builder.finish() }));
}

/** Ask after the block was swept at the node. @returns null where the block's unknowns are near enough to a normal, or it stands in fewer nodes */
function slicesAt({ learning, block }: ClassOnMachine, node: ClassNode): Outwards | null {
  const { partsRead, machinesRead, byFewer } = learning;
  if (byFewer) return null;
  if (hasFewParts(partsRead, machinesRead))
    return visitSlices(block, node.visitErrorMm, 'fewest') ?? rateSlices(block, node.partScatter);
  return visitSlices(block, node.visitErrorMm, partsRead < MANY_PARTS ? 'few' : 'many');
}

/** A node of less than this share of its class's mean weight is not worth slices of its own. */
const LIGHT = 0.2;
const isLight = ({ weight }: ClassNode, { nodes }: ClassLearning): boolean => weight * nodes.length < LIGHT;
