import { LN_2PI } from '../maths/normal.ts';
import { symmetricEigen } from '../maths/symmetricEigen.ts';

/** Points of a posterior with weights that carry it, up to a constant: sum of exp(lnWeight) / count is the evidence. */
export type CloudPoint = { x: number[]; lnWeight: number };

/** A cloud; where a like posterior is to be expected; whether it is to be trusted: a surface has settled, some point weighs something. */
export type Cloud = { cloud: CloudPoint[]; found: Proposal; settled: boolean };

/** A normal with its own width on either side of each axis: where points are laid. */
export type Proposal = {
  readonly centre: readonly number[];
  /** one row a coordinate; column a is the step of 1 along axis a. The axes are at right angles */
  readonly axes: readonly (readonly number[])[];
  readonly sides: readonly { up: number; down: number }[];
};

/** The normal of a proposal's own middle widths. */
export const normalLike = ({ centre, axes, sides }: Proposal): Proposal => ({
  centre,
  axes: axes.map((row) => row.map((entry, a) => entry * 0.5 * (sides[a]!.up + sides[a]!.down))),
  sides: centre.map(() => ({ up: 1, down: 1 })),
});

/** How wide one normal is along an axis of another, in that one's widths. */
export const spreadAlong = (of: Proposal, at: Proposal, axis: number): number => {
  const square = at.axes.reduce((sum, row) => sum + row[axis]! ** 2, 0);
  const across = of.centre.map(
    (_, own) => at.axes.reduce((sum, row, i) => sum + row[axis]! * of.axes[i]![own]!, 0) / square,
  );
  return Math.hypot(...across);
};

/** How far apart two middles lie, in spreads of the second. */
export const apart = (a: Proposal, b: Proposal): number =>
  Math.hypot(...b.centre.map((_, axis) => along(b, a.centre, axis)));

/** A proposal without its last coordinate. */
export function withoutLast(of: Proposal): Proposal {
  const kept = of.centre.length - 1;
  const cov = Array.from({ length: kept }, (_, i) =>
    Array.from({ length: kept }, (_, j) =>
      of.centre.reduce((sum, _, axis) => {
        const width = 0.5 * (of.sides[axis]!.up + of.sides[axis]!.down);
        return sum + of.axes[i]![axis]! * of.axes[j]![axis]! * width * width;
      }, 0),
    ),
  );
  return normalOf(of.centre.slice(0, kept), cov);
}

/** Steps along an axis at which x lies. */
export function along(at: Proposal, x: readonly number[], axis: number): number {
  const row = stepsOf(at)[axis]!;
  let sum = 0;
  for (let i = 0; i < row.length; i++) sum += row[i]! * (x[i]! - at.centre[i]!);
  return sum;
}

/** The inverse of a proposal's axes, which are at right angles: worked out once of each. */
function stepsOf(at: Proposal): readonly Float64Array[] {
  const known = steps.get(at);
  if (known) return known;
  const made = at.centre.map((_, axis) => {
    const square = at.axes.reduce((sum, row) => sum + row[axis]! ** 2, 0);
    return Float64Array.from(at.axes, (row) => row[axis]! / square);
  });
  steps.set(at, made);
  return made;
}

const steps = new WeakMap<Proposal, readonly Float64Array[]>();

export const lnScale = (at: Proposal): number =>
  at.centre.reduce(
    (sum, _, axis) => sum - 0.5 * (LN_2PI + Math.log(at.axes.reduce((square, row) => square + row[axis]! ** 2, 0))),
    0,
  );

/** No point counts for more than this share of a mean, however little the proposal was like the surface. */
const MOST_COUNTED_SHARE = 0.1;

/** @returns null when none of the points weighs anything */
export function momentsOf(points: readonly CloudPoint[], mostShare = MOST_COUNTED_SHARE): Proposal | null {
  if (!weighsAnything(points)) return null;
  const weights = shares(points).map((share) => Math.min(share, mostShare));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const centre = points[0]!.x.map(
    (_, i) => points.reduce((sum, point, n) => sum + weights[n]! * point.x[i]!, 0) / total,
  );
  const cov = centre.map((ci, i) =>
    centre.map(
      (cj, j) =>
        points.reduce((sum, point, n) => sum + weights[n]! * (point.x[i]! - ci) * (point.x[j]! - cj), 0) / total +
        (i === j ? 1e-6 : 0),
    ),
  );
  return normalOf(centre, cov);
}

function normalOf(centre: readonly number[], cov: readonly (readonly number[])[]): Proposal {
  const { values, vectors } = symmetricEigen(cov);
  return {
    centre,
    axes: centre.map((_, i) => vectors.map((vector, a) => vector[i]! * Math.sqrt(Math.max(values[a]!, 1e-6)))),
    sides: centre.map(() => ({ up: 1, down: 1 })),
  };
}

export const weighsAnything = (points: readonly CloudPoint[]): boolean =>
  points.some(({ lnWeight }) => Number.isFinite(lnWeight));

/** What each point weighs, as a share of all. */
export const shares = (points: readonly Pick<CloudPoint, 'lnWeight'>[]): number[] => {
  const top = points.reduce((most, point) => Math.max(most, point.lnWeight), Number.NEGATIVE_INFINITY);
  const weights = points.map((point) => Math.exp(point.lnWeight - top));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  return weights.map((weight) => weight / total);
};
