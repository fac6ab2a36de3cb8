import { choleskyInPlace } from './cholesky.ts';
import { normalQuantile } from './normal.ts';

/**
 * The root f > 1 of f^(d+1) = f + 1: for d = 1 the golden ratio.
 * @source M. Roberts, "The unreasonable effectiveness of quasirandom sequences" (2018), R_d sequence
 */
function goldenRoot(dimensions: number): number {
  let root = 2;
  for (let i = 0; i < 60; i++) root = (1 + root) ** (1 / (dimensions + 1));
  return root;
}

/**
 * Points spread evenly over a standard normal of some dimensions: no random numbers.
 *   z_nj = normalQuantile(frac(1/2 + n f^-j)),  n = from .. from + count - 1,  j = 1 .. dimensions
 * then moved and sheared so that they have mean 0, variance 1 and no correlation, as the normal has.
 * @param from further points of the same lattice begin where the last ones ended
 * @returns one row a point
 * @source the lattice of {@link goldenRoot}, carried over to the normal by its quantiles; matching of moments after
 *   R. E. Caflisch, "Monte Carlo and quasi-Monte Carlo methods", Acta Numerica 7 (1998), section 4.5
 */
export function normalLattice(count: number, dimensions: number, from = 0): readonly (readonly number[])[] {
  const name = `${count} ${dimensions} ${from}`;
  const kept = lattices.get(name) ?? worked(count, dimensions, from);
  lattices.set(name, kept);
  return kept;
}

/** The lattices asked for so far: a handful of sizes, each asked for class by class. */
const lattices = new Map<string, number[][]>();

function worked(count: number, dimensions: number, from: number): number[][] {
  const root = goldenRoot(dimensions);
  const points = Array.from({ length: count }, (_, n) =>
    Array.from({ length: dimensions }, (_, j) => normalQuantile((0.5 + (from + n) * root ** -(j + 1)) % 1)),
  );
  return count > 2 * dimensions ? whitened(points) : points;
}

/** The same points with mean 0 and unit variance: L^-1 (z - mean), L L^T their own variance. */
function whitened(points: readonly (readonly number[])[]): number[][] {
  const d = points[0]!.length;
  const mean = points[0]!.map((_, j) => points.reduce((sum, row) => sum + row[j]!, 0) / points.length);
  const cov = new Float64Array(d * d);
  for (const row of points)
    for (let i = 0; i < d; i++)
      for (let j = 0; j < d; j++)
        cov[i * d + j] = cov[i * d + j]! + ((row[i]! - mean[i]!) * (row[j]! - mean[j]!)) / points.length;
  if (Number.isNaN(choleskyInPlace(cov, d))) return points.map((row) => [...row]);
  return points.map((row) => {
    const z: number[] = [];
    for (let i = 0; i < d; i++) {
      let rest = row[i]! - mean[i]!;
      for (let j = 0; j < i; j++) rest -= cov[i * d + j]! * z[j]!;
      z.push(rest / cov[i * d + i]!);
    }
    return z;
  });
}
