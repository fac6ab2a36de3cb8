/** Most nodes of ln rate a part is summed over. */
export const MOST_NODES = 64;
/** Laws of a part's ln rate: the like parts', and the odd ones'. */
export const MOST_LAWS = 2;

/**
 * Where one part at a time is summed. Kept and grown to the largest part met, so that nothing is allocated while parts are
 * counted; the fit runs in one thread and never re-enters. With n readings and d unknowns, at law r and node i:
 */
export type TiltRoom = {
  n: number;
  d: number;
  /** ln rate and rate at node i */
  beta: Float64Array;
  rate: Float64Array;
  /** ln weight, at r MOST_NODES + i */
  lnWeight: Float64Array;
  /** lower factor L of the readings' variance and L^-1 r, at (r MOST_NODES + i) n^2 and n */
  factor: Float64Array;
  whitened: Float64Array;
  /** k = C_.u / v and C' of law r, at r d and r d^2 */
  gain: Float64Array;
  covLaw: Float64Array;
  /** variance of the readings: R = fixed + b^2 scaled (lower triangles) */
  fixed: Float64Array;
  scaled: Float64Array;
  /** wear less the visits' mean errors, and how those means move with beta */
  bare: Float64Array;
  pull: Float64Array;
  /** sums over nodes: R^-1 r, the same times beta - m_u, and R^-1 r r^T R^-1 - R^-1 */
  alphas: Float64Array;
  alphasOff: Float64Array;
  spreads: Float64Array;
  /** passing work of n, n^2 and d n */
  alpha: Float64Array;
  inverse: Float64Array;
  reach: Float64Array;
  crossed: Float64Array;
  /** sums of z and z z^T about the cavity's mean */
  sum1: Float64Array;
  sum2: Float64Array;
};

const roomFor = (n: number, d: number): TiltRoom => {
  const held = MOST_LAWS * MOST_NODES;
  return {
    n,
    d,
    beta: new Float64Array(MOST_NODES),
    rate: new Float64Array(MOST_NODES),
    lnWeight: new Float64Array(held),
    factor: new Float64Array(held * n * n),
    whitened: new Float64Array(held * n),
    gain: new Float64Array(MOST_LAWS * d),
    covLaw: new Float64Array(MOST_LAWS * d * d),
    fixed: new Float64Array(n * n),
    scaled: new Float64Array(n * n),
    bare: new Float64Array(n),
    pull: new Float64Array(n),
    alphas: new Float64Array(n),
    alphasOff: new Float64Array(n),
    spreads: new Float64Array(n * n),
    alpha: new Float64Array(n),
    inverse: new Float64Array(n * n),
    reach: new Float64Array(n * d),
    crossed: new Float64Array(d),
    sum1: new Float64Array(d),
    sum2: new Float64Array(d * d),
  };
};

let kept = roomFor(4, 4);

/** Room for a part of n readings and d unknowns. */
export function tiltRoom(n: number, d: number): TiltRoom {
  if (n > kept.n || d > kept.d) kept = roomFor(Math.max(n, kept.n), Math.max(d, kept.d));
  return kept;
}
