/** Equal nodes: from, from + step, ... A sum over them times the step is the trapezium sum of a bell that ends inside. */
export type Axis = { nodes: number[]; weights: number[] };

/** Figures of a class, as axes. Powers go by x, standard normal before any reading: ln g = sd (x + tail x^3). */
export type PlainGrid = { mu: Axis; omega: Axis; c: Axis; x: Axis };

export const axisNames = ['mu', 'omega', 'c', 'x'] as const;

/** Scatters are never below 0: their axes begin there. */
const beginsAtZero = { mu: false, omega: true, c: true, x: false };

/**
 * Equal nodes with their weights. A scatter's axis that begins at 0 counts its first node half: the chance of a scatter goes
 * by its square, so the trapezium sum from 0 is half that of an even bell, and as exact.
 */
export function axis(from: number, step: number, count: number, halfFirst = false): Axis {
  return {
    nodes: Array.from({ length: count }, (_, i) => from + i * step),
    weights: Array.from({ length: count }, (_, i) => (i === 0 && halfFirst ? step / 2 : step)),
  };
}

/**
 * Nodes of a scatter from 0 whose steps open out, (step / growth) sinh(growth k), each with the length it stands for: close where
 * the scatter is small beside what readings are good to, wide where only a heavier tail is summed. The first counts half, as on {@link axis}.
 */
export function openingAxis(step: number, growth: number, count: number): Axis {
  const places = Array.from({ length: count }, (_, k) => growth * k);
  return {
    nodes: places.map((place) => (step / growth) * Math.sinh(place)),
    weights: places.map((place, k) => step * Math.cosh(place) * (k === 0 ? 0.5 : 1)),
  };
}

/** The one value an axis is held at. */
export const heldAt = (value: number): Axis => ({ nodes: [value], weights: [1] });

export const stepOf = ({ nodes }: Axis): number => nodes[1]! - nodes[0]!;

/** The same axis with a node between every two. */
export const halved = (of: Axis): Axis =>
  of.nodes.length === 1
    ? of
    : axis(of.nodes[0]!, stepOf(of) / 2, 2 * of.nodes.length - 1, of.weights[0]! < of.weights[1]!);

/** What a sum over the grid has found of one figure: its share at each node, mean and sd. */
export type Marginal = { share: Float64Array; mean: number; sd: number };

/** Marginals of weights over a grid, mu fastest, then omega, c, x. */
export function marginals(grid: PlainGrid, weight: Float64Array): Record<keyof PlainGrid, Marginal> {
  let stride = 1;
  const found = {} as Record<keyof PlainGrid, Marginal>;
  for (const name of axisNames) {
    const { nodes } = grid[name];
    const share = new Float64Array(nodes.length);
    for (let i = 0; i < weight.length; i++) {
      const node = Math.floor(i / stride) % nodes.length;
      share[node] = share[node]! + weight[i]!;
    }
    stride *= nodes.length;
    const mean = nodes.reduce((sum, value, i) => sum + share[i]! * value, 0);
    const square = nodes.reduce((sum, value, i) => sum + share[i]! * (value - mean) ** 2, 0);
    found[name] = { share, mean, sd: Math.sqrt(square) };
  }
  return found;
}

/** An axis whose end node holds more of the heaviest's than this was laid too short. */
const OPEN_SHARE = 2e-3;

/**
 * How wide steps may be, and how wide they are laid where they were wider, in sd of what was found; an axis reaches to where the share
 * of a node has fallen to `leastShare` of the heaviest's: of a bell, at 3e-4 to 4 sd.
 */
export type Fineness = { most: number; laid: number; leastShare: number };

/** The axis to try next, or null: its steps are no wider than asked, and its open ends hold nothing. */
export function refined(
  name: keyof PlainGrid,
  of: Axis,
  { share, mean, sd }: Marginal,
  { most: mostOfSd, laid, leastShare }: Fineness,
): Axis | null {
  const { nodes } = of;
  if (nodes.length === 1) return null;
  const step = stepOf(of);
  const most = share.reduce((top, value) => Math.max(top, value), 0);
  const openLow = share[0]! > OPEN_SHARE * most && !(beginsAtZero[name] && nodes[0] === 0);
  const openHigh = share.at(-1)! > OPEN_SHARE * most;
  const fine = step <= mostOfSd * sd;
  if (fine && !openLow && !openHigh) return null;
  // a bell narrower than the steps shows no sd of its own
  const wide = Math.max(sd, 0.4 * step);
  const next = fine ? step : laid * wide;
  // where the bell was met by a few nodes only, it reaches no further than this
  const reach = step < 1.4 * sd ? Number.POSITIVE_INFINITY : 6 * wide;
  const low = Math.max(nodes[0]! + step * fallsTo(leastShare * most, share), mean - reach);
  const high = Math.min(nodes.at(-1)! - step * fallsTo(leastShare * most, share.toReversed()), mean + reach);
  const from = openLow ? low - 2 * wide : low;
  const to = openHigh ? high + 2 * wide : high;
  if (beginsAtZero[name] && from <= 0) return axis(0, next, Math.ceil(to / next) + 1, true);
  return axis(from, next, Math.ceil((to - from) / next) + 1);
}

/** How many nodes from the first on hold less than `least`; between two a share is taken to go evenly in ln. */
function fallsTo(least: number, share: Float64Array): number {
  const k = share.findIndex((value) => value > least);
  if (k <= 0) return 0;
  const below = Math.max(share[k - 1]!, Number.MIN_VALUE);
  return k - Math.log(share[k]! / least) / Math.log(share[k]! / below);
}
