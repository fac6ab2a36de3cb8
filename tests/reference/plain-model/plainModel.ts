import {
  addSpread,
  bellSd,
  type Lattice,
  lattice,
  partChance,
  partCurve,
  rateAt,
  type Spread,
  spreadAt,
  strideFor,
} from './plainCurve.ts';
import {
  type Axis,
  axis,
  axisNames,
  type Fineness,
  heldAt,
  type Marginal,
  marginals,
  type PlainGrid,
  refined,
} from './plainGrid.ts';
import { addNode, emptyLaw, type PlainLaw, summingToOne } from './plainHours.ts';
import { kernelAt, type PlainPart, timesOf } from './plainKernel.ts';

/**
 * The wear model summed over plain grids: no approximation but the grids themselves. Readable: the measure the production path is
 * held to.
 *
 *   X(0) ~ N(0, tau0^2);  X(h) - X(h') ~ N(b (t - t'), b^2 c^2 (t - t'));  t = (h / H)^g;  y = X + N(0, s^2)
 *   beta = ln b = mu + part's own;  own ~ N(0, omega^2), or with odd parts (1 - f) N(0, omega^2) + f N(0, (r omega)^2)
 *   mu ~ N(m0, s0^2), omega ~ half-normal, c ~ half-normal;  ln g = sd (x + tail x^3), x ~ N(0, 1), or even wear: g = 1
 */
export type PlainPrior = {
  hRefHours: number;
  m0: number;
  s0: number;
  omegaScale: number;
  cScale: number;
  lnGSd: number;
  /** additions; 0: none */
  lnGTail: number;
  oddShare: number;
  oddWidth: number;
  /** floors of the scatters, as in production */
  least: number;
};

const lnNormal = (x: number, mean: number, sd: number): number =>
  -0.5 * Math.log(2 * Math.PI * sd * sd) - (0.5 * (x - mean) ** 2) / (sd * sd);
const lnHalfNormal = (x: number, scale: number): number => Math.LN2 + lnNormal(x, 0, scale);

const powerAt = (prior: PlainPrior, x: number): number => Math.exp(prior.lnGSd * (x + prior.lnGTail * x ** 3));

export type PlainClass = {
  prior: PlainPrior;
  grid: PlainGrid;
  on: Lattice;
  /** one for each omega */
  spreads: Spread[];
  /** posterior over the grid, mu fastest, then omega, c, x; sums to 1 */
  weight: Float64Array;
  /** the same over (c, x) alone */
  columns: Float64Array;
  lnEvidence: number;
  marginals: Record<keyof PlainGrid, Marginal>;
};

/** Posterior of (mu, omega, c, x) of a class over a grid: its prior times the chance of every part. */
export function plainClass(parts: readonly PlainPart[], prior: PlainPrior, grid: PlainGrid): PlainClass {
  const { c, x } = grid;
  const leastSpread = Math.max(prior.least, grid.omega.nodes[0]!);
  const on = lattice(parts, prior, grid.mu, leastSpread);
  const spreads = grid.omega.nodes.map((omega) => spreadAt(omega, on, prior));
  const ln = lnPriors(prior, grid);
  const muCount = grid.mu.nodes.length;
  const inner = muCount * spreads.length;
  const read = parts.filter((part) => part.readings.length > 0);
  const product = new Float64Array(inner);
  for (const [ix, xNode] of x.nodes.entries())
    for (const [ic, cNode] of c.nodes.entries()) {
      const column = ln.subarray((ix * c.nodes.length + ic) * inner).subarray(0, inner);
      product.fill(1);
      let lnTops = 0;
      for (const [i, part] of read.entries()) {
        const curve = partCurve(part, prior, Math.max(prior.least, cNode), powerAt(prior, xNode), on, leastSpread);
        lnTops += curve.lnTop;
        for (const [io, spread] of spreads.entries()) {
          const stride = strideFor(curve, spread, on);
          for (let im = 0; im < muCount; im++) {
            const row = io * muCount + im;
            product[row] = product[row]! * (partChance(curve, spread, im * on.stepsOfMu, stride) + LEAST_CHANCE);
          }
        }
        if (i % CHANCES_MULTIPLIED < CHANCES_MULTIPLIED - 1 && i < read.length - 1) continue;
        for (let row = 0; row < inner; row++) column[row] = column[row]! + Math.log(product[row]!);
        product.fill(1);
      }
      for (let row = 0; row < inner; row++) column[row] = column[row]! + lnTops;
    }
  const top = ln.reduce((best, value) => Math.max(best, value), Number.NEGATIVE_INFINITY);
  const weight = ln.map((value) => Math.exp(value - top));
  const total = sumOf(weight);
  for (let i = 0; i < weight.length; i++) weight[i] = weight[i]! / total;
  const columns = Float64Array.from({ length: weight.length / inner }, (_, k) =>
    sumOf(weight.subarray(k * inner, (k + 1) * inner)),
  );
  const lnEvidence = top + Math.log(total);
  return { prior, grid, on, spreads, weight, columns, lnEvidence, marginals: marginals(grid, weight) };
}

const sumOf = (values: Float64Array): number => {
  let sum = 0;
  for (let i = 0; i < values.length; i++) sum += values[i]!;
  return sum;
};

/** So many chances are multiplied before their logarithm is taken; none is less than this, lest their product be 0. */
const CHANCES_MULTIPLIED = 8;
const LEAST_CHANCE = 1e-35;

/** ln prior of every cell of a grid, times its size. */
function lnPriors(prior: PlainPrior, { mu, omega, c, x }: PlainGrid): Float64Array {
  const along = (of: Axis, lnDensity: (node: number) => number): number[] =>
    of.nodes.map((node, i) => lnDensity(node) + Math.log(of.weights[i]!));
  const lnMu = along(mu, (node) => lnNormal(node, prior.m0, prior.s0));
  const lnOmega = along(omega, (node) => lnHalfNormal(node, prior.omegaScale));
  const lnC = along(c, (node) => lnHalfNormal(node, prior.cScale));
  const lnX = along(x, (node) => (x.nodes.length > 1 ? lnNormal(node, 0, 1) : 0));
  const ln = new Float64Array(lnMu.length * lnOmega.length * lnC.length * lnX.length);
  let at = 0;
  for (const ofX of lnX)
    for (const ofC of lnC)
      for (const ofOmega of lnOmega) for (const ofMu of lnMu) ln[at++] = ofMu + ofOmega + ofC + ofX;
  return ln;
}

/** Parts above which a class is first looked at by every fifth of them: their grid shows where to lay the whole one. */
const LOOKED_AT_WHOLE = 20;
const EVERY = 5;
/** Steps of looks, and of the grid in the end. */
const ROUGH: Fineness = { most: 1.3, laid: 1.05, leastShare: 3e-4 };
const FINE: Fineness = { most: 0.5, laid: 0.48, leastShare: 3e-4 };
/** The fewer parts, the further figures lie open, and the less they are like a bell. */
const FINE_OF_FEW: Fineness = { most: 0.4, laid: 0.38, leastShare: 3e-5 };
/** A look tells no scatter from this: sums over ln rate need not be finer. */
const LEAST_OF_LOOKS = 0.05;

/**
 * A class on a grid that fits it: on rough grids each axis is drawn in, or out, until it covers what it holds; then it is laid
 * in steps of at most half the sd.
 */
export function fittedPlainClass(
  parts: readonly PlainPart[],
  prior: PlainPrior,
  powers: 'free' | 'even' = 'free',
): PlainClass {
  const looks = { ...prior, least: LEAST_OF_LOOKS };
  const fine = parts.length <= LOOKED_AT_WHOLE ? FINE_OF_FEW : FINE;
  return settled(parts, prior, settled(parts, looks, roughGrid(parts, looks, powers), ROUGH).grid, fine);
}

function roughGrid(parts: readonly PlainPart[], prior: PlainPrior, powers: 'free' | 'even'): PlainGrid {
  if (parts.length <= LOOKED_AT_WHOLE) return wideGrid(prior, powers);
  const few = parts.filter((_, i) => i % EVERY === 0);
  return settled(few, prior, roughGrid(few, prior, powers), ROUGH).grid;
}

/** The grid drawn in and out until it needs no more of it. */
function settled(parts: readonly PlainPart[], prior: PlainPrior, from: PlainGrid, fineness: Fineness): PlainClass {
  let found = plainClass(parts, prior, from);
  for (let round = 0; round < 8; round++) {
    const { grid, marginals: held } = found;
    const next = { ...grid };
    for (const name of axisNames) next[name] = refined(name, grid[name], held[name], fineness) ?? grid[name];
    if (axisNames.every((name) => next[name] === grid[name])) return found;
    found = plainClass(parts, prior, next);
  }
  return found;
}

const wideGrid = (prior: PlainPrior, powers: 'free' | 'even'): PlainGrid => {
  const across = (low: number, high: number, count: number): Axis => axis(low, (high - low) / (count - 1), count);
  return {
    mu: across(prior.m0 - 5 * prior.s0, prior.m0 + 5 * prior.s0, 21),
    omega: axis(0, 0.35 * prior.omegaScale, 14, true),
    c: axis(0, 0.35 * prior.cScale, 14, true),
    x: powers === 'even' ? heldAt(0) : across(-5, 5, 13),
  };
};

/** Cells that hold less, against the heaviest, are left out of a forecast; so are columns of cells at one (c, x), and nodes. */
const LEAST_CELL = 2e-6;
const LEAST_COLUMN = 3e-6;
const LEAST_NODE = 4e-9;

/**
 * What is held of one part of the class, class figures summed out:
 *   weight(beta, c, g) prop. to chance(beta; c, g) sum_{mu, omega} p(theta | all) phi(beta; mu, omega) / Z(theta)
 */
export const plainPart = (of: PlainClass, part: PlainPart): PlainLaw => {
  const law = emptyLaw(of.prior.hRefHours);
  addNodes(law, of, part, 1);
  return summingToOne(law);
};

/** Adds to a law what one kind of wear holds of a part: nodes that sum to `share`. */
function addNodes(
  law: PlainLaw,
  { prior, grid, weight, columns, on, spreads }: PlainClass,
  part: PlainPart,
  share: number,
): void {
  const { c, x } = grid;
  const muCount = grid.mu.nodes.length;
  const inner = muCount * spreads.length;
  const leastCell = LEAST_CELL * weight.reduce((most, value) => Math.max(most, value), 0);
  for (const [ix, xNode] of x.nodes.entries()) {
    const g = powerAt(prior, xNode);
    const times = timesOf(part, prior.hRefHours, g);
    const power = law.powers.push({ g, time: times.at(-1) ?? 0 }) - 1;
    for (const [ic, cNode] of c.nodes.entries()) {
      if (columns[ix * c.nodes.length + ic]! < LEAST_COLUMN) continue;
      const column = weight.subarray((ix * c.nodes.length + ic) * inner).subarray(0, inner);
      const scatter = Math.max(prior.least, cNode);
      const step = Math.max(LEAST_STEP, scatter);
      const curve = partCurve(part, prior, scatter, g, on, Math.min(spreads[0]!.sd, step / NODES_OF_SD), NODES_OF_SD);
      const held = new Float64Array(curve.chance.length);
      for (const [io, spread] of spreads.entries()) {
        const stride = strideFor(curve, spread, on);
        for (let im = 0; im < muCount; im++) {
          const cell = column[io * muCount + im]!;
          if (cell < leastCell) continue;
          const mu = im * on.stepsOfMu;
          addSpread(held, curve, spread, mu, cell / partChance(curve, spread, mu, stride));
        }
      }
      for (const { k, chance } of joined(
        held.map((value, i) => value * curve.chance[i]!),
        step / (curve.every * on.step),
      )) {
        if (chance < LEAST_NODE) continue;
        const beta = rateAt(on, curve.from + k * curve.every);
        addNode(law, share * chance, beta, scatter, power, kernelAt(part, times, beta, scatter));
      }
    }
  }
}

/** Steps between the nodes of a part's bell, in sd; nor wider than the scatter of its path, or than this [ln]: hours would show them. */
const NODES_OF_SD = 0.6;
const LEAST_STEP = 0.05;

/**
 * A bell at fewer nodes: those within steps of its sd are told by two, at their mean less and more their own sd. Summed to the
 * third degree that is exact, and it holds where the bell is a comb: a class whose parts are all but alike has one tooth a mu.
 */
function joined(bell: Float64Array, most: number): { k: number; chance: number }[] {
  const width = Math.floor(Math.min(NODES_OF_SD * bellSd(bell), most));
  if (width < 3) return Array.from(bell, (chance, k) => ({ k, chance }));
  const nodes: { k: number; chance: number }[] = [];
  for (let from = 0; from < bell.length; from += width) {
    const bin = bell.subarray(from, from + width);
    const chance = sumOf(bin);
    if (chance === 0) continue;
    const mean = bin.reduce((sum, value, i) => sum + value * i, 0) / chance;
    const sd = Math.sqrt(bin.reduce((sum, value, i) => sum + value * (i - mean) ** 2, 0) / chance);
    nodes.push({ k: from + mean - sd, chance: chance / 2 }, { k: from + mean + sd, chance: chance / 2 });
  }
  return nodes;
}

/** A class that may wear evenly: both kinds of wear summed apart, and weighed by how well they tell of the readings. */
export type PlainMixture = { share: number; of: PlainClass }[];

/** @param evenChance prior chance that wear is even; 0: it never is */
export function fittedPlainMixture(parts: readonly PlainPart[], prior: PlainPrior, evenChance: number): PlainMixture {
  const kinds = [
    ...(evenChance < 1 ? [{ chance: 1 - evenChance, of: fittedPlainClass(parts, prior, 'free') }] : []),
    ...(evenChance > 0 ? [{ chance: evenChance, of: fittedPlainClass(parts, prior, 'even') }] : []),
  ];
  const top = Math.max(...kinds.map(({ of }) => of.lnEvidence));
  const weights = kinds.map(({ chance, of }) => chance * Math.exp(of.lnEvidence - top));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return kinds.map(({ of }, i) => ({ share: weights[i]! / total, of }));
}

/** {@link plainPart} of a class that may wear evenly. */
export const plainPartOfMixture = (kinds: PlainMixture, part: PlainPart): PlainLaw => {
  const law = emptyLaw(kinds[0]!.of.prior.hRefHours);
  for (const { share, of } of kinds) addNodes(law, of, part, share);
  return summingToOne(law);
};
