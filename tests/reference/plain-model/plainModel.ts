import { normalCdf, normalDensity } from '#core/maths/normal.ts';

/**
 * The wear model without its additions (no machine harshness, no shared visit errors, no odd parts), summed over plain
 * grids: no approximation but the grids themselves. Slow and readable: the measure the production path is held to.
 *
 *   X(0) ~ N(0, tau0^2);  X(h) - X(h') ~ N(b (t - t'), b^2 c^2 (t - t'));  t = (h / H)^g;  y = X + N(0, s^2)
 *   beta = ln b ~ N(mu, omega^2);  mu ~ N(m0, s0^2), omega ~ half-normal(0.5), c ~ half-normal(0.15), ln g ~ N(0, 0.15^2)
 */
export type PlainReading = { hours: number; wearMm: number; sdMm: number };
export type PlainPart = { tau0Mm: number; readings: readonly PlainReading[] };

export type Kernel = { lnChance: number; meanMm: number; varMm2: number; time: number };

/** Chance of a part's readings and its true wear at the last one, at given beta, c and g: a scalar recursion. */
export function kernel(part: PlainPart, hRefHours: number, beta: number, c: number, g: number): Kernel {
  const b = Math.exp(beta);
  let mean = 0;
  let variance = part.tau0Mm ** 2;
  let time = 0;
  let lnChance = 0;
  for (const reading of part.readings) {
    const t = (reading.hours / hRefHours) ** g;
    const dt = t - time;
    mean += b * dt;
    variance += b * b * c * c * dt;
    const s = variance + reading.sdMm ** 2;
    const v = reading.wearMm - mean;
    lnChance -= 0.5 * (Math.log(2 * Math.PI * s) + (v * v) / s);
    const gain = variance / s;
    mean += gain * v;
    variance *= 1 - gain;
    time = t;
  }
  return { lnChance, meanMm: mean, varMm2: variance, time };
}

/** One way a part may wear, with its weight. */
export type PlainNode = Kernel & { weight: number; beta: number; c: number; g: number };

export type PlainPrior = {
  hRefHours: number;
  m0: number;
  s0: number;
  omegaScale: number;
  cScale: number;
  lnGSd: number;
  /** floors of the scatters, as in production */
  least: number;
};

/** Equal nodes with their trapezium weights. */
export type Axis = { nodes: number[]; weights: number[] };

export function axis(from: number, to: number, count: number): Axis {
  if (count === 1) return { nodes: [from], weights: [1] };
  const step = (to - from) / (count - 1);
  return {
    nodes: Array.from({ length: count }, (_, i) => from + i * step),
    weights: Array.from({ length: count }, (_, i) => (i === 0 || i === count - 1 ? step / 2 : step)),
  };
}

/** An axis that begins at a floor: what the prior holds below it (its density hardly changes there) counts at the floor. */
const flooredAxis = (from: number, to: number, count: number, floor: number): Axis => {
  const { nodes, weights } = axis(from, to, count);
  return { nodes, weights: weights.map((weight, i) => (i === 0 && from <= floor ? weight + floor : weight)) };
};

export type PlainGrid = { mu: Axis; omega: Axis; c: Axis; lnG: Axis };

const lnNormal = (x: number, mean: number, sd: number): number =>
  -0.5 * Math.log(2 * Math.PI * sd * sd) - (0.5 * (x - mean) ** 2) / (sd * sd);
const lnHalfNormal = (x: number, scale: number): number => Math.LN2 + lnNormal(x, 0, scale);

const lnPrior = (
  prior: PlainPrior,
  mu: number,
  omega: number,
  c: number,
  lnG: number,
  free: { lnG: boolean },
): number =>
  lnNormal(mu, prior.m0, prior.s0) +
  lnHalfNormal(omega, prior.omegaScale) +
  lnHalfNormal(c, prior.cScale) +
  (free.lnG ? lnNormal(lnG, 0, prior.lnGSd) : 0);

/** Equal nodes of beta, the same for all parts of a class. */
type BetaNodes = { low: number; step: number; count: number };

/** Close enough for the sharpest bell of any part and the narrowest spread of the class: a bell's sum is good to 1e-8 once the step is its sd. */
function betaNodes(parts: readonly PlainPart[], prior: PlainPrior, leastOmega: number, rough: boolean): BetaNodes {
  const [low, high] = betaRange(parts, prior);
  const sharpest = parts.reduce((least, part) => {
    const t2 = part.readings.reduce((sum, r) => sum + (r.hours / prior.hRefHours) ** 2, 0);
    const crude = part.readings.reduce((sum, r) => sum + (r.wearMm * r.hours) / prior.hRefHours, 0) / t2;
    return crude > 0 ? Math.min(least, Math.min(...part.readings.map((r) => r.sdMm)) / (crude * Math.sqrt(t2))) : least;
  }, 1);
  const step = rough
    ? 0.05
    : Math.max((high - low) / 4000, Math.min(0.05, 1 / Math.hypot(1 / sharpest, 1 / leastOmega)));
  return { low, step, count: Math.ceil((high - low) / step) + 1 };
}

/** Chances e^32 below the best count for nothing. */
const LEAST_LN = 32;

/** What a part says at one (c, g): its chance at the nodes from `from` on, those e^32 below its best left out. */
type PartCurve = { from: number; chance: Float64Array; lnTop: number };

function partCurve(part: PlainPart, prior: PlainPrior, c: number, g: number, betas: BetaNodes): PartCurve {
  const at = (k: number): number => kernel(part, prior.hRefHours, betas.low + k * betas.step, c, g).lnChance;
  // a wide scan first: the curve has one top, so what counts lies next to scanned nodes that count
  const stride = Math.max(1, Math.floor(betas.count / 60));
  const scanned: [number, number][] = [];
  for (let k = 0; k < betas.count; k += stride) scanned.push([k, at(k)]);
  const best = scanned.reduce((top, [, value]) => Math.max(top, value), Number.NEGATIVE_INFINITY);
  const near = scanned.filter(([, value]) => value > best - LEAST_LN).map(([k]) => k);
  let from = Math.max(0, near[0]! - stride);
  let to = Math.min(betas.count, near.at(-1)! + stride + 1);
  const lnChance = Float64Array.from({ length: to - from }, (_, i) => at(from + i));
  const lnTop = lnChance.reduce((top, value) => Math.max(top, value), Number.NEGATIVE_INFINITY);
  const first = from;
  while (lnChance[from - first]! < lnTop - LEAST_LN) from++;
  while (lnChance[to - 1 - first]! < lnTop - LEAST_LN) to--;
  const kept = lnChance.slice(from - first, to - first);
  return { from, chance: kept.map((value) => Math.exp(value - lnTop) * betas.step), lnTop };
}

/** phi(beta; mu, omega) at every node: one row of betas for each (omega, mu), mu fastest. */
function spreadTable(grid: PlainGrid, betas: BetaNodes): Float64Array {
  const { mu, omega } = grid;
  const table = new Float64Array(mu.nodes.length * omega.nodes.length * betas.count);
  let at = 0;
  for (const spread of omega.nodes)
    for (const centre of mu.nodes)
      for (let k = 0; k < betas.count; k++)
        table[at++] = normalDensity((betas.low + k * betas.step - centre) / spread) / spread;
  return table;
}

/** Z of one part at one (mu, omega): its chance once beta is summed out. */
function partChance(curve: PartCurve, table: Float64Array, row: number, count: number): number {
  const { chance } = curve;
  const at = row * count + curve.from;
  const even = chance.length & ~1;
  let sum = 0;
  let odd = even < chance.length ? chance[even]! * table[at + even]! : 0;
  for (let k = 0; k < even; k += 2) {
    sum += chance[k]! * table[at + k]!;
    odd += chance[k + 1]! * table[at + k + 1]!;
  }
  return sum + odd;
}

export type PlainClass = {
  prior: PlainPrior;
  grid: PlainGrid;
  betas: BetaNodes;
  /** phi(beta; mu, omega) */
  table: Float64Array;
  /** ln posterior over the grid, mu fastest, then omega, c, ln g */
  weight: Float64Array;
  lnEvidence: number;
  moments: Record<
    'mu' | 'omega' | 'c' | 'lnG',
    { mean: number; sd: number /** weight on open ends of the axis */; ends: number }
  >;
};

const betaRange = (parts: readonly PlainPart[], prior: PlainPrior): [number, number] => {
  const crude = parts.flatMap((part) => {
    const last = part.readings.at(-1);
    return last && last.wearMm > 0 && last.hours > 0 ? [Math.log((last.wearMm * prior.hRefHours) / last.hours)] : [];
  });
  return [Math.min(prior.m0 - 3, ...crude.map((x) => x - 1.5)), Math.max(prior.m0 + 3, ...crude.map((x) => x + 1.5))];
};

/** Posterior of (mu, omega, c, g) of a class over a grid. */
export function plainClass(parts: readonly PlainPart[], prior: PlainPrior, grid: PlainGrid, rough = false): PlainClass {
  const { mu, omega, c, lnG } = grid;
  const free = { lnG: lnG.nodes.length > 1 };
  const betas = betaNodes(parts, prior, omega.nodes[0]!, rough);
  const table = spreadTable(grid, betas);
  const inner = mu.nodes.length * omega.nodes.length;
  const ln = new Float64Array(inner * c.nodes.length * lnG.nodes.length);
  const read = parts.filter((part) => part.readings.length > 0);
  lnG.nodes.forEach((lnPower, ig) => {
    c.nodes.forEach((scatter, ic) => {
      const at = (ig * c.nodes.length + ic) * inner;
      for (const part of read) {
        const curve = partCurve(part, prior, scatter, Math.exp(lnPower), betas);
        for (let row = 0; row < inner; row++)
          ln[at + row] = ln[at + row]! + curve.lnTop + Math.log(partChance(curve, table, row, betas.count) + 1e-300);
      }
      omega.nodes.forEach((spread, io) => {
        mu.nodes.forEach((centre, im) => {
          const place = at + io * mu.nodes.length + im;
          const cell = mu.weights[im]! * omega.weights[io]! * c.weights[ic]! * lnG.weights[ig]!;
          ln[place] = ln[place]! + lnPrior(prior, centre, spread, scatter, lnPower, free) + Math.log(cell);
        });
      });
    });
  });
  const top = ln.reduce((best, value) => Math.max(best, value), Number.NEGATIVE_INFINITY);
  const weight = ln.map((value) => Math.exp(value - top));
  const total = weight.reduce((sum, value) => sum + value, 0);
  for (let i = 0; i < weight.length; i++) weight[i] = weight[i]! / total;
  return { prior, grid, betas, table, weight, lnEvidence: top + Math.log(total), moments: gridMoments(grid, weight) };
}

function gridMoments(grid: PlainGrid, weight: Float64Array): PlainClass['moments'] {
  let stride = 1;
  const moments = {} as PlainClass['moments'];
  for (const name of ['mu', 'omega', 'c', 'lnG'] as const) {
    const { nodes } = grid[name];
    const share = new Float64Array(nodes.length);
    for (let i = 0; i < weight.length; i++) {
      const node = Math.floor(i / stride) % nodes.length;
      share[node] = share[node]! + weight[i]!;
    }
    stride *= nodes.length;
    const mean = nodes.reduce((sum, value, i) => sum + share[i]! * value, 0);
    const square = nodes.reduce((sum, value, i) => sum + share[i]! * (value - mean) ** 2, 0);
    // a scatter's floor is no open end
    const low = name === 'omega' || name === 'c' ? 0 : share[0]!;
    moments[name] = { mean, sd: Math.sqrt(square), ends: nodes.length > 1 ? Math.max(low, share.at(-1)!) : 0 };
  }
  return moments;
}

/**
 * A class on grids that fit it: begun wide, then each axis drawn in to 3.75 sd of what was found, with steps of at most
 * `stepsOfSd` of that sd, until no axis asks for more.
 */
export function fittedPlainClass(
  parts: readonly PlainPart[],
  prior: PlainPrior,
  stepsOfSd = 0.5,
  powers: 'free' | 'even' = 'free',
): PlainClass {
  let grid: PlainGrid = {
    mu: axis(...betaRange(parts, prior), 31),
    omega: flooredAxis(prior.least, 4 * prior.omegaScale, 20, prior.least),
    c: flooredAxis(prior.least, 4 * prior.cScale, 13, prior.least),
    lnG: powers === 'even' ? axis(0, 0, 1) : axis(-4 * prior.lnGSd, 4 * prior.lnGSd, 9),
  };
  let found = plainClass(parts, prior, grid, true);
  for (let round = 0; round < 6; round++) {
    let asks = false;
    const refined = {} as PlainGrid;
    for (const name of ['mu', 'omega', 'c', 'lnG'] as const) {
      const { nodes } = grid[name];
      if (nodes.length === 1) {
        refined[name] = grid[name];
        continue;
      }
      const { mean, sd, ends } = found.moments[name];
      const step = nodes[1]! - nodes[0]!;
      const floor = name === 'mu' || name === 'lnG' ? Number.NEGATIVE_INFINITY : prior.least;
      const wide = Math.max(sd, step / 1.5);
      const reach = ends > 1e-3 ? 6 : 3.75;
      const from = Math.max(floor, mean - reach * wide);
      const to = mean + reach * wide;
      if (step > stepsOfSd * sd || ends > 1e-3) asks = true;
      refined[name] = flooredAxis(from, to, Math.max(3, Math.ceil((to - from) / (0.92 * stepsOfSd * wide)) + 1), floor);
    }
    if (!asks && round > 0) break;
    grid = refined;
    found = plainClass(parts, prior, grid);
  }
  return found;
}

/**
 * What is held of one part of the class, class figures summed out:
 *   weight(beta, c, g) prop. to chance(beta; c, g) sum_{mu, omega} p(theta | all) phi(beta; mu, omega) / Z(theta)
 */
export function plainPart(of: PlainClass, part: PlainPart): PlainNode[] {
  const { prior, grid, weight, betas, table } = of;
  const inner = grid.mu.nodes.length * grid.omega.nodes.length;
  const nodes: PlainNode[] = [];
  grid.lnG.nodes.forEach((lnPower, ig) => {
    grid.c.nodes.forEach((c, ic) => {
      const at = (ig * grid.c.nodes.length + ic) * inner;
      let mass = 0;
      for (let row = 0; row < inner; row++) mass += weight[at + row]!;
      if (mass < 1e-6) return;
      const g = Math.exp(lnPower);
      const curve = partCurve(part, prior, c, g, betas);
      const held = new Float64Array(curve.chance.length);
      for (let row = 0; row < inner; row++) {
        if (weight[at + row]! < 1e-9) continue;
        const share = weight[at + row]! / partChance(curve, table, row, betas.count);
        const first = row * betas.count + curve.from;
        for (let k = 0; k < held.length; k++) held[k] = held[k]! + share * table[first + k]!;
      }
      for (let k = 0; k < held.length; k++) {
        const chance = curve.chance[k]! * held[k]!;
        if (chance < 1e-8) continue;
        const beta = betas.low + (curve.from + k) * betas.step;
        nodes.push({ ...kernel(part, prior.hRefHours, beta, c, g), weight: chance, beta, c, g });
      }
    });
  });
  const total = nodes.reduce((sum, node) => sum + node.weight, 0);
  return nodes.map((node) => ({ ...node, weight: node.weight / total }));
}

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

/** Hours at which F reaches F0 + (1 - F0) u: bracketed by doubling, then halved 40 times. null: past 20 hRef */
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
  let step = hRefHours / 16;
  while (chance(low + step) < target) {
    low += step;
    step *= 2;
    if (low > 20 * hRefHours) return null;
  }
  let high = low + step;
  for (let i = 0; i < 40; i++) {
    const middle = 0.5 * (low + high);
    if (chance(middle) < target) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
