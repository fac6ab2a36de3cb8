/** Most nodes of ln rate a part is summed over. */
export const MOST_NODES = 128;
/** Laws of a part's ln rate: the like parts', and the odd ones'. */
export const MOST_LAWS = 2;

/**
 * Where one part at a time is summed. Kept and grown to the largest part met, so that nothing is allocated while parts are
 * counted; the fit runs in one thread and never re-enters. With n readings and d unknowns, at law r and node i:
 */
export type TiltRoom = {
  n: number;
  d: number;
  /** nodes laid, and the highest ln weight of one */
  nodeCount: number;
  lnTop: number;
  /** of each law: ln of its share, and its variance o_r^2 */
  lnShare: Float64Array;
  lawVar: Float64Array;
  /** ln rate and rate at node i */
  beta: Float64Array;
  rate: Float64Array;
  /** ln weight, then the weight itself, at r MOST_NODES + i */
  weight: Float64Array;
  /** what u has yet to move to come to the node, in its own variances: gamma, and 1 / (v - s), at r MOST_NODES + i */
  pull: Float64Array;
  sharpness: Float64Array;
  /** at node i: lower factor L of S at i n^2, one over its diagonal in that one's place; L^-1 rho and L^-1 a at i n */
  factor: Float64Array;
  whitened: Float64Array;
  across: Float64Array;
  /** variance of the readings: S = fixed + b^2 scaled (lower triangles) */
  fixed: Float64Array;
  scaled: Float64Array;
  /** wear less the visits' mean errors; the readings' covariance with u: a */
  bare: Float64Array;
  withU: Float64Array;
  /** sums over nodes and laws: of P + gamma Q, of its square less the inverse, and of its products with gamma */
  alphas: Float64Array;
  spreads: Float64Array;
  crossed: Float64Array;
  /** passing work: P, Q, and L^-1 */
  alpha: Float64Array;
  alphaU: Float64Array;
  inverse: Float64Array;
  /** the same sums by unknown: d, and d^2 twice */
  first: Float64Array;
  second: Float64Array;
  reach: Float64Array;
};

const roomFor = (n: number, d: number): TiltRoom => {
  const both = MOST_LAWS * MOST_NODES;
  return {
    n,
    d,
    nodeCount: 0,
    lnTop: 0,
    lnShare: new Float64Array(MOST_LAWS),
    lawVar: new Float64Array(MOST_LAWS),
    beta: new Float64Array(MOST_NODES),
    rate: new Float64Array(MOST_NODES),
    weight: new Float64Array(both),
    pull: new Float64Array(both),
    sharpness: new Float64Array(both),
    factor: new Float64Array(MOST_NODES * n * n),
    whitened: new Float64Array(MOST_NODES * n),
    across: new Float64Array(MOST_NODES * n),
    fixed: new Float64Array(n * n),
    scaled: new Float64Array(n * n),
    bare: new Float64Array(n),
    withU: new Float64Array(n),
    alphas: new Float64Array(n),
    spreads: new Float64Array(n * n),
    crossed: new Float64Array(n),
    alpha: new Float64Array(n),
    alphaU: new Float64Array(n),
    inverse: new Float64Array(n * n),
    first: new Float64Array(d),
    second: new Float64Array(d * d),
    reach: new Float64Array(d * d),
  };
};

let kept = roomFor(4, 4);

/** Room for a part of n readings and d unknowns. */
export function tiltRoom(n: number, d: number): TiltRoom {
  if (n > kept.n || d > kept.d) kept = roomFor(Math.max(n, kept.n), Math.max(d, kept.d));
  return kept;
}
