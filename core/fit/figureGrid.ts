import { LN_2PI } from '../maths/normal.ts';
import {
  type Cloud,
  type CloudPoint,
  lnScale,
  momentsOf,
  normalLike,
  type Proposal,
  spreadAlong,
  weighsAnything,
} from './proposal.ts';

/** ln posterior at x. @param near a place asked before, of which x may begin; x itself where there is none */
export type Posterior = (x: readonly number[], near?: readonly number[]) => number;

/**
 * Nodes so many sd of a normal apart along its axes, and one in the middle of each cell; they are followed down to this far below the
 * top (ln).
 */
export type Mesh = { step: number; depth: number };

/** The mesh for a posterior of so many coordinates. */
export type MeshOf = (coordinates: number) => Mesh;

/** Enough to show where a posterior lies, and how wide it is. */
export const lookMesh: MeshOf = () => ({ step: 2, depth: 5 });

/**
 * Enough to carry a posterior: hours at limit are then good to a few thousandths. The more coordinates, the further the outermost
 * nodes reach beyond the depth.
 */
export const fineMesh: MeshOf = (coordinates) => FINE_MESHES[coordinates] ?? { step: 1.6, depth: 6 };

const FINE_MESHES: Record<number, Mesh> = {
  2: { step: 0.9, depth: 7 },
  3: { step: 1.1, depth: 7 },
  4: { step: 1.1, depth: 8 },
};

/** The same for one that is more like a normal, as that of many parts is. */
export const fairMesh: MeshOf = (coordinates) => FAIR_MESHES[coordinates] ?? { step: 1.6, depth: 5 };

const FAIR_MESHES: Record<number, Mesh> = {
  2: { step: 1, depth: 6 },
  3: { step: 1.2, depth: 6 },
  4: { step: 1.5, depth: 6 },
};

/** A grid is laid anew while a width of the normal it was laid by is off by more than this (ln). */
const OFF_WIDTH = 0.5;
const MOST_GRIDS = 3;
/** A grid of more nodes was laid by a normal far too narrow. */
const MOST_NODES = 10_000;
/** Further out than this no node is laid along an axis [half steps]. */
const MOST_HALVES = 200;

/**
 * The posterior itself at equal nodes along the axes of a normal like it and in the middle of their cells: sums over a smooth bell are
 * then good to what lies between the nodes, which falls off faster than any power of the step. Of four coordinates half as many
 * nodes do as on the axes alone.
 * @source trapezium rule on the whole line: L. N. Trefethen and J. A. C. Weideman, "The exponentially convergent trapezoidal rule",
 *   SIAM Review 56 (2014); middles of cells: J. H. Conway and N. J. A. Sloane, Sphere Packings, Lattices and Groups (1999), the dual of
 *   D_n in chapter 4 (cited from memory)
 */
export function figureGrid(expected: Proposal, lnPosterior: Posterior, mesh: Mesh): Cloud {
  let at = normalLike(expected);
  for (let laid = 1; ; laid++) {
    const cloud = flooded(at, lnPosterior, mesh);
    const found = momentsOf(cloud, 1) ?? at;
    const like = at.centre.every((_, axis) => Math.abs(Math.log(spreadAlong(found, at, axis))) < OFF_WIDTH);
    if (like || laid === MOST_GRIDS) return { cloud, found, settled: weighsAnything(cloud) };
    at = found;
  }
}

/**
 * Nodes from the centre outwards: those next to any that still weighs something are asked, wherever the posterior leads. One that a
 * bell of the grid's own width, laid through the two before it, puts far below all that weighs is not.
 */
function flooded(at: Proposal, lnPosterior: Posterior, { step, depth }: Mesh): CloudPoint[] {
  const axes = at.centre.map((_, axis) => axis);
  const half = 0.5 * step;
  const nodes = new Map<number, { place: readonly number[]; x: number[]; ln: number }>();
  const beside = (place: readonly number[], corner: readonly number[], times: number): number[] =>
    place.map((entry, a) => entry + times * corner[a]!);
  let top = Number.NEGATIVE_INFINITY;
  const ask = (place: readonly number[], near?: readonly number[]): void => {
    const key = numberOf(place);
    if (nodes.has(key) || place.some((entry) => Math.abs(entry) >= MOST_HALVES)) return;
    const x = at.centre.map((entry, i) => entry + half * axes.reduce((sum, a) => sum + place[a]! * at.axes[i]![a]!, 0));
    const ln = lnPosterior(x, near ?? x);
    top = Math.max(top, ln);
    nodes.set(key, { place, x, ln });
  };
  const corners = cornersOf(axes.length);
  ask(axes.map(() => 0));
  // a map is gone through with all that is added meanwhile
  for (const { place, x, ln } of nodes.values()) {
    if (!(ln > top - depth)) continue;
    if (nodes.size >= MOST_NODES) break;
    for (const corner of corners) {
      const before = nodes.get(numberOf(beside(place, corner, -1)));
      const like = before ? 2 * ln - before.ln - axes.length * half * half : ln;
      if (!(like < top - depth - FAR_BEYOND)) ask(beside(place, corner, 1), x);
    }
  }
  // evidence: the sum of posteriors times the volume a node stands for, half a cell, as a mean over the points
  const lnCell = -lnScale(at) - axes.length * (0.5 * LN_2PI - Math.log(step)) - Math.LN2 + Math.log(nodes.size);
  return [...nodes.values()].map(({ x, ln }) => ({ x, lnWeight: ln + lnCell }));
}

/** From the middle of a cell to its corners, in half steps. */
const cornersOf = (axes: number): number[][] =>
  axes === 0 ? [[]] : cornersOf(axes - 1).flatMap((corner) => [-1, 1].map((side) => [...corner, side]));

/** What lies so much further down than the depth (ln) weighs nothing. */
const FAR_BEYOND = 1;

/** One number of all coordinates of a place. */
const numberOf = (place: readonly number[]): number => place.reduce((sum, entry) => 2 * MOST_HALVES * sum + entry, 0);
