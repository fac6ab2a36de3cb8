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

/** What a part says at one (c, g): its chance over nodes of beta, none where it is e^32 below its best. */
type PartCurve = { betas: Float64Array; chance: Float64Array; lnTop: number };

function partCurve(part: PlainPart, prior: PlainPrior, c: number, g: number, low: number, high: number): PartCurve {
  // nodes close enough for the sharper of the bell and the class's narrowest spread
  const tSquares = part.readings.reduce((sum, r) => sum + (r.hours / prior.hRefHours) ** (2 * g), 0);
  const crude = part.readings.reduce((sum, r) => sum + r.wearMm * (r.hours / prior.hRefHours) ** g, 0) / tSquares;
  const sharp =
    part.readings.length === 0 || !(crude > 0)
      ? 1
      : Math.min(...part.readings.map((r) => r.sdMm)) / (crude * Math.sqrt(tSquares));
  const step = Math.min(0.04, 0.8 * Math.hypot(sharp, (0.5 * c) / Math.sqrt(part.readings.length || 1)));
  const count = Math.min(4001, Math.ceil((high - low) / step) + 1);
  const all = Array.from({ length: count }, (_, k) => low + (k * (high - low)) / (count - 1));
  const lnChance = all.map((beta) => kernel(part, prior.hRefHours, beta, c, g).lnChance);
  const lnTop = lnChance.reduce((top, value) => Math.max(top, value), Number.NEGATIVE_INFINITY);
  const kept = all.map((_, k) => k).filter((k) => lnChance[k]! > lnTop - 32);
  const width = (high - low) / (count - 1);
  return {
    betas: Float64Array.from(kept, (k) => all[k]!),
    chance: Float64Array.from(kept, (k) => Math.exp(lnChance[k]! - lnTop) * width),
    lnTop,
  };
}

/** Z(mu, omega) of one part: its chance once beta is summed out. */
function partChance(curve: PartCurve, mu: number, omega: number): number {
  let sum = 0;
  for (let k = 0; k < curve.betas.length; k++) {
    const z = (curve.betas[k]! - mu) / omega;
    if (z > 8 || z < -8) continue;
    sum += curve.chance[k]! * Math.exp(-0.5 * z * z);
  }
  return sum / (omega * Math.sqrt(2 * Math.PI));
}

export type PlainClass = {
  prior: PlainPrior;
  grid: PlainGrid;
  /** ln posterior over the grid, mu fastest, then omega, c, ln g */
  weight: Float64Array;
  lnEvidence: number;
  moments: Record<'mu' | 'omega' | 'c' | 'lnG', { mean: number; sd: number }>;
};

const betaRange = (parts: readonly PlainPart[], prior: PlainPrior): [number, number] => {
  const crude = parts.flatMap((part) => {
    const last = part.readings.at(-1);
    return last && last.wearMm > 0 && last.hours > 0 ? [Math.log((last.wearMm * prior.hRefHours) / last.hours)] : [];
  });
  return [Math.min(prior.m0 - 3, ...crude.map((x) => x - 1.5)), Math.max(prior.m0 + 3, ...crude.map((x) => x + 1.5))];
};

/** Posterior of (mu, omega, c, g) of a class over a grid. */
export function plainClass(parts: readonly PlainPart[], prior: PlainPrior, grid: PlainGrid): PlainClass {
  const { mu, omega, c, lnG } = grid;
  const free = { lnG: lnG.nodes.length > 1 };
  const [low, high] = betaRange(parts, prior);
  const inner = mu.nodes.length * omega.nodes.length;
  const ln = new Float64Array(inner * c.nodes.length * lnG.nodes.length);
  const read = parts.filter((part) => part.readings.length > 0);
  lnG.nodes.forEach((lnPower, ig) => {
    c.nodes.forEach((scatter, ic) => {
      const at = (ig * c.nodes.length + ic) * inner;
      for (const part of read) {
        const curve = partCurve(part, prior, scatter, Math.exp(lnPower), low, high);
        omega.nodes.forEach((spread, io) => {
          mu.nodes.forEach((centre, im) => {
            const place = at + io * mu.nodes.length + im;
            ln[place] = ln[place]! + curve.lnTop + Math.log(partChance(curve, centre, spread) + 1e-300);
          });
        });
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
  return { prior, grid, weight, lnEvidence: top + Math.log(total), moments: gridMoments(grid, weight) };
}

function gridMoments(grid: PlainGrid, weight: Float64Array): PlainClass['moments'] {
  const axes = ['mu', 'omega', 'c', 'lnG'] as const;
  const sums = axes.map(() => [0, 0] as [number, number]);
  let rest = 0;
  for (let i = 0; i < weight.length; i++) {
    rest = i;
    axes.forEach((name, a) => {
      const { nodes } = grid[name];
      const value = nodes[rest % nodes.length]!;
      rest = Math.floor(rest / nodes.length);
      sums[a]![0] += weight[i]! * value;
      sums[a]![1] += weight[i]! * value * value;
    });
  }
  return Object.fromEntries(
    axes.map((name, a) => [name, { mean: sums[a]![0], sd: Math.sqrt(Math.max(0, sums[a]![1] - sums[a]![0] ** 2)) }]),
  ) as PlainClass['moments'];
}

/**
 * A class on grids that fit it: begun wide, then each axis drawn in to 4.5 sd of what was found, with steps of at most
 * `stepsOfSd` of that sd, until no axis asks for more.
 */
export function fittedPlainClass(
  parts: readonly PlainPart[],
  prior: PlainPrior,
  stepsOfSd = 0.5,
  powers: 'free' | 'even' = 'free',
): PlainClass {
  const [low, high] = betaRange(parts, prior);
  let grid: PlainGrid = {
    mu: axis(Math.max(low, prior.m0 - 4 * prior.s0 - 1), Math.min(high, prior.m0 + 4 * prior.s0 + 1), 31),
    omega: axis(prior.least, 4 * prior.omegaScale, 20),
    c: axis(prior.least, 4 * prior.cScale, 13),
    lnG: powers === 'even' ? axis(0, 0, 1) : axis(-4 * prior.lnGSd, 4 * prior.lnGSd, 9),
  };
  let found = plainClass(parts, prior, grid);
  for (let round = 0; round < 6; round++) {
    let asks = false;
    const refined = {} as PlainGrid;
    for (const name of ['mu', 'omega', 'c', 'lnG'] as const) {
      const { nodes } = grid[name];
      if (nodes.length === 1) {
        refined[name] = grid[name];
        continue;
      }
      const { mean, sd } = found.moments[name];
      const step = nodes[1]! - nodes[0]!;
      const floor = name === 'mu' || name === 'lnG' ? Number.NEGATIVE_INFINITY : prior.least;
      const from = Math.max(floor, mean - 4.5 * Math.max(sd, step / 3));
      const to = mean + 4.5 * Math.max(sd, step / 3);
      if (step > stepsOfSd * sd * 1.001) asks = true;
      refined[name] = axis(from, to, Math.max(3, Math.ceil((to - from) / (stepsOfSd * Math.max(sd, step / 3))) + 1));
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
export function plainPart(of: PlainClass, part: PlainPart, parts: readonly PlainPart[]): PlainNode[] {
  const { prior, grid, weight } = of;
  const [low, high] = betaRange(parts, prior);
  const inner = grid.mu.nodes.length * grid.omega.nodes.length;
  const nodes: PlainNode[] = [];
  grid.lnG.nodes.forEach((lnPower, ig) => {
    grid.c.nodes.forEach((scatter, ic) => {
      const at = (ig * grid.c.nodes.length + ic) * inner;
      let mass = 0;
      for (let i = 0; i < inner; i++) mass += weight[at + i]!;
      if (mass < 1e-7) return;
      const g = Math.exp(lnPower);
      const curve = partCurve(part, prior, scatter, g, low, high);
      const prior1 = new Float64Array(curve.betas.length);
      grid.omega.nodes.forEach((spread, io) => {
        grid.mu.nodes.forEach((centre, im) => {
          const held = weight[at + io * grid.mu.nodes.length + im]!;
          if (held < 1e-12) return;
          const z = partChance(curve, centre, spread);
          if (!(z > 1e-290)) return;
          for (let k = 0; k < prior1.length; k++)
            prior1[k] = prior1[k]! + (held * normalDensity((curve.betas[k]! - centre) / spread)) / spread / z;
        });
      });
      for (let k = 0; k < prior1.length; k++) {
        const nodeWeight = curve.chance[k]! * prior1[k]!;
        if (nodeWeight < 1e-9) continue;
        const beta = curve.betas[k]!;
        nodes.push({ ...kernel(part, prior.hRefHours, beta, scatter, g), weight: nodeWeight, beta, c: scatter, g });
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

/** Hours at which F reaches F0 + (1 - F0) u: bracketed by doubling, then 70 halvings. null: past 20 hRef */
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
  for (let i = 0; i < 70; i++) {
    const middle = 0.5 * (low + high);
    if (chance(middle) < target) low = middle;
    else high = middle;
  }
  return 0.5 * (low + high);
}
