import { assertInvariant } from '../outcome.ts';
import type { WearSeries } from '../series/wearSeries.ts';
import { sweepInSlices } from './alongSlices.ts';
import { type BlockState, bellsIn, blockState, keepState, restoreState } from './blockState.ts';
import {
  type ClassEvidence,
  type ClassPool,
  classEvidence,
  type HarshnessWord,
  harshnessWord,
  muWithout,
} from './classEvidence.ts';
import { type FigureCoordinates, figureCoordinates, figuresAt } from './classFigures.ts';
import type { ClassPrior } from './classPrior.ts';
import { figureCloud, figureCloudFrom } from './figureCloud.ts';
import { fairMesh, fineMesh, lookMesh, type MeshOf, type Posterior } from './figureGrid.ts';
import { heardKey } from './heardKey.ts';
import { byText, clearBlock, contentKey, machineBlock, partLaws } from './machineBlock.ts';
import type { ModelSettings } from './modelSettings.ts';
import type { ClassFigures } from './partSite.ts';
import { type Proposal, withoutLast } from './proposal.ts';
import { meanFigures, sharpMean } from './sharpFigures.ts';
import { thinCloud, type WeighedFigures, type WeighedPoint } from './thinCloud.ts';
import { visitSlices } from './visitSlices.ts';

/** One point of what is known of a class: its figures, its weight, and what is then held of its mean ln rate. */
export type ClassNode = ClassFigures & {
  weight: number;
  /** mu: precision and precision x mean, all machines heard */
  muLambda: number;
  muEta: number;
};

/** What one machine's parts of one class say. */
export type MachineWord = {
  machineId: number;
  /** which readings were heard; see {@link heardKey} */
  key: string;
  /** of mu, at each node of the class: taken out again when the machine itself is forecast */
  muEta: number[];
  muLambda: number[];
  /** of the machine's harshness, over all nodes */
  harshness: HarshnessWord;
};

export type ClassLearning = {
  partClass: string;
  prior: ClassPrior;
  /** machines / visit errors told apart by this class's readings */
  sharedErrors: boolean;
  nodes: ClassNode[];
  machines: MachineWord[];
  /** what the class rests on */
  partsRead: number;
  machinesRead: number;
  /** it stands in fewer nodes than it was learned with; see fewerFigures.ts */
  byFewer?: true;
};

/** All a shop has learned; plain numbers, fit for JSON. */
export type ShopLearning = { classes: ClassLearning[] };

export type LearnOptions = {
  /** false: classes whose figures are sharp stand in as many nodes as others; absent: in one, their mean */
  sharpInOne?: boolean;
  /** share done, 0 to 1 */
  onProgress?: (share: number) => void;
  isCancelled?: () => boolean;
};

/** The node that weighs most; the first of equals. */
export const heaviestOf = <T extends { weight: number }>(nodes: readonly T[]): T =>
  nodes.reduce((most, node) => (node.weight > most.weight ? node : most));

/** Thrown out of {@link learnShop} when its caller asked it to stop. */
export class LearningCancelled extends Error {
  constructor() {
    super('learning-cancelled');
    this.name = 'LearningCancelled';
  }
}

/** A class while it is being learned. */
type Learner = {
  /** all its machines; and those its figures are learned from */
  pool: ClassPool;
  sample: ClassPool;
  coordinates: { linear: FigureCoordinates; curved: FigureCoordinates };
  /** where its coordinates are to be expected, power last */
  expected: Proposal | null;
  sharedErrors: boolean;
  cloud: WeighedFigures[];
  nodes: ClassNode[];
  words: MachineWord[];
};

/**
 * Learns the figures of every part class from all series of the shop, and what machines' parts say of their harshness.
 * Deterministic: parts and machines are put in order by their readings, classes by name.
 *
 * Each class is first learned alone; then once more with what the other classes say of its machines.
 * @param priors one for each class among the series
 * @throws LearningCancelled
 * @source own derivation; see partTilt.ts, machineBlock.ts, classEvidence.ts
 */
export function learnShop(
  series: readonly WearSeries[],
  priors: ReadonlyMap<string, ClassPrior>,
  settings: ModelSettings,
  options: LearnOptions = {},
): ShopLearning {
  const learners = makeLearners(series, priors, settings);
  const steps = 2 * learners.length;
  let done = 0;
  const step = () => {
    done++;
    options.onProgress?.(done / steps);
  };
  const stop = () => {
    if (options.isCancelled?.()) throw new LearningCancelled();
  };

  const alone = learners.length === 1;
  for (const learner of learners) {
    if (isRead(learner)) {
      lookAtClass(learner, settings, stop);
      if (!alone) hearAllMachines(learner, new Map(), settings, nodesLookedAt(learner));
    }
    step();
  }
  const firstWords = learners.map((learner) => learner.words);
  for (const [k, learner] of learners.entries()) {
    const others = sumWords(firstWords.filter((_, other) => other !== k));
    learnClass(learner, others, settings, stop, options.sharpInOne ?? true);
    step();
  }
  return {
    classes: learners.map((learner) => ({
      partClass: learner.pool.prior.partClass,
      prior: learner.pool.prior,
      sharedErrors: learner.sharedErrors,
      nodes: learner.nodes,
      machines: [...learner.words].sort((a, b) => a.machineId - b.machineId),
      partsRead: partsIn(learner.pool),
      machinesRead: learner.pool.blocks.length,
    })),
  };
}

/** Words of several classes on each machine, added up. */
export function sumWords(words: readonly (readonly MachineWord[])[]): Map<number, HarshnessWord> {
  const sums = new Map<number, HarshnessWord>();
  for (const ofClass of words)
    for (const { machineId, harshness } of ofClass) {
      const sum = sums.get(machineId) ?? { eta: 0, lambda: 0 };
      sums.set(machineId, { eta: sum.eta + harshness.eta, lambda: sum.lambda + harshness.lambda });
    }
  return sums;
}

function makeLearners(
  series: readonly WearSeries[],
  priors: ReadonlyMap<string, ClassPrior>,
  settings: ModelSettings,
): Learner[] {
  const names = [...priors.keys()].sort();
  const byClass = Map.groupBy(series, (one) => one.partClass);
  for (const name of byClass.keys()) assertInvariant(priors.has(name), `part class ${name} has a prior`);
  return names.map((name) => makeLearner(byClass.get(name) ?? [], priors.get(name)!, settings));
}

function makeLearner(series: readonly WearSeries[], prior: ClassPrior, settings: ModelSettings): Learner {
  const read = series.filter((one) => one.readings.length > 0);
  const machines = [...Map.groupBy(read, (one) => one.machineId)];
  const fewParts = hasFewParts(read.length, machines.length);
  const blocks = machines
    .map(([machineId, parts]) => ({ machineId, parts, key: parts.map(contentKey).sort().join(' || ') }))
    .sort(byText((machine) => machine.key))
    .map(({ machineId, parts }) => machineBlock(machineId, parts, { sharedErrors: true, fewParts }));
  const told = {
    fewParts: fewParts && read.length > 0,
    machines: machines.some(([, parts]) => parts.length > 1),
    visits: blocks.some((block) => block.size > 1),
  };
  const gauges = read.flatMap((one) => one.readings.map((reading) => reading.errorSdMm));
  return {
    pool: { prior, blocks },
    sample: { prior, blocks: everyKth(blocks, read.length, settings.partsPerClassForFigures) },
    coordinates: {
      linear: figureCoordinates({ ...told, power: false }, gauges, prior),
      curved: figureCoordinates({ ...told, power: true }, gauges, prior),
    },
    expected: null,
    sharedErrors: told.visits,
    cloud: [],
    nodes: [],
    words: [],
  };
}

/** Every k-th machine, so that about `most` parts are left: enough for scatters, which settle long before. */
function everyKth<T>(blocks: readonly T[], parts: number, most: number): T[] {
  const stride = Math.max(1, parts / most);
  const taken: T[] = [];
  for (let at = 0; Math.floor(at) < blocks.length; at += stride) taken.push(blocks[Math.floor(at)]!);
  return taken;
}

/** The first look is a quick one: points of its surface, nodes to stand for it, parts of a large class that are looked at. */
const LOOK_POINTS = 32;
const LOOK_NODES = 12;
const LOOK_PARTS = 150;

/**
 * Where the figures of a class are to be expected, without a word from other classes: its free law is looked at, of which even
 * wear is a case. Of a large class a part is looked at.
 */
function lookAtClass(learner: Learner, settings: ModelSettings, stop: () => void): void {
  const coordinates = learner.coordinates.curved;
  const figuresOf = (x: readonly number[]) => figuresAt(x, coordinates, settings);
  const { sample } = learner;
  const parts = partsIn(sample);
  const looked = { ...sample, blocks: everyKth(sample.blocks, parts, LOOK_PARTS) };
  const { lnPosterior } = settledPosterior(looked, figuresOf, [], settings, stop);
  const start = coordinates.names.map(() => 0);
  const byGrid = !hasManyParts(learner.pool) && start.length <= MOST_ASKED_BY_GRID;
  const { cloud, found } = figureCloudFrom(start, lnPosterior, LOOK_POINTS, { mesh: byGrid ? lookMesh : null });
  // what more parts will say is as much narrower
  learner.expected = parts > 0 ? narrowed(found, Math.sqrt(partsIn(looked) / parts)) : found;
  learner.cloud = cloud.map(({ x, lnWeight }) => ({ figures: figuresOf(x), lnWeight }));
}

const narrowed = (found: Proposal, share: number): Proposal => ({
  ...found,
  sides: found.sides.map(({ up, down }) => ({ up: share * up, down: share * down })),
});

/** The figures of a class, with what other classes say of its machines, and what its machines say then. */
function learnClass(
  learner: Learner,
  others: ReadonlyMap<number, HarshnessWord>,
  settings: ModelSettings,
  stop: () => void,
  sharpInOne: boolean,
): void {
  if (isRead(learner)) weighFigures(learner, others, settings, stop);
  else learner.cloud = figuresUnread(learner, settings, stop);
  const mean = sharpInOne && isLarge(learner) ? sharpMean(learner.cloud) : null;
  const nodes = mean
    ? inOne(mean)
    : thinCloud(learner.cloud, Math.ceil(settings.classNodes * finer(learner).nodes), learner.pool.prior.m0);
  hearAllMachines(learner, others, settings, nodes);
}

/** A class of fewer parts or machines is forecast from all that is held possible of it. */
const LARGE_PARTS = 300;
const LARGE_MACHINES = 40;
const isLarge = ({ pool }: Learner): boolean => partsIn(pool) >= LARGE_PARTS && pool.blocks.length >= LARGE_MACHINES;

const inOne = (figures: ClassFigures): WeighedPoint[] => [{ figures, weight: 1 }];

/** At a first look a large class's machines say nearly the same of their harshness at all figures that are held possible. */
const nodesLookedAt = (learner: Learner): WeighedPoint[] =>
  isLarge(learner) ? inOne(meanFigures(learner.cloud)) : thinCloud(learner.cloud, LOOK_NODES, learner.pool.prior.m0);

/** Figures of a class without a reading, which are the prior's: the same for every such class, and kept for the settings last asked for. */
function figuresUnread(learner: Learner, settings: ModelSettings, stop: () => void): WeighedFigures[] {
  const by = JSON.stringify(settings);
  if (unread?.by !== by) {
    lookAtClass(learner, settings, stop);
    weighFigures(learner, new Map(), settings, stop);
    // bells are of a class's own mean rate
    unread = { by, cloud: learner.cloud.map(({ figures, lnWeight }) => ({ figures, lnWeight })) };
  }
  return unread.cloud;
}

let unread: { by: string; cloud: WeighedFigures[] } | null = null;

/** A cloud of the class's figures; even wear and a free power weighed against each other. */
function weighFigures(
  learner: Learner,
  others: ReadonlyMap<number, HarshnessWord>,
  settings: ModelSettings,
  stop: () => void,
): void {
  const { sample, expected } = learner;
  assertInvariant(expected !== null, 'a class is looked at before it is learned');
  const sampleOthers = sample.blocks.map((block) => others.get(block.machineId));
  learner.cloud = [];
  const chances = { linear: settings.linearChance, curved: 1 - settings.linearChance };
  for (const shape of ['linear', 'curved'] as const) {
    if (chances[shape] <= 0) continue;
    const coordinates = learner.coordinates[shape];
    const figuresOf = (x: readonly number[]) => figuresAt(x, coordinates, settings);
    const { lnPosterior, bellsAt } = settledPosterior(sample, figuresOf, sampleOthers, settings, stop);
    // the power comes last among the coordinates
    const from = shape === 'linear' ? withoutLast(expected) : expected;
    const { points, mesh } = finer(learner);
    const count = settings.cloudPoints * points;
    const laid = figureCloud(from, lnPosterior, count, { mesh });
    const { cloud } = laid.settled ? laid : figureCloudFrom(from.centre, lnPosterior, 2 * count, { mesh });
    const head =
      Math.log(chances[shape]) - 0.5 * coordinates.names.length * Math.log(2 * Math.PI) - Math.log(cloud.length);
    for (const { x, lnWeight } of cloud)
      learner.cloud.push({ figures: figuresOf(x), lnWeight: lnWeight + head, ...bellsAt(x) });
  }
}

/** Below the best point by this much a sum may have lost its way from there: it is begun afresh. */
const FAR_BELOW = 12;

const SAYS_THE_SAME = 1; // ln

/** A place no further below the best than this weighs much: it is gone through twice. */
const WEIGHS_MUCH = 4;

/** `bellsAt`: bells of a part never read, and of the parts, at a place that was asked beside another; none elsewhere. */
type SettledPosterior = { lnPosterior: Posterior; bellsAt: (x: readonly number[]) => Pick<WeighedFigures, 'bells'> };

/**
 * ln posterior of a class's coordinates. Each point is summed from where the sites stood at the best point so far,
 * which is near the top by the time the cloud is laid, or where they stood at a place beside it; points far below the best are summed
 * from nothing.
 */
function settledPosterior(
  pool: ClassPool,
  figuresOf: (x: readonly number[]) => ClassFigures,
  others: readonly (HarshnessWord | undefined)[],
  settings: ModelSettings,
  stop: () => void,
): SettledPosterior {
  const state = blockState(pool.blocks);
  const places = new Map<readonly number[], { state: BlockState; neverRead: readonly number[] }>();
  const rounds = hasManyParts(pool) ? 1 : 2;
  let best = Number.NEGATIVE_INFINITY;
  const lnPosterior: Posterior = (x, near) => {
    stop();
    const figures = figuresOf(x);
    const lnPrior = -0.5 * x.reduce((sum, entry) => sum + entry * entry, 0);
    const summed = (rounds: number) => classEvidence(pool, figures, others, settings, rounds);
    const beside = near && places.get(near);
    let found: ClassEvidence | null = null;
    if (beside || Number.isFinite(best)) {
      restoreState(pool.blocks, beside?.state ?? state);
      found = summed(beside ? 1 : rounds);
      if (beside && found.lnZ + lnPrior > best - WEIGHS_MUCH) found = summed(1);
    }
    if (!(found && found.lnZ + lnPrior > best - FAR_BELOW)) {
      // what many parts say again from where they stand is no way that was lost
      const again = found && rounds === 1 ? summed(1) : null;
      const same = again && Math.abs(again.lnZ - found!.lnZ) < SAYS_THE_SAME;
      found = same ? again : summedFromNothing(pool, figures, others, settings);
    }
    const value = found.lnZ + lnPrior;
    if (value > best) {
      best = value;
      keepState(pool.blocks, state);
    }
    if (near) {
      const own = blockState(pool.blocks);
      keepState(pool.blocks, own);
      places.set(x, { state: own, neverRead: neverRead(found, figures, settings) });
    }
    return Number.isFinite(value) ? value : Number.NEGATIVE_INFINITY;
  };
  const bellsAt = (x: readonly number[]) => {
    const own = places.get(x);
    return own ? { bells: Float64Array.of(...own.neverRead, ...bellsIn(pool.blocks, own.state)) } : {};
  };
  return { lnPosterior, bellsAt };
}

/** A class's sum begun from nothing, which three rounds settle. */
function summedFromNothing(
  pool: ClassPool,
  figures: ClassFigures,
  others: readonly (HarshnessWord | undefined)[],
  settings: ModelSettings,
): ClassEvidence {
  for (const block of pool.blocks) clearBlock(block);
  return classEvidence(pool, figures, others, settings, 3);
}

/** Mean and sd of ln rate of a part of the class that was never read, on a machine of which nothing is known. */
function neverRead({ muEta, muLambda }: ClassEvidence, figures: ClassFigures, settings: ModelSettings): number[] {
  const { share, sd } = partLaws(figures.partScatter, settings);
  const ownVar = share.reduce((sum, of, law) => sum + of * sd[law]! ** 2, 0);
  return [muEta / muLambda, Math.sqrt(1 / muLambda + figures.machineScatter ** 2 + ownVar)];
}

/** A class of so many parts is dear to weigh, and its figures are much like a normal. */
export const MANY_PARTS = 60;

const partsIn = (pool: ClassPool): number => pool.blocks.reduce((sum, block) => sum + block.read.length, 0);

const hasManyParts = (pool: ClassPool): boolean => partsIn(pool) >= MANY_PARTS;

const isRead = ({ pool }: Learner): boolean => pool.blocks.length > 0;

/**
 * How the figures of a class are weighed and stood for: points of their surface, times those of the settings; nodes likewise; the mesh
 * of the grid on which the posterior itself is asked, if it is. The fewer parts, the wider open their figures and the cheaper they are to ask. A class
 * without any part is its prior.
 */
function finer({ pool, coordinates }: Learner): { points: number; nodes: number; mesh: MeshOf | null } {
  const parts = partsIn(pool);
  if (parts >= LARGE_PARTS) return { points: 0.6, nodes: 1, mesh: null };
  const names = coordinates.curved.names.length;
  if (parts >= MANY_PARTS && names > MOST_ASKED_BY_GRID) return { points: 1, nodes: 1, mesh: null };
  const nodes = () => {
    if (parts === 0 || parts >= MANY_PARTS) return 1;
    if (names > 3) return hasFewParts(parts, pool.blocks.length) ? 20 : 10;
    // of no more than three figures, which are not so open any more, few sums tell all
    return parts > 20 ? 3 : 10;
  };
  return { points: 1, nodes: nodes(), mesh: parts < MANY_PARTS ? fineMesh : fairMesh };
}

/**
 * Of so few parts figures are so open that what is left of the class's sums shows in its hours; of more where each is alone on its
 * machine, as nothing else then tells an odd one from a hard-worked one.
 */
const FEW_PARTS = { sharing: 12, alone: 40 };
export const hasFewParts = (parts: number, machines: number): boolean =>
  parts <= (machines < parts ? FEW_PARTS.sharing : FEW_PARTS.alone);

/** A first look of so many coordinates, or a class of many parts, goes by a grid: of more by a surface, which is rougher and quicker. */
const MOST_ASKED_BY_GRID = 4;

/** Where all machines' sites stand at the heaviest node, and ln Z there. */
type Settled = { state: BlockState; lnZ: number };

/** Summed from nothing: where the other nodes begin. */
function settledAtHeaviest(
  pool: ClassPool,
  nodes: readonly WeighedPoint[],
  others: readonly (HarshnessWord | undefined)[],
  settings: ModelSettings,
): Settled {
  const { lnZ } = summedFromNothing(pool, heaviestOf(nodes).figures, others, settings);
  const state = blockState(pool.blocks);
  keepState(pool.blocks, state);
  return { state, lnZ };
}

/** What a class's machines say at one of its nodes. */
type HeardAt = {
  evidence: ClassEvidence;
  /** of each machine's harshness */
  harshness: HarshnessWord[];
  /** the node is so much (ln) likelier than it was weighed */
  lnLikelier: number;
};

function heardAt(
  pool: ClassPool,
  figures: ClassFigures,
  others: readonly (HarshnessWord | undefined)[],
  settings: ModelSettings,
  settled: Settled | null,
): HeardAt {
  const whole = summedFromSettled(pool, figures, others, settings, settled);
  const sliced = summedInSlices(pool, figures, others, settings, whole);
  const lnLikelier = sliced ? sliced.lnZ - whole.lnZ : 0;
  const evidence = sliced ?? whole;
  const harshness = pool.blocks.map((block, k) => {
    if (figures.machineScatter === 0) return { eta: 0, lambda: 0 };
    const without = muWithout(evidence.muEta, evidence.muLambda, evidence.words[k]!, pool.prior);
    return harshnessWord(block, without.mean, without.variance);
  });
  return { evidence, harshness, lnLikelier };
}

/** A class's sum at one of its nodes, begun from where its heaviest one settled. */
function summedFromSettled(
  pool: ClassPool,
  figures: ClassFigures,
  others: readonly (HarshnessWord | undefined)[],
  settings: ModelSettings,
  settled: Settled | null,
): ClassEvidence {
  if (settled) {
    restoreState(pool.blocks, settled.state);
    // from where a class of many parts has settled, other nodes are near
    const evidence = classEvidence(pool, figures, others, settings, hasManyParts(pool) ? 1 : 2);
    if (evidence.lnZ > settled.lnZ - FAR_BELOW) return evidence;
  }
  return summedFromNothing(pool, figures, others, settings);
}

/**
 * One round more, machines whose visits ask for it along slices of their error: figures are weighed with what is held of it taken for a
 * normal, which makes wide errors too unlikely and, in a class of a dozen parts or fewer, hours far ahead too short.
 * @param whole the sum before, from which it goes on
 * @returns null where nothing asks for it, or a sum has lost its way
 */
function summedInSlices(
  pool: ClassPool,
  figures: ClassFigures,
  others: readonly (HarshnessWord | undefined)[],
  settings: ModelSettings,
  whole: ClassEvidence,
): ClassEvidence | null {
  const { blocks } = pool;
  if (!hasFewParts(partsIn(pool), blocks.length)) return null;
  if (!blocks.some((block) => visitSlices(block, figures.visitErrorMm, 'fewest'))) return null;
  const state = blockState(blocks);
  keepState(blocks, state);
  const sliced = classEvidence(pool, figures, others, settings, 1, sweepInSlices);
  if (Math.abs(sliced.lnZ - whole.lnZ) < MOST_MENDED) return sliced;
  restoreState(blocks, state);
  return null;
}

/** Slices mend ln Z by up to a tenth a machine; by more than this one of the sums has lost its way. */
const MOST_MENDED = 1;

/** Weights of nodes, each so much (ln) likelier than it was weighed; their sum stays. */
function reweighed(nodes: readonly WeighedPoint[], lnLikelier: readonly number[]): number[] {
  const weights = nodes.map(({ weight }, k) => weight * Math.exp(lnLikelier[k]!));
  const sum = (of: readonly number[]) => of.reduce((total, weight) => total + weight, 0);
  const grown = sum(weights) / sum(nodes.map(({ weight }) => weight));
  return weights.map((weight) => weight / grown);
}

/** All machines of the class, not only the sample, say their word at each of the nodes that stand for what is held of it. */
function hearAllMachines(
  learner: Learner,
  others: ReadonlyMap<number, HarshnessWord>,
  settings: ModelSettings,
  nodes: readonly WeighedPoint[],
): void {
  const { pool } = learner;
  const poolOthers = pool.blocks.map((block) => others.get(block.machineId));
  const settled = nodes.length > 1 ? settledAtHeaviest(pool, nodes, poolOthers, settings) : null;
  learner.words = pool.blocks.map((block) => ({
    machineId: block.machineId,
    key: heardKey(block.read.map((part) => part.series)),
    muEta: [],
    muLambda: [],
    harshness: { eta: 0, lambda: 0 },
  }));
  const heard = nodes.map(({ figures }) => heardAt(pool, figures, poolOthers, settings, settled));
  const weights = reweighed(
    nodes,
    heard.map(({ lnLikelier }) => lnLikelier),
  );
  learner.nodes = nodes.map(({ figures }, at) => {
    const { evidence, harshness } = heard[at]!;
    const weight = weights[at]!;
    for (const [k, word] of learner.words.entries()) {
      word.muEta.push(evidence.words[k]!.eta);
      word.muLambda.push(evidence.words[k]!.lambda);
      word.harshness.eta += weight * harshness[k]!.eta;
      word.harshness.lambda += weight * harshness[k]!.lambda;
    }
    return { ...figures, weight, muLambda: evidence.muLambda, muEta: evidence.muEta };
  });
}
