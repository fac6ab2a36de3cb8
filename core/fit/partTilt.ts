import { LN_2PI } from '../maths/normal.ts';
import type { ClassFigures, PartSite } from './partSite.ts';

/**
 * One part against what everything else says of it (its cavity): the part's chance of its readings, and what is
 * then held of z = (u, e_1 .. e_V): u the ln rate to be expected of its machine, e the shared errors of its visits.
 *
 *   beta = u + b,  b ~ sum_r f_r N(0, o_r^2)         the part's ln rate; law r = 2 are the odd parts
 *   y_j  = X(h_j) + e_v(j) + gauge error             X: Brownian wear, mean b t, variance tau0^2 + b^2 c^2 t
 *
 * Given beta and r all is normal; beta itself is summed over equal nodes across its bell.
 *
 *   v = C_uu + o_r^2;  k = C_.u / v;  m' = m + k (beta - m_u);  C' = C - k k^T v;  b = exp beta
 *   r_j = y_j - b t_j - m'_ej;   R_jl = tau0^2 + b^2 c^2 min(t_j, t_l) + C'_ejel + s_j^2 [j = l]
 *   ln weight = ln f_r - (ln 2 pi v + (beta - m_u)^2 / v) / 2 - (n ln 2 pi + ln |R| + r^T R^-1 r) / 2
 *   z: mean m' + C'_.e R^-1 r, variance C' - C'_.e R^-1 C'_e.
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
  /** the nodes themselves, summed over the laws: what a forecast is made of. Filled when asked for, instead of z */
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

export const MOST_NODES = 64;
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

// Work space, grown to the largest part met; the fit runs in one thread and never re-enters.
let room = { n: 0, d: 0 };
let fixed = new Float64Array(0);
let scaled = new Float64Array(0);
let chol = new Float64Array(0);
let inverse = new Float64Array(0);
let residual = new Float64Array(0);
let alpha = new Float64Array(0);
let bare = new Float64Array(0);
let pull = new Float64Array(0);
let passage = new Float64Array(0);
let gain = new Float64Array(0);
let covLaw = new Float64Array(0);
let sumAlpha = new Float64Array(0);
let sumAlphaOff = new Float64Array(0);
let sumSpread = new Float64Array(0);
let reach = new Float64Array(0);
let crossed = new Float64Array(0);
let sum1 = new Float64Array(0);
let sum2 = new Float64Array(0);

function makeRoom(n: number, d: number): void {
  if (n <= room.n && d <= room.d) return;
  room = { n: Math.max(n, room.n), d: Math.max(d, room.d) };
  const { n: rows, d: width } = room;
  fixed = new Float64Array(rows * rows);
  scaled = new Float64Array(rows * rows);
  chol = new Float64Array(rows * rows);
  inverse = new Float64Array(rows * rows);
  residual = new Float64Array(rows);
  alpha = new Float64Array(rows);
  bare = new Float64Array(rows);
  pull = new Float64Array(rows);
  passage = new Float64Array(rows);
  gain = new Float64Array(width);
  covLaw = new Float64Array(width * width);
  sumAlpha = new Float64Array(rows);
  sumAlphaOff = new Float64Array(rows);
  sumSpread = new Float64Array(rows * rows);
  reach = new Float64Array(width * rows);
  crossed = new Float64Array(width);
  sum1 = new Float64Array(width);
  sum2 = new Float64Array(width * width);
}

// Sums over nodes, all relative to exp(top): weight, and its moments about the centre of beta.
const total = { top: 0, weight: 0, beta: 0, beta2: 0, ends: 0 };
/** A node this much above `top` moves `top` there, so that no sum overflows. */
const HIGHEST_LN = 40;

/**
 * @param mean of the cavity on z
 * @param cov of the cavity on z
 * @param centre middle node of beta; nodes run `halfWidth` either way
 * @param keepNodes true fills `out.nodes`, false the mean and variance of z
 */
export function tilt(
  part: PartSite,
  figures: ClassFigures,
  laws: PartLaws,
  mean: Float64Array,
  cov: Float64Array,
  centre: number,
  halfWidth: number,
  nodeCount: number,
  keepNodes: boolean,
  out: Tilt,
): void {
  const { n, d } = part;
  makeRoom(n, d);
  if (out.mean.length !== d) {
    out.mean = new Float64Array(d);
    out.cov = new Float64Array(d * d);
  }
  if (keepNodes) {
    out.nodes.count = nodeCount;
    out.nodes.lnWeight.fill(Number.NEGATIVE_INFINITY);
  }
  total.top = Number.NEGATIVE_INFINITY;
  total.weight = 0;
  total.beta = 0;
  total.beta2 = 0;
  total.ends = 0;
  for (let a = 0; a < d; a++) sum1[a] = 0;
  for (let a = 0; a < d * d; a++) sum2[a] = 0;
  const spacing = (2 * halfWidth) / (nodeCount - 1);
  for (let law = 0; law < laws.share.length; law++) {
    if (laws.share[law]! <= 0) continue;
    const v = cov[0]! + laws.sd[law]! ** 2;
    for (let a = 0; a < d; a++) gain[a] = cov[a * d]! / v;
    for (let a = 0; a < d; a++)
      for (let b = 0; b < d; b++) covLaw[a * d + b] = cov[a * d + b]! - gain[a]! * gain[b]! * v;
    setReadings(part, figures, mean);
    const lnHead = Math.log(laws.share[law]!) - 0.5 * (LN_2PI + Math.log(v)) - 0.5 * n * LN_2PI;
    sumLaw(part, figures, mean[0]!, v, lnHead, centre, halfWidth, spacing, nodeCount, keepNodes ? out.nodes : null);
  }
  out.lnZ = total.top + Math.log(total.weight * spacing);
  const atMean = total.beta / total.weight;
  out.bellMean = centre + atMean;
  out.bellSd = Math.sqrt(Math.max(0, total.beta2 / total.weight - atMean * atMean));
  out.ends = total.ends / total.weight;
  if (keepNodes) return;
  for (let a = 0; a < d; a++) {
    const shiftA = sum1[a]! / total.weight;
    out.mean[a] = mean[a]! + shiftA;
    for (let b = 0; b < d; b++)
      out.cov[a * d + b] = sum2[a * d + b]! / total.weight - shiftA * (sum1[b]! / total.weight);
  }
}

/** Sums one law over the nodes of beta, from the middle one on: it is near the top, and the rest are weighed against it. */
function sumLaw(
  part: PartSite,
  figures: ClassFigures,
  mU: number,
  v: number,
  lnHead: number,
  centre: number,
  halfWidth: number,
  spacing: number,
  nodeCount: number,
  nodes: TiltNodes | null,
): void {
  const { n, d } = part;
  const shared = d > 1;
  let weights = 0;
  let offs = 0;
  let offs2 = 0;
  for (let j = 0; j < n; j++) {
    sumAlpha[j] = 0;
    sumAlphaOff[j] = 0;
  }
  for (let j = 0; j < n * n; j++) sumSpread[j] = 0;

  const middle = nodeCount >> 1;
  for (let i = 0; i < nodeCount; i++) {
    const node = (middle + i) % nodeCount;
    const at = node * spacing - halfWidth;
    const off = centre + at - mU;
    const b = Math.exp(centre + at);
    const lnWeight = lnHead - (0.5 * off * off) / v + lnChanceOfReadings(part, b, off);
    if (!(lnWeight > total.top + LN_NOTHING)) continue;
    if (lnWeight > total.top + HIGHEST_LN) {
      const fade = Math.exp(total.top - lnWeight);
      total.top = lnWeight;
      total.weight *= fade;
      total.beta *= fade;
      total.beta2 *= fade;
      total.ends *= fade;
      weights *= fade;
      offs *= fade;
      offs2 *= fade;
      for (let a = 0; a < d; a++) sum1[a] = sum1[a]! * fade;
      for (let a = 0; a < d * d; a++) sum2[a] = sum2[a]! * fade;
      for (let j = 0; j < n; j++) {
        sumAlpha[j] = sumAlpha[j]! * fade;
        sumAlphaOff[j] = sumAlphaOff[j]! * fade;
      }
      for (let j = 0; j < n * n; j++) sumSpread[j] = sumSpread[j]! * fade;
    }
    const weight = Math.exp(lnWeight - total.top);
    weights += weight;
    offs += weight * off;
    offs2 += weight * off * off;
    total.beta += weight * at;
    total.beta2 += weight * at * at;
    if (node === 0 || node === nodeCount - 1) total.ends += weight;
    if (nodes !== null) keepNode(part, figures, b, centre + at, node, lnWeight, nodes);
    else if (shared) addReadings(part, weight, off);
  }
  total.weight += weights;
  if (nodes === null) addLaw(part, weights, offs, offs2);
}

/**
 * The readings as they stand under the law in hand: variance in two pieces, R = fixed + b^2 scaled (lower triangles);
 * their wear less the visits' mean errors, and how those means move with beta.
 */
function setReadings(part: PartSite, figures: ClassFigures, mean: Float64Array): void {
  const { n, d } = part;
  const c2 = figures.pathScatter ** 2;
  for (let j = 0; j < n; j++) {
    const ej = part.ownVisit[j]!;
    bare[j] = part.wearMm[j]! - (ej > 0 ? mean[ej]! : 0);
    pull[j] = ej > 0 ? gain[ej]! : 0;
    for (let l = 0; l <= j; l++) {
      const el = part.ownVisit[l]!;
      fixed[j * n + l] = part.newSizeVar + (ej > 0 && el > 0 ? covLaw[ej * d + el]! : 0);
      scaled[j * n + l] = c2 * part.t[l]! + part.startHoursVar * part.slope[j]! * part.slope[l]!;
    }
    fixed[j * n + j] = fixed[j * n + j]! + part.noiseVar[j]!;
    scaled[j * n + j] = scaled[j * n + j]! + part.hoursVar[j]! * part.slope[j]! ** 2;
  }
}

/**
 * -(ln|R| + r^T R^-1 r) / 2, leaving L (R = L L^T) in `chol` and L^-1 r in `residual`.
 * R is at least the reading's own variance, so no pivot may be less: that keeps wild rates from breaking the root.
 */
function lnChanceOfReadings(part: PartSite, b: number, off: number): number {
  const { n, t, noiseVar } = part;
  const b2 = b * b;
  let lnDet = 0;
  let product = 1;
  let quad = 0;
  for (let j = 0; j < n; j++) {
    const row = j * n;
    let rest = bare[j]! - b * t[j]! - pull[j]! * off;
    let pivot = fixed[row + j]! + b2 * scaled[row + j]!;
    for (let l = 0; l < j; l++) {
      let entry = fixed[row + l]! + b2 * scaled[row + l]!;
      const other = l * n;
      for (let k = 0; k < l; k++) entry -= chol[row + k]! * chol[other + k]!;
      entry /= chol[other + l]!;
      chol[row + l] = entry;
      pivot -= entry * entry;
      rest -= entry * residual[l]!;
    }
    const least = noiseVar[j]!;
    if (!(pivot > least)) pivot = least;
    const root = Math.sqrt(pivot);
    chol[row + j] = root;
    rest /= root;
    residual[j] = rest;
    quad += rest * rest;
    product *= pivot;
    if (product < 1e-200 || product > 1e200) {
      lnDet += Math.log(product);
      product = 1;
    }
  }
  lnDet += Math.log(product);
  return -0.5 * (lnDet + quad);
}

/** Adds a node's alpha = R^-1 r, and alpha alpha^T - R^-1 (lower triangle), from `chol` and `residual`. */
function addReadings(part: PartSite, weight: number, off: number): void {
  const { n } = part;
  if (n === 1) {
    const root = chol[0]!;
    const a = residual[0]! / root;
    sumAlpha[0] = sumAlpha[0]! + weight * a;
    sumAlphaOff[0] = sumAlphaOff[0]! + weight * off * a;
    sumSpread[0] = sumSpread[0]! + weight * (a * a - 1 / (root * root));
    return;
  }
  // rows of L^-1, then alpha = L^-T (L^-1 r)
  for (let j = 0; j < n; j++) {
    const root = chol[j * n + j]!;
    for (let l = 0; l < j; l++) {
      let entry = 0;
      for (let k = l; k < j; k++) entry -= chol[j * n + k]! * inverse[k * n + l]!;
      inverse[j * n + l] = entry / root;
    }
    inverse[j * n + j] = 1 / root;
  }
  for (let j = 0; j < n; j++) {
    let a = 0;
    for (let k = j; k < n; k++) a += inverse[k * n + j]! * residual[k]!;
    alpha[j] = a;
    sumAlpha[j] = sumAlpha[j]! + weight * a;
    sumAlphaOff[j] = sumAlphaOff[j]! + weight * off * a;
  }
  for (let j = 0; j < n; j++)
    for (let l = 0; l <= j; l++) {
      let entry = alpha[j]! * alpha[l]!;
      for (let k = j; k < n; k++) entry -= inverse[k * n + j]! * inverse[k * n + l]!;
      sumSpread[j * n + l] = sumSpread[j * n + l]! + weight * entry;
    }
}

/**
 * Adds one law's z to the sums, about the cavity's mean. With off = beta - m_u and G = C'_.e, at each node
 *   z - m = k off + G alpha,  variance C' - G R^-1 G^T
 */
function addLaw(part: PartSite, weights: number, offs: number, offs2: number): void {
  const { n, d, ownVisit } = part;
  if (d === 1) {
    const k = gain[0]!;
    sum1[0] = sum1[0]! + k * offs;
    sum2[0] = sum2[0]! + covLaw[0]! * weights + k * k * offs2;
    return;
  }
  for (let a = 0; a < d; a++) {
    let first = gain[a]! * offs;
    let cross = 0;
    for (let j = 0; j < n; j++) {
      const ej = ownVisit[j]!;
      if (ej > 0) {
        first += covLaw[a * d + ej]! * sumAlpha[j]!;
        cross += covLaw[a * d + ej]! * sumAlphaOff[j]!;
      }
      let entry = 0;
      for (let l = 0; l < n; l++) {
        const el = ownVisit[l]!;
        if (el > 0) entry += (l <= j ? sumSpread[j * n + l]! : sumSpread[l * n + j]!) * covLaw[a * d + el]!;
      }
      reach[a * n + j] = entry;
    }
    sum1[a] = sum1[a]! + first;
    crossed[a] = cross;
  }
  for (let a = 0; a < d; a++)
    for (let b = 0; b <= a; b++) {
      let entry =
        covLaw[a * d + b]! * weights + gain[a]! * gain[b]! * offs2 + gain[b]! * crossed[a]! + gain[a]! * crossed[b]!;
      for (let j = 0; j < n; j++) {
        const ej = ownVisit[j]!;
        if (ej > 0) entry += covLaw[b * d + ej]! * reach[a * n + j]!;
      }
      sum2[a * d + b] = sum2[a * d + b]! + entry;
      if (a !== b) sum2[b * d + a] = sum2[b * d + a]! + entry;
    }
}

/**
 * True wear at the last reading, given one node: with q_j the covariance of X(h_n) and reading j,
 *   mean b t_n + q^T R^-1 r,  variance tau0^2 + b^2 c^2 t_n - q^T R^-1 q
 * The laws share a node's beta; their wears are joined by mean and variance.
 */
function keepNode(
  part: PartSite,
  figures: ClassFigures,
  b: number,
  beta: number,
  node: number,
  lnWeight: number,
  nodes: TiltNodes,
): void {
  const { n } = part;
  const b2 = b * b;
  let wear = 0;
  // a part never read, whose start is in doubt: the slope of time over its whole life
  let variance = part.newSizeVar + b2 * part.startHoursVar * part.lifeSlope ** 2;
  if (n > 0) {
    const c2 = figures.pathScatter ** 2;
    const tLast = part.t[n - 1]!;
    const slopeLast = part.slope[n - 1]!;
    wear = b * tLast;
    variance = part.newSizeVar + b2 * (c2 * tLast + part.startHoursVar * slopeLast * slopeLast);
    for (let j = 0; j < n; j++) {
      let entry = part.newSizeVar + b2 * (c2 * part.t[j]! + part.startHoursVar * part.slope[j]! * slopeLast);
      for (let k = 0; k < j; k++) entry -= chol[j * n + k]! * passage[k]!;
      entry /= chol[j * n + j]!;
      passage[j] = entry;
      wear += entry * residual[j]!;
      variance -= entry * entry;
    }
    if (!(variance > 0)) variance = 0;
  }
  nodes.beta[node] = beta;
  const before = nodes.lnWeight[node]!;
  if (before === Number.NEGATIVE_INFINITY) {
    nodes.lnWeight[node] = lnWeight;
    nodes.wearMm[node] = wear;
    nodes.wearVar[node] = variance;
    return;
  }
  const most = Math.max(before, lnWeight);
  const all = most + Math.log(Math.exp(before - most) + Math.exp(lnWeight - most));
  const share = Math.exp(lnWeight - all);
  const apart = wear - nodes.wearMm[node]!;
  nodes.lnWeight[node] = all;
  nodes.wearMm[node] = nodes.wearMm[node]! + share * apart;
  nodes.wearVar[node] = (1 - share) * nodes.wearVar[node]! + share * variance + share * (1 - share) * apart * apart;
}
