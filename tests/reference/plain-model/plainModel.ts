import { normalDensity } from '#core/maths/normal.ts';
import { type Axis, axis, axisNames, heldAt, type Marginal, marginals, type PlainGrid, refined } from './plainGrid.ts';
import { type Kernel, kernelAt, type PlainPart, timesOf } from './plainKernel.ts';

/**
 * The wear model summed over plain grids: no approximation but the grids themselves. Slow and readable: the measure the
 * production path is held to.
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

/** One way a part may wear, with its weight. */
export type PlainNode = Kernel & { weight: number; beta: number; c: number; g: number };

const lnNormal = (x: number, mean: number, sd: number): number =>
  -0.5 * Math.log(2 * Math.PI * sd * sd) - (0.5 * (x - mean) ** 2) / (sd * sd);
const lnHalfNormal = (x: number, scale: number): number => Math.LN2 + lnNormal(x, 0, scale);

const powerAt = (prior: PlainPrior, x: number): number => Math.exp(prior.lnGSd * (x + prior.lnGTail * x ** 3));

/** Equal nodes of beta, the same for all parts of a class. */
type BetaNodes = { low: number; step: number; count: number; narrowest: number };

/** Close enough for the sharpest bell of any part and the narrowest spread of the class: a bell's sum is good to 1e-8 once the step is its sd. */
function betaNodes(parts: readonly PlainPart[], prior: PlainPrior, leastOmega: number): BetaNodes {
  const [low, high] = betaRange(parts, prior);
  const sharpest = parts.reduce((least, part) => {
    const t2 = part.readings.reduce((sum, r) => sum + (r.hours / prior.hRefHours) ** 2, 0);
    const crude = part.readings.reduce((sum, r) => sum + (r.wearMm * r.hours) / prior.hRefHours, 0) / t2;
    return crude > 0 ? Math.min(least, Math.min(...part.readings.map((r) => r.sdMm)) / (crude * Math.sqrt(t2))) : least;
  }, 1);
  const step = Math.max((high - low) / 4000, Math.min(0.05, 1 / Math.hypot(1 / sharpest, 1 / leastOmega)));
  return { low, step, count: Math.ceil((high - low) / step) + 1, narrowest: leastOmega };
}

const betaRange = (parts: readonly PlainPart[], prior: PlainPrior): [number, number] => {
  const reach = Math.max(3, 5 * prior.s0);
  const crude = parts.flatMap((part) => {
    const last = part.readings.at(-1);
    return last && last.wearMm > 0 && last.hours > 0 ? [Math.log((last.wearMm * prior.hRefHours) / last.hours)] : [];
  });
  return [
    Math.min(prior.m0 - reach, ...crude.map((x) => x - 1.5)),
    Math.max(prior.m0 + reach, ...crude.map((x) => x + 1.5)),
  ];
};

/** Chances e^32 below the best count for nothing. */
const LEAST_LN = 32;

/** What a part says at one (c, g): its chance at every `every`-th node from `from` on, those e^32 below its best left out; sd of its bell. */
type PartCurve = { from: number; every: number; chance: Float64Array; lnTop: number; sd: number };

function partCurve(part: PlainPart, prior: PlainPrior, c: number, g: number, betas: BetaNodes): PartCurve {
  const times = timesOf(part, prior.hRefHours, g);
  const at = (k: number): number => kernelAt(part, times, betas.low + k * betas.step, c).lnChance;
  // a wide scan first: the curve has one top, so what counts lies next to scanned nodes that count
  const stride = Math.max(1, Math.floor(betas.count / 60));
  const scanned: [number, number][] = [];
  for (let k = 0; k < betas.count; k += stride) scanned.push([k, at(k)]);
  const best = scanned.reduce((top, [, value]) => Math.max(top, value), Number.NEGATIVE_INFINITY);
  const near = scanned.filter(([, value]) => value > best - LEAST_LN).map(([k]) => k);
  // a bell falls by e^32 in 8 sd: steps of a third of an sd, and none wider than the narrowest spread
  const crudeSd = (near.at(-1)! - near[0]!) / 16;
  const every = Math.max(1, Math.floor(Math.min(0.35 * crudeSd, (0.7 * betas.narrowest) / betas.step)));
  const first = Math.max(0, near[0]! - stride);
  const count = Math.floor((Math.min(betas.count - 1, near.at(-1)! + stride) - first) / every) + 1;
  const lnChance = Float64Array.from({ length: count }, (_, i) => at(first + i * every));
  const lnTop = lnChance.reduce((top, value) => Math.max(top, value), Number.NEGATIVE_INFINITY);
  const from = lnChance.findIndex((value) => value >= lnTop - LEAST_LN);
  const to = lnChance.findLastIndex((value) => value >= lnTop - LEAST_LN) + 1;
  const step = every * betas.step;
  const chance = lnChance.slice(from, to).map((value) => Math.exp(value - lnTop) * step);
  return { from: first + from * every, every, chance, lnTop, sd: bellSd(chance) * step };
}

/** 1 sd of a bell given at equal nodes, in nodes. */
function bellSd(chance: Float64Array): number {
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

/** Density of beta given mu and omega at every node: one row of betas for each (omega, mu), mu fastest. */
function spreadTable(grid: PlainGrid, betas: BetaNodes, prior: PlainPrior): Float64Array {
  const { mu, omega } = grid;
  const table = new Float64Array(mu.nodes.length * omega.nodes.length * betas.count);
  const density = (off: number, sd: number): number => normalDensity(off / sd) / sd;
  let at = 0;
  for (const omegaNode of omega.nodes)
    for (const centre of mu.nodes) {
      const spread = Math.max(prior.least, omegaNode);
      for (let k = 0; k < betas.count; k++) {
        const off = betas.low + k * betas.step - centre;
        table[at++] =
          (1 - prior.oddShare) * density(off, spread) +
          (prior.oddShare > 0 ? prior.oddShare * density(off, prior.oddWidth * spread) : 0);
      }
    }
  return table;
}

/**
 * Z of one part at one (mu, omega): its chance once beta is summed out, over every `stride`-th node of its curve only: the
 * product of two bells is summed to 1e-8 by steps of its own sd, however much finer the nodes are.
 */
function partChance(curve: PartCurve, table: Float64Array, row: number, count: number, stride: number): number {
  const { chance, every, from } = curve;
  const at = row * count + from;
  let sum = 0;
  for (let k = 0; k < chance.length; k += stride) sum += chance[k]! * table[at + k * every]!;
  return sum * stride;
}

/** How many nodes of a part's curve its product with a spread may be stepped over: steps of 0.7 sd. */
const strideFor = (curve: PartCurve, spread: number, betas: BetaNodes): number =>
  Math.max(1, Math.floor(0.7 / Math.hypot(1 / curve.sd, 1 / spread) / (curve.every * betas.step)));

export type PlainClass = {
  prior: PlainPrior;
  grid: PlainGrid;
  betas: BetaNodes;
  /** density of beta given mu and omega */
  table: Float64Array;
  /** posterior over the grid, mu fastest, then omega, c, x; sums to 1 */
  weight: Float64Array;
  lnEvidence: number;
  marginals: Record<keyof PlainGrid, Marginal>;
};

/** Posterior of (mu, omega, c, x) of a class over a grid. */
export function plainClass(parts: readonly PlainPart[], prior: PlainPrior, grid: PlainGrid): PlainClass {
  const { mu, omega, c, x } = grid;
  const betas = betaNodes(parts, prior, Math.max(prior.least, omega.nodes[0]!));
  const table = spreadTable(grid, betas, prior);
  const inner = mu.nodes.length * omega.nodes.length;
  const ln = new Float64Array(inner * c.nodes.length * x.nodes.length);
  const read = parts.filter((part) => part.readings.length > 0);
  x.nodes.forEach((xNode, ix) => {
    const lnX = x.nodes.length > 1 ? lnNormal(xNode, 0, 1) : 0;
    c.nodes.forEach((cNode, ic) => {
      const at = (ix * c.nodes.length + ic) * inner;
      for (const part of read) {
        const curve = partCurve(part, prior, Math.max(prior.least, cNode), powerAt(prior, xNode), betas);
        omega.nodes.forEach((omegaNode, io) => {
          const stride = strideFor(curve, Math.max(prior.least, omegaNode), betas);
          for (let row = io * mu.nodes.length; row < (io + 1) * mu.nodes.length; row++)
            ln[at + row] =
              ln[at + row]! + curve.lnTop + Math.log(partChance(curve, table, row, betas.count, stride) + 1e-300);
        });
      }
      omega.nodes.forEach((omegaNode, io) => {
        mu.nodes.forEach((muNode, im) => {
          const cell = mu.weights[im]! * omega.weights[io]! * c.weights[ic]! * x.weights[ix]!;
          const lnPrior =
            lnNormal(muNode, prior.m0, prior.s0) +
            lnHalfNormal(omegaNode, prior.omegaScale) +
            lnHalfNormal(cNode, prior.cScale) +
            lnX;
          const place = at + io * mu.nodes.length + im;
          ln[place] = ln[place]! + lnPrior + Math.log(cell);
        });
      });
    });
  });
  const top = ln.reduce((best, value) => Math.max(best, value), Number.NEGATIVE_INFINITY);
  const weight = ln.map((value) => Math.exp(value - top));
  const total = weight.reduce((sum, value) => sum + value, 0);
  for (let i = 0; i < weight.length; i++) weight[i] = weight[i]! / total;
  return {
    prior,
    grid,
    betas,
    table,
    weight,
    lnEvidence: top + Math.log(total),
    marginals: marginals(grid, weight),
  };
}

/** Parts above which a class is first looked at by every fifth of them: their grid shows where to lay the whole one. */
const LOOKED_AT_WHOLE = 20;
const EVERY = 5;
/** Steps of that look, in sd. */
const ROUGH = 1;

/**
 * A class on grids that fit it: each axis is drawn in, or out, until its steps are at most half the sd of what was found
 * and its open ends hold nothing.
 */
export function fittedPlainClass(
  parts: readonly PlainPart[],
  prior: PlainPrior,
  powers: 'free' | 'even' = 'free',
  stepOfSd = 0.5,
): PlainClass {
  let grid =
    parts.length > LOOKED_AT_WHOLE
      ? fittedPlainClass(
          parts.filter((_, i) => i % EVERY === 0),
          prior,
          powers,
          ROUGH,
        ).grid
      : wideGrid(prior, powers);
  for (let round = 0; round < 8; round++) {
    const found = plainClass(parts, prior, grid);
    const next = { ...grid };
    for (const name of axisNames) next[name] = refined(name, grid[name], found.marginals[name], stepOfSd) ?? grid[name];
    if (axisNames.every((name) => next[name] === grid[name])) return found;
    grid = next;
  }
  return plainClass(parts, prior, grid);
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

/**
 * What is held of one part of the class, class figures summed out:
 *   weight(beta, c, g) prop. to chance(beta; c, g) sum_{mu, omega} p(theta | all) phi(beta; mu, omega) / Z(theta)
 */
export function plainPart(of: PlainClass, part: PlainPart): PlainNode[] {
  const { prior, grid, weight, betas, table } = of;
  const inner = grid.mu.nodes.length * grid.omega.nodes.length;
  const nodes: PlainNode[] = [];
  grid.x.nodes.forEach((xNode, ix) => {
    grid.c.nodes.forEach((cNode, ic) => {
      const at = (ix * grid.c.nodes.length + ic) * inner;
      let mass = 0;
      for (let row = 0; row < inner; row++) mass += weight[at + row]!;
      if (mass < 1e-6) return;
      const g = powerAt(prior, xNode);
      const c = Math.max(prior.least, cNode);
      const curve = partCurve(part, prior, c, g, betas);
      const times = timesOf(part, prior.hRefHours, g);
      const held = new Float64Array(curve.chance.length);
      for (let row = 0; row < inner; row++) {
        if (weight[at + row]! < 1e-8) continue;
        const spread = Math.max(prior.least, grid.omega.nodes[Math.floor(row / grid.mu.nodes.length)]!);
        const stride = strideFor(curve, spread, betas);
        const share = weight[at + row]! / partChance(curve, table, row, betas.count, stride);
        const first = row * betas.count + curve.from;
        for (let k = 0; k < held.length; k++) held[k] = held[k]! + share * table[first + k * curve.every]!;
      }
      for (const { k, chance } of binned(held.map((value, k) => value * curve.chance[k]!))) {
        const beta = betas.low + (curve.from + k * curve.every) * betas.step;
        nodes.push({ ...kernelAt(part, times, beta, c), weight: chance, beta, c, g });
      }
    });
  });
  return heaviest(nodes);
}

/** Nodes of a bell joined into bins of a fifth of its sd, each at its own mean. */
function binned(bell: Float64Array): { k: number; chance: number }[] {
  const width = Math.max(1, Math.floor(0.2 * bellSd(bell)));
  const bins: { k: number; chance: number }[] = [];
  for (let from = 0; from < bell.length; from += width) {
    let chance = 0;
    let first = 0;
    for (let k = from; k < Math.min(bell.length, from + width); k++) {
      chance += bell[k]!;
      first += k * bell[k]!;
    }
    if (chance > 0) bins.push({ k: first / chance, chance });
  }
  return bins;
}

/** What the lightest nodes may hold together, and be left out: they cost most of the time. */
const LEFT_OUT = 2e-6;

function heaviest(nodes: readonly PlainNode[]): PlainNode[] {
  const sorted = [...nodes].sort((a, b) => a.weight - b.weight);
  const total = nodes.reduce((sum, node) => sum + node.weight, 0);
  let from = 0;
  for (let held = sorted[0]!.weight; held < LEFT_OUT * total; held += sorted[from]!.weight) from++;
  return sorted.slice(from).map((node) => ({ ...node, weight: node.weight / total }));
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
export const plainPartOfMixture = (kinds: PlainMixture, part: PlainPart): PlainNode[] =>
  kinds.flatMap(({ share, of }) => plainPart(of, part).map((node) => ({ ...node, weight: share * node.weight })));
