import { priorAt } from './classFigures.ts';
import type { ClassPrior } from './classPrior.ts';
import { lnMessage, type MachineBlock, partLaws, setBlockTimes, sweepBlock } from './machineBlock.ts';
import type { ModelSettings } from './modelSettings.ts';
import type { ClassFigures } from './partSite.ts';
import type { PartLaws } from './partTilt.ts';

/** What other classes say of a machine's harshness a: exp(eta a - lambda a^2 / 2). */
export type HarshnessWord = { eta: number; lambda: number };

/** Harshness of a machine before its parts of this class are heard: N(mean, variance), and the ln height of that word. */
export type Harshness = { mean: number; variance: number; lnHeight: number };

/**
 * a ~ N(expected, om^2) times what other classes say of it.
 * With om = 0 machines are not told apart by their readings: a is what is expected.
 * @param expected by the shop's word on the machine; 0 without one
 */
export function harshness(machineScatter: number, word: HarshnessWord | undefined, expected: number): Harshness {
  const prior = machineScatter * machineScatter;
  if (prior === 0 || word === undefined) return { mean: expected, variance: prior, lnHeight: 0 };
  const d = Math.max(0.5, 1 + word.lambda * prior);
  const variance = prior / d;
  // what the word adds to where the machine was expected to be
  const moved = word.eta - word.lambda * expected;
  return {
    mean: expected + moved * variance,
    variance,
    lnHeight: 0.5 * (moved * moved * variance - Math.log(d)) + (word.eta - 0.5 * word.lambda * expected) * expected,
  };
}

/** What a machine's block says of mu, the class's mean ln rate: exp(kappa + eta mu - lambda mu^2 / 2), a summed out. */
export type MuWord = { kappa: number; eta: number; lambda: number };

export function muWord(block: Pick<MachineBlock, 'kappa' | 'eta' | 'lambda'>, a: Harshness): MuWord {
  const d = 1 + block.lambda * a.variance;
  return {
    kappa: block.kappa + lnMessage(a.mean, a.variance, block.eta, block.lambda) + a.lnHeight,
    eta: (block.eta - a.mean * block.lambda) / d,
    lambda: block.lambda / d,
  };
}

/** What a machine's block says of its harshness a, with mu ~ N(mean, variance) summed out. */
export function harshnessWord(
  block: Pick<MachineBlock, 'eta' | 'lambda'>,
  mean: number,
  variance: number,
): HarshnessWord {
  const d = 1 + block.lambda * variance;
  return { eta: (block.eta - block.lambda * mean) / d, lambda: block.lambda / d };
}

/** All of a class: its machines' blocks, in an order that comes from the readings alone. */
export type ClassPool = {
  readonly prior: ClassPrior;
  readonly blocks: readonly MachineBlock[];
};

/** A class at given figures: how likely its readings are, and what they say of its mean ln rate mu. */
export type ClassEvidence = {
  lnZ: number;
  /** mu: total precision and precision x mean, prior included */
  muLambda: number;
  muEta: number;
  /** the part of those that is each block's, in the order of the pool */
  words: MuWord[];
};

/** mu without one machine's word: N(mean, variance). Never wider than ten times the prior. */
export function muWithout(
  muEta: number,
  muLambda: number,
  word: Pick<MuWord, 'eta' | 'lambda'>,
  prior: ClassPrior,
): { mean: number; variance: number } {
  const lambda = Math.max(muLambda - word.lambda, LEAST_LAMBDA / prior.s0 ** 2);
  return { mean: (muEta - word.eta) / lambda, variance: 1 / lambda };
}

/** As {@link sweepBlock}. */
export type Sweep = (block: MachineBlock, p: number, q: number, figures: ClassFigures, laws: PartLaws) => number;

/** ln Z has settled when a round moves it by less; it is then good to about a tenth of that. */
const SETTLED = 0.03;
const MOST_ROUNDS = 24;
/**
 * Where parts contradict each other each may be the odd one, and their words may swing to and fro from round to round, wider each
 * time: words that have not settled when they should have go but half of their way from then on.
 */
const HALF_WAY = 0.5;
/** What is held of mu is never this much wider than its prior: sums that say so have lost their way. */
const LEAST_LAMBDA = 0.1;

/**
 * Chance of a class's readings at given figures, mu and all machines' harshness summed out:
 *   u = mu + a,  mu ~ N(m0, s0^2),  a ~ N(expected, om^2) times the other classes' word
 * Each round sweeps every block once, against mu as the other blocks leave it.
 *
 * @param words one for each block of the pool, from the other classes
 * @param leastRounds three from a cold start settle ln Z to 0.003; more are made while it still moves. 1: one is made, which from
 *   where sites stood at like figures gives ln Z to about 0.01, its errors being second order in what the sites have yet to move
 * @param sweep how a block is swept
 * @source own derivation: conditional normals; T. P. Minka, "Expectation propagation for approximate Bayesian inference" (2001)
 */
export function classEvidence(
  pool: ClassPool,
  figures: ClassFigures,
  others: readonly (HarshnessWord | undefined)[],
  settings: ModelSettings,
  leastRounds: number,
  sweep: Sweep = sweepBlock,
): ClassEvidence {
  const { blocks } = pool;
  const prior = priorAt(pool.prior, figures);
  const laws = partLaws(figures.partScatter, settings);
  const priorLambda = 1 / prior.s0 ** 2;
  const priorEta = prior.m0 * priorLambda;
  const words: MuWord[] = [];
  let muLambda = priorLambda;
  let muEta = priorEta;

  for (const [k, block] of blocks.entries()) {
    setBlockTimes(block, prior.hRefHours, figures);
    words.push(muWord(block, harshness(figures.machineScatter, others[k], block.expected)));
    muLambda += words[k]!.lambda;
    muEta += words[k]!.eta;
  }
  let lnZ = Number.NEGATIVE_INFINITY;
  for (let round = 1; round <= MOST_ROUNDS; round++) {
    for (const [k, block] of blocks.entries()) {
      const a = harshness(figures.machineScatter, others[k], block.expected);
      const mu = muWithout(muEta, muLambda, words[k]!, prior);
      sweep(block, mu.mean + a.mean, mu.variance + a.variance, figures, laws);
      const word = round <= leastRounds ? muWord(block, a) : towards(muWord(block, a), words[k]!, mu);
      muLambda += word.lambda - words[k]!.lambda;
      muEta += word.eta - words[k]!.eta;
      words[k] = word;
    }
    const before = lnZ;
    lnZ = 0.5 * ((muEta * muEta) / muLambda - prior.m0 * priorEta - Math.log(muLambda / priorLambda));
    for (const word of words) lnZ += word.kappa;
    const settled = leastRounds === 1 || Math.abs(lnZ - before) < SETTLED || Number.isNaN(lnZ);
    if (round >= leastRounds && settled) break;
  }
  if (muLambda < LEAST_LAMBDA * priorLambda) lnZ = Number.NaN;
  return { lnZ, muLambda, muEta, words };
}

/** A word half way from the one before, as likely a message as the new one where mu ~ N(mean, variance). */
function towards(word: MuWord, before: MuWord, mu: { mean: number; variance: number }): MuWord {
  const eta = before.eta + HALF_WAY * (word.eta - before.eta);
  const lambda = before.lambda + HALF_WAY * (word.lambda - before.lambda);
  const ln = (of: { eta: number; lambda: number }) => lnMessage(mu.mean, mu.variance, of.eta, of.lambda);
  return { eta, lambda, kappa: word.kappa + ln(word) - ln({ eta, lambda }) };
}
