import { normalLattice } from '../maths/lattice.ts';
import type { Mode } from '../maths/newtonMode.ts';
import { LN_2PI } from '../maths/normal.ts';
import { symmetricEigen } from '../maths/symmetricEigen.ts';

/** Points of a posterior with weights that carry it, up to a constant: sum of exp(lnWeight) / count is the evidence. */
export type CloudPoint = { x: number[]; lnWeight: number };

/** A normal with its own width on either side of each axis: where points of the cloud are laid. */
type Proposal = {
  centre: readonly number[];
  /** one row a coordinate; column a is the step of 1 along axis a. The axes are at right angles */
  axes: readonly (readonly number[])[];
  sides: readonly { up: number; down: number }[];
};

/** Points are laid a little wider than the posterior looks, so that its tails are met. */
const SPREAD = 1.1;
/** With fewer points than this share counting, the mode was a poor guide and the cloud is laid again about its own middle. */
const ENOUGH_COUNTING = 0.4;
const MOST_COUNTED_SHARE = 0.1;

/**
 * A cloud about the mode: importance weights on a lattice stretched to the sides of the top. Where few of its points
 * carry all the weight (a bent or lopsided top) a second one is laid about the first one's mean, with its spread, and
 * both are weighed together.
 * @param lnPosterior asked once a point, in a fixed order
 * @source importance sampling on a rank-1 lattice; weights after E. Veach and L. Guibas, "Optimally combining sampling
 *   techniques", SIGGRAPH 1995 (balance heuristic)
 */
export function figureCloud(mode: Mode, lnPosterior: (x: readonly number[]) => number, count: number): CloudPoint[] {
  const about = aboutMode(mode, lnPosterior);
  const first = lay(about, lnPosterior, count);
  const weighed = weigh(first, [about]);
  if (counting(weighed) >= ENOUGH_COUNTING * count) return weighed;
  const again = aboutCloud(weighed);
  const second = lay(again, lnPosterior, count);
  return weigh([...first, ...second], [about, again]);
}

function aboutMode(mode: Mode, lnPosterior: (x: readonly number[]) => number): Proposal {
  const side = (axis: number, sign: number): number => {
    const x = mode.x.map((entry, i) => entry + mode.axes[i]![axis]! * 1.5 * sign);
    const drop = mode.value - lnPosterior(x);
    return Math.min(2.5, Math.max(0.5, drop > 0 ? 1.5 / Math.sqrt(2 * drop) : 2.5));
  };
  return {
    centre: mode.x,
    axes: mode.axes,
    sides: mode.x.map((_, axis) => ({ up: side(axis, 1), down: side(axis, -1) })),
  };
}

/** Mean and spread of a weighed cloud, no point of which may count for more than a tenth. */
function aboutCloud(points: readonly CloudPoint[]): Proposal {
  const weights = shares(points).map((share) => Math.min(share, MOST_COUNTED_SHARE));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const centre = points[0]!.x.map(
    (_, i) => points.reduce((sum, point, n) => sum + weights[n]! * point.x[i]!, 0) / total,
  );
  const cov = centre.map((ci, i) =>
    centre.map(
      (cj, j) =>
        points.reduce((sum, point, n) => sum + weights[n]! * (point.x[i]! - ci) * (point.x[j]! - cj), 0) / total +
        (i === j ? 0.01 : 0),
    ),
  );
  const { values, vectors } = symmetricEigen(cov);
  return {
    centre,
    axes: centre.map((_, i) => vectors.map((vector, a) => vector[i]! * Math.sqrt(values[a]!))),
    sides: centre.map(() => ({ up: 1.1, down: 1.1 })),
  };
}

type Laid = { x: number[]; lnPosterior: number };

function lay(at: Proposal, lnPosterior: (x: readonly number[]) => number, count: number): Laid[] {
  return normalLattice(count, at.centre.length).map((row) => {
    const z = row.map((entry, axis) => SPREAD * entry * (entry >= 0 ? at.sides[axis]!.up : at.sides[axis]!.down));
    const x = at.centre.map((entry, i) => entry + z.reduce((sum, by, axis) => sum + at.axes[i]![axis]! * by, 0));
    return { x, lnPosterior: lnPosterior(x) };
  });
}

const weigh = (points: readonly Laid[], proposals: readonly Proposal[]): CloudPoint[] =>
  points.map(({ x, lnPosterior }) => {
    const densities = proposals.map((at) => lnDensity(at, x));
    const top = Math.max(...densities);
    const mean = densities.reduce((sum, density) => sum + Math.exp(density - top), 0) / densities.length;
    return { x, lnWeight: lnPosterior - top - Math.log(mean) };
  });

/** ln density with which a proposal lays a point at x. */
function lnDensity(at: Proposal, x: readonly number[]): number {
  let ln = 0;
  for (let axis = 0; axis < at.centre.length; axis++) {
    let along = 0;
    let square = 0;
    for (let i = 0; i < x.length; i++) {
      along += at.axes[i]![axis]! * (x[i]! - at.centre[i]!);
      square += at.axes[i]![axis]! ** 2;
    }
    const z = along / square;
    const width = SPREAD * (z >= 0 ? at.sides[axis]!.up : at.sides[axis]!.down);
    ln -= 0.5 * (LN_2PI + (z / width) ** 2 + Math.log(square)) + Math.log(width);
  }
  return ln;
}

const shares = (points: readonly CloudPoint[]): number[] => {
  const top = points.reduce((most, point) => Math.max(most, point.lnWeight), Number.NEGATIVE_INFINITY);
  const weights = points.map((point) => Math.exp(point.lnWeight - top));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
};

/** How many points the weights amount to: 1 / sum of squared shares. */
const counting = (points: readonly CloudPoint[]): number =>
  1 / shares(points).reduce((sum, share) => sum + share * share, 0);
