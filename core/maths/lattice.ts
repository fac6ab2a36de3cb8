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
 * Points spread evenly over a standard normal of some dimensions, the first at its middle: no random numbers.
 *   z_nj = normalQuantile(frac(1/2 + n f^-j)),  n = 0 .. count - 1,  j = 1 .. dimensions
 * @returns one row a point
 * @source the lattice of {@link goldenRoot}, carried over to the normal by its quantiles
 */
export function normalLattice(count: number, dimensions: number): number[][] {
  const root = goldenRoot(dimensions);
  return Array.from({ length: count }, (_, n) =>
    Array.from({ length: dimensions }, (_, j) => normalQuantile((0.5 + n * root ** -(j + 1)) % 1)),
  );
}
