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

/** Nodes along the axes of a normal, so many of its sd apart; they are followed down to this far below the top (ln). */
export type Mesh = { step: number; depth: number };

/** Enough to show where a posterior lies, and how wide it is. */
export const LOOK_MESH: Mesh = { step: 1.6, depth: 5 };

/** Enough to carry a posterior of so many coordinates: hours at limit are then good to about a thousandth. */
export const fineMesh = (coordinates: number): Mesh => ({ step: coordinates <= 3 ? 0.9 : 1.1, depth: 7 });

/** A grid is laid anew while a width of the normal it was laid by is off by more than this (ln). */
const OFF_WIDTH = 0.5;
const MOST_GRIDS = 3;
/** A grid of more nodes was laid by a normal far too narrow. */
const MOST_NODES = 4000;

/**
 * The posterior itself at equal nodes along the axes of a normal like it: sums over a smooth bell are then good to what lies
 * between the nodes, which falls off faster than any power of the step.
 * @source trapezium rule on the whole line: L. N. Trefethen and J. A. C. Weideman, "The exponentially convergent trapezoidal rule",
 *   SIAM Review 56 (2014)
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

/** Nodes from the centre outwards: those next to any that still weighs something are asked, wherever the posterior leads. */
function flooded(at: Proposal, lnPosterior: Posterior, { step, depth }: Mesh): CloudPoint[] {
  const axes = at.centre.map((_, axis) => axis);
  const nodes = new Map<number, { place: readonly number[]; x: number[]; ln: number }>();
  let top = Number.NEGATIVE_INFINITY;
  const ask = (place: readonly number[], near?: readonly number[]): void => {
    // one number for up to four coordinates
    const key = place.reduce((sum, entry) => MOST_NODES * sum + entry, 0);
    if (nodes.has(key)) return;
    const x = at.centre.map((entry, i) => entry + step * axes.reduce((sum, a) => sum + place[a]! * at.axes[i]![a]!, 0));
    const ln = lnPosterior(x, near ?? x);
    top = Math.max(top, ln);
    nodes.set(key, { place, x, ln });
  };
  ask(axes.map(() => 0));
  // a map is gone through with all that is added meanwhile
  for (const { place, x, ln } of nodes.values()) {
    if (!(ln > top - depth)) continue;
    if (nodes.size >= MOST_NODES) break;
    for (const axis of axes)
      for (const side of [-1, 1])
        ask(
          place.map((entry, a) => (a === axis ? entry + side : entry)),
          x,
        );
  }
  // evidence: the sum of posteriors times the volume of a cell, as a mean over the points
  const lnCell = -lnScale(at) - axes.length * (0.5 * LN_2PI - Math.log(step)) + Math.log(nodes.size);
  return [...nodes.values()].map(({ x, ln }) => ({ x, lnWeight: ln + lnCell }));
}
