import { LN_2PI } from '../maths/normal.ts';
import type { ClassFigures, PartSite } from './partSite.ts';
import { MOST_NODES, type TiltRoom, tiltRoom } from './tiltRoom.ts';

/**
 * One part against what everything else says of it (its cavity): the part's chance of its readings, and what is
 * then held of z = (u, e_1 .. e_V): u the ln rate to be expected of its machine, e the shared errors of its visits.
 *
 *   z ~ N(m, C);  beta = u + b,  b ~ sum_r f_r N(0, o_r^2)     the part's ln rate; law r = 2 are the odd parts
 *   y_j = X(h_j) + e_v(j) + gauge error                        X: Brownian wear, mean b t, variance tau0^2 + b^2 c^2 t
 *
 * beta is summed over equal nodes across its bell. At a node, and under one law, beta counts as one more reading, of u:
 * readings and beta together are normal, of variance [[S, a], [a^T, v]],
 *
 *   S_jl = tau0^2 + b^2 c^2 min(t_j, t_l) + C_ejel + s_j^2 [j = l],   a_j = C_ej u,   v = C_uu + o_r^2,   b = exp beta
 *   rho_j = y_j - m_ej - b t_j,   off = beta - m_u
 *
 * and all but the last row of its factor is the same for every law. With S = L L^T, p = L^-1 rho, q = L^-1 a, s = q^T q:
 *
 *   ln weight = ln f_r - ((n + 1) ln 2 pi + ln |S| + ln (v - s) + p^T p + (off - p^T q)^2 / (v - s)) / 2
 *   gamma = (p^T q - off) / (v - s),  P = S^-1 rho,  Q = S^-1 a
 *   z - m = C_.(e, u) (P + gamma Q, -gamma),   its variance C - C_.(e, u) [[S, a], [a^T, v]]^-1 C_(e, u).
 *
 * Doubt about hours adds b^2 slope^2 sd^2: to the reading's own variance, and, where it is the start that is
 * in doubt, to all readings alike (exact for power 1).
 * @source own derivation: conditional normals; T. P. Minka, "Expectation propagation for approximate Bayesian
 *   inference" (2001) for the use made of it
 */
export type Tilt = {
  /** ln of the chance of the part's readings under the cavity */
  lnZ: number;
  /** mean and variance of z once the readings are in: d, d x d */
  mean: Float64Array;
  cov: Float64Array;
  bellMean: number;
  bellSd: number;
  /** share of the weight on the two end nodes */
  ends: number;
  /** the nodes themselves, summed over the laws: what a forecast is made of; filled when asked for */
  nodes: TiltNodes;
};

export type TiltNodes = {
  count: number;
  lnWeight: Float64Array;
  beta: Float64Array;
  /** true wear at the last reading: mean and variance; without readings: at 0 h */
  wearMm: Float64Array;
  wearVar: Float64Array;
};

/** ln of all that a part's nodes weigh together. */
export function lnWeightOf({ count, lnWeight }: TiltNodes): number {
  let top = Number.NEGATIVE_INFINITY;
  for (let i = 0; i < count; i++) top = Math.max(top, lnWeight[i]!);
  let total = 0;
  for (let i = 0; i < count; i++) total += Math.exp(lnWeight[i]! - top);
  return top + Math.log(total);
}

/** Weight below exp of this, against the best node, counts for nothing. */
const LN_NOTHING = -30;

const nodeArray = () => new Float64Array(MOST_NODES);

/** The two laws of a part's ln rate about its machine's. */
export type PartLaws = { share: readonly number[]; sd: readonly number[] };

export const makeTilt = (): Tilt => ({
  lnZ: 0,
  mean: new Float64Array(1),
  cov: new Float64Array(1),
  bellMean: 0,
  bellSd: 0,
  ends: 0,
  nodes: { count: 0, lnWeight: nodeArray(), beta: nodeArray(), wearMm: nodeArray(), wearVar: nodeArray() },
});

/**
 * Weighs the part's chance at equal nodes of ln rate: fills the bell and ln Z of `out`. What the nodes make of z or of the part's
 * wear is asked for afterwards: {@link sumUnknowns}, {@link keepNodes}. Ask after {@link setReadings}.
 * @param mU mean of the cavity on u
 * @param varU variance of the cavity on u
 * @param centre middle node; nodes run `halfWidth` either way
 */
export function weighBell(
  part: PartSite,
  laws: PartLaws,
  mU: number,
  varU: number,
  centre: number,
  halfWidth: number,
  nodeCount: number,
  out: Tilt,
): void {
  const room = tiltRoom(part.n, part.d);
  const spacing = (2 * halfWidth) / (nodeCount - 1);
  let top = Number.NEGATIVE_INFINITY;
  setLaws(room, laws);
  const growth = Math.exp(spacing);
  let rate = Math.exp(centre - halfWidth);
  for (let i = 0; i < nodeCount; i++) {
    room.beta[i] = centre - halfWidth + i * spacing;
    room.rate[i] = rate;
    rate *= growth;
    top = Math.max(top, weighNode(room, part, i, mU, varU, laws.share.length));
  }
  room.nodeCount = nodeCount;
  room.lnTop = top;
  sumBell(room, laws.share.length, top, centre, nodeCount, spacing, out);
}

/**
 * Lays a part against its cavity. What is the same at every node: wear less the visits' errors, a, and the two parts of S.
 * @param mean of the cavity on z
 * @param cov of the cavity on z
 */
export function setReadings(part: PartSite, figures: ClassFigures, mean: Float64Array, cov: Float64Array): void {
  const { n, d, ownVisit, t, slope, noiseVar, hoursVar, wearMm, newSizeVar, startHoursVar } = part;
  const { fixed, scaled, bare, withU } = tiltRoom(n, d);
  const c2 = figures.pathScatter ** 2;
  for (let j = 0; j < n; j++) {
    const ej = ownVisit[j]!;
    bare[j] = wearMm[j]! - (ej > 0 ? mean[ej]! : 0);
    withU[j] = ej > 0 ? cov[ej * d]! : 0;
    for (let l = 0; l <= j; l++) {
      const el = ownVisit[l]!;
      fixed[j * n + l] = newSizeVar + (ej > 0 && el > 0 ? cov[ej * d + el]! : 0);
      scaled[j * n + l] = c2 * t[l]! + startHoursVar * slope[j]! * slope[l]!;
    }
    fixed[j * n + j] = fixed[j * n + j]! + noiseVar[j]!;
    scaled[j * n + j] = scaled[j * n + j]! + hoursVar[j]! * slope[j]! ** 2;
  }
}

function setLaws({ lnShare, lawVar }: TiltRoom, { share, sd }: PartLaws): void {
  for (let law = 0; law < share.length; law++) {
    lnShare[law] = Math.log(share[law]!);
    lawVar[law] = sd[law]! * sd[law]!;
  }
}

/**
 * At one node: L, p, q, and under each law its ln weight, gamma and 1 / (v - s).
 * S is at least the reading's own variance, and v - s at least the law's, so no pivot may be less: that keeps wild rates from
 * breaking the root.
 * @returns the highest ln weight
 */
function weighNode(room: TiltRoom, part: PartSite, i: number, mU: number, varU: number, lawCount: number): number {
  const { n, d, t, noiseVar } = part;
  const { fixed, scaled, bare, withU, factor, whitened, across, lnShare, lawVar, weight, pull, sharpness } = room;
  const f = i * n * n;
  const w = i * n;
  const b = room.rate[i]!;
  const b2 = b * b;
  const shared = d > 1;
  let lnDet = 0;
  let product = 1;
  let pp = 0;
  let pq = 0;
  let s = 0;
  for (let j = 0; j < n; j++) {
    const row = j * n;
    let rho = bare[j]! - b * t[j]!;
    let a = withU[j]!;
    let pivot = fixed[row + j]! + b2 * scaled[row + j]!;
    for (let l = 0; l < j; l++) {
      let entry = fixed[row + l]! + b2 * scaled[row + l]!;
      const other = f + l * n;
      for (let k = 0; k < l; k++) entry -= factor[f + row + k]! * factor[other + k]!;
      entry *= factor[other + l]!;
      factor[f + row + l] = entry;
      pivot -= entry * entry;
      rho -= entry * whitened[w + l]!;
      if (shared) a -= entry * across[w + l]!;
    }
    const least = noiseVar[j]!;
    if (!(pivot > least)) pivot = least;
    const perRoot = 1 / Math.sqrt(pivot);
    factor[f + row + j] = perRoot;
    rho *= perRoot;
    whitened[w + j] = rho;
    pp += rho * rho;
    if (shared) {
      a *= perRoot;
      across[w + j] = a;
      pq += rho * a;
      s += a * a;
    }
    product *= pivot;
    if (product < 1e-200 || product > 1e200) {
      lnDet += Math.log(product);
      product = 1;
    }
  }
  const readings = lnDet + pp + (n + 1) * LN_2PI;
  const left = room.beta[i]! - mU - pq;
  const restOfU = Math.max(varU - s, 0);
  let top = Number.NEGATIVE_INFINITY;
  for (let law = 0; law < lawCount; law++) {
    const rest = restOfU + lawVar[law]!;
    const at = law * MOST_NODES + i;
    const ln = lnShare[law]! - 0.5 * (readings + Math.log(product * rest) + (left * left) / rest);
    weight[at] = ln;
    pull[at] = -left / rest;
    sharpness[at] = 1 / rest;
    if (ln > top) top = ln;
  }
  return top;
}

function sumBell(
  room: TiltRoom,
  lawCount: number,
  top: number,
  centre: number,
  nodeCount: number,
  spacing: number,
  out: Tilt,
): void {
  const { weight: weights, beta } = room;
  let sum = 0;
  let first = 0;
  let second = 0;
  let ends = 0;
  for (let law = 0; law < lawCount; law++)
    for (let i = 0; i < nodeCount; i++) {
      const at = law * MOST_NODES + i;
      const ln = weights[at]! - top;
      const weight = ln > LN_NOTHING ? Math.exp(ln) : 0;
      weights[at] = weight;
      const off = beta[i]! - centre;
      sum += weight;
      first += weight * off;
      second += weight * off * off;
      if (i === 0 || i === nodeCount - 1) ends += weight;
    }
  out.lnZ = top + Math.log(sum * spacing);
  out.bellMean = centre + first / sum;
  out.bellSd = Math.sqrt(Math.max(0, second / sum - (first / sum) ** 2));
  out.ends = ends / sum;
}

/** Mean and variance of z over all laws and nodes: m + C x, C + C X C - (C x)(C x)^T, x and X the sums by unknown over the weight. */
export function sumUnknowns(part: PartSite, mean: Float64Array, cov: Float64Array, laws: PartLaws, out: Tilt): void {
  const { d } = part;
  const room = tiltRoom(part.n, d);
  if (out.mean.length < d) {
    out.mean = new Float64Array(d);
    out.cov = new Float64Array(d * d);
  }
  const sum = sumNodes(room, part, laws.share.length, room.nodeCount);
  const { first, second, reach } = room;
  for (let a = 0; a < d; a++) {
    let shift = 0;
    for (let b = 0; b < d; b++) {
      shift += cov[a * d + b]! * first[b]!;
      let entry = 0;
      for (let k = 0; k < d; k++) entry += cov[a * d + k]! * second[k * d + b]!;
      reach[a * d + b] = entry;
    }
    out.mean[a] = shift / sum;
  }
  for (let a = 0; a < d; a++)
    for (let b = 0; b <= a; b++) {
      let entry = 0;
      for (let k = 0; k < d; k++) entry += reach[a * d + k]! * cov[b * d + k]!;
      entry = cov[a * d + b]! + entry / sum - out.mean[a]! * out.mean[b]!;
      out.cov[a * d + b] = entry;
      out.cov[b * d + a] = entry;
    }
  for (let a = 0; a < d; a++) out.mean[a] = mean[a]! + out.mean[a]!;
}

/**
 * Sums over nodes and laws, by unknown: x = (P + gamma Q, -gamma), and x x^T less the inverse of [[S, a], [a^T, v]].
 * @returns the whole weight
 */
function sumNodes(room: TiltRoom, part: PartSite, lawCount: number, nodeCount: number): number {
  const { n, d, ownVisit } = part;
  const { weight: weights, pull, sharpness, alphas, spreads, crossed, first, second } = room;
  alphas.fill(0, 0, n);
  crossed.fill(0, 0, n);
  spreads.fill(0, 0, n * n);
  let sum = 0;
  let pulls = 0;
  let squares = 0;
  for (let i = 0; i < nodeCount; i++) {
    let weight = 0;
    let byPull = 0;
    let bySquare = 0;
    for (let at = i; at < lawCount * MOST_NODES; at += MOST_NODES) {
      const own = weights[at]!;
      const gamma = pull[at]!;
      weight += own;
      byPull += own * gamma;
      bySquare += own * (gamma * gamma - sharpness[at]!);
    }
    if (weight === 0) continue;
    sum += weight;
    pulls += byPull;
    squares += bySquare;
    if (d > 1) addReadings(room, n, i, weight, byPull, bySquare);
  }
  first.fill(0, 0, d);
  second.fill(0, 0, d * d);
  first[0] = -pulls;
  second[0] = squares;
  if (d > 1)
    for (let j = 0; j < n; j++) {
      const ej = ownVisit[j]!;
      if (ej === 0) continue;
      first[ej] = first[ej]! + alphas[j]!;
      second[ej] = second[ej]! - crossed[j]!;
      second[ej * d] = second[ej * d]! - crossed[j]!;
      for (let l = 0; l < n; l++) {
        const el = ownVisit[l]!;
        if (el > 0) second[ej * d + el] = second[ej * d + el]! + (l <= j ? spreads[j * n + l]! : spreads[l * n + j]!);
      }
    }
  return sum;
}

/** One node's P and Q, with the weights of its laws, of their gammas, and of gamma^2 - 1 / (v - s). */
function addReadings(room: TiltRoom, n: number, i: number, weight: number, byPull: number, bySquare: number): void {
  const { factor, whitened, across, inverse, alpha, alphaU, alphas, crossed, spreads } = room;
  const f = i * n * n;
  const w = i * n;
  // rows of L^-1
  for (let j = 0; j < n; j++) {
    const row = f + j * n;
    const perRoot = factor[row + j]!;
    for (let l = 0; l < j; l++) {
      let entry = 0;
      for (let k = l; k < j; k++) entry -= factor[row + k]! * inverse[k * n + l]!;
      inverse[j * n + l] = entry * perRoot;
    }
    inverse[j * n + j] = perRoot;
  }
  for (let j = 0; j < n; j++) {
    let p = 0;
    let q = 0;
    for (let k = j; k < n; k++) {
      const entry = inverse[k * n + j]!;
      p += entry * whitened[w + k]!;
      q += entry * across[w + k]!;
    }
    alpha[j] = p;
    alphaU[j] = q;
    alphas[j] = alphas[j]! + weight * p + byPull * q;
    crossed[j] = crossed[j]! + byPull * p + bySquare * q;
    for (let l = 0; l <= j; l++) {
      const pl = alpha[l]!;
      const ql = alphaU[l]!;
      let entry = p * pl;
      for (let k = j; k < n; k++) entry -= inverse[k * n + j]! * inverse[k * n + l]!;
      spreads[j * n + l] = spreads[j * n + l]! + weight * entry + byPull * (p * ql + q * pl) + bySquare * q * ql;
    }
  }
}

/**
 * All nodes with their wear, the laws of a node joined into one by mean and variance. True wear at the last reading, given one
 * node: with x_j the covariance of X(h_n) and reading j, l = L^-1 x:
 *   mean b t_n + l^T p + gamma l^T q,  variance tau0^2 + b^2 c^2 t_n - l^T l - (l^T q)^2 / (v - s)
 */
export function keepNodes(part: PartSite, figures: ClassFigures, laws: PartLaws, nodes: TiltNodes): void {
  const room = tiltRoom(part.n, part.d);
  const { nodeCount, lnTop } = room;
  const lawCount = laws.share.length;
  const { n, d, t, slope } = part;
  const { factor, whitened, across, alpha: passage, weight: weights, pull, sharpness } = room;
  const c2 = figures.pathScatter ** 2;
  // a part never read, whose start is in doubt: the slope of time over its whole life
  const timeLast = n > 0 ? t[n - 1]! : 0;
  const slopeLast = n > 0 ? slope[n - 1]! : part.lifeSlope;
  nodes.count = nodeCount;
  for (let i = 0; i < nodeCount; i++) {
    nodes.beta[i] = room.beta[i]!;
    nodes.lnWeight[i] = Number.NEGATIVE_INFINITY;
    let sum = 0;
    let gammas = 0;
    let squares = 0;
    let sharp = 0;
    for (let at = i; at < lawCount * MOST_NODES; at += MOST_NODES) {
      const weight = weights[at]!;
      const gamma = pull[at]!;
      sum += weight;
      gammas += weight * gamma;
      squares += weight * gamma * gamma;
      sharp += weight * sharpness[at]!;
    }
    if (sum === 0) continue;
    const b = room.rate[i]!;
    const b2 = b * b;
    const f = i * n * n;
    const w = i * n;
    let wear = b * timeLast;
    let byU = 0;
    let variance = part.newSizeVar + b2 * (c2 * timeLast + part.startHoursVar * slopeLast * slopeLast);
    for (let j = 0; j < n; j++) {
      const row = f + j * n;
      let entry = part.newSizeVar + b2 * (c2 * t[j]! + part.startHoursVar * slope[j]! * slopeLast);
      for (let k = 0; k < j; k++) entry -= factor[row + k]! * passage[k]!;
      entry *= factor[row + j]!;
      passage[j] = entry;
      wear += entry * whitened[w + j]!;
      if (d > 1) byU += entry * across[w + j]!;
      variance -= entry * entry;
    }
    const gamma = gammas / sum;
    const apart = Math.max(0, squares / sum - gamma * gamma);
    nodes.lnWeight[i] = lnTop + Math.log(sum);
    nodes.wearMm[i] = wear + gamma * byU;
    nodes.wearVar[i] = Math.max(0, variance - (byU * byU * sharp) / sum) + byU * byU * apart;
  }
}
