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
  /** the nodes themselves, summed over the laws: what a forecast is made of. Filled when asked for */
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
let chol = new Float64Array(0);
let fixed = new Float64Array(0);
let scaled = new Float64Array(0);
let residual = new Float64Array(0);
let reach = new Float64Array(0);
let passage = new Float64Array(0);
let gain = new Float64Array(0);
let covLaw = new Float64Array(0);
let meanLaw = new Float64Array(0);
let zNode = new Float64Array(0);
let sum1 = new Float64Array(0);
let sum2 = new Float64Array(0);

function makeRoom(n: number, d: number): void {
  if (n <= room.n && d <= room.d) return;
  room = { n: Math.max(n, room.n), d: Math.max(d, room.d) };
  const { n: rows, d: width } = room;
  chol = new Float64Array(rows * rows);
  fixed = new Float64Array(rows * rows);
  scaled = new Float64Array(rows * rows);
  residual = new Float64Array(rows);
  reach = new Float64Array(rows * width);
  passage = new Float64Array(rows);
  gain = new Float64Array(width);
  covLaw = new Float64Array(width * width);
  meanLaw = new Float64Array(width);
  zNode = new Float64Array(width);
  sum1 = new Float64Array(width);
  sum2 = new Float64Array(width * width);
}

/**
 * @param mean of the cavity on z
 * @param cov of the cavity on z
 * @param centre middle node of beta; nodes run `halfWidth` either way
 * @param keepNodes whether to fill `out.nodes`
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
  const spacing = (2 * halfWidth) / (nodeCount - 1);
  const first = centre - halfWidth;
  const { nodes } = out;
  if (keepNodes) {
    nodes.count = nodeCount;
    nodes.lnWeight.fill(Number.NEGATIVE_INFINITY);
  }

  let top = Number.NEGATIVE_INFINITY;
  let sum = 0;
  let sumBeta = 0;
  let sumBeta2 = 0;
  let firstEnd = 0;
  let lastEnd = 0;
  sum1.fill(0);
  sum2.fill(0);
  const cUU = cov[0]!;
  const mU = mean[0]!;

  for (let law = 0; law < laws.share.length; law++) {
    const share = laws.share[law]!;
    if (share <= 0) continue;
    const v = cUU + laws.sd[law]! ** 2;
    for (let a = 0; a < d; a++) gain[a] = cov[a * d]! / v;
    for (let a = 0; a < d; a++)
      for (let b = 0; b < d; b++) covLaw[a * d + b] = cov[a * d + b]! - gain[a]! * gain[b]! * v;
    setVariances(part, figures, d);
    const lnHead = Math.log(share) - 0.5 * (LN_2PI + Math.log(v)) - 0.5 * n * LN_2PI;

    for (let node = 0; node < nodeCount; node++) {
      const beta = first + node * spacing;
      const off = beta - mU;
      const lnPrior = lnHead - (0.5 * off * off) / v;
      const b = Math.exp(beta);
      for (let a = 0; a < d; a++) meanLaw[a] = mean[a]! + gain[a]! * off;
      const lnWeight = lnPrior + lnChanceOfReadings(part, b);
      if (!(lnWeight > top + LN_NOTHING)) continue;

      let weight = 1;
      if (lnWeight > top) {
        const fade = Math.exp(top - lnWeight);
        sum *= fade;
        sumBeta *= fade;
        sumBeta2 *= fade;
        firstEnd *= fade;
        lastEnd *= fade;
        for (let a = 0; a < d; a++) sum1[a] = sum1[a]! * fade;
        for (let a = 0; a < d * d; a++) sum2[a] = sum2[a]! * fade;
        top = lnWeight;
      } else weight = Math.exp(lnWeight - top);

      const at = beta - centre;
      sum += weight;
      sumBeta += weight * at;
      sumBeta2 += weight * at * at;
      if (node === 0) firstEnd += weight;
      if (node === nodeCount - 1) lastEnd += weight;
      addNode(part, d, mean, weight);
      if (keepNodes) keepNode(part, figures, b, beta, node, lnWeight, nodes);
    }
  }

  out.lnZ = top + Math.log(sum * spacing);
  const atMean = sumBeta / sum;
  out.bellMean = centre + atMean;
  out.bellSd = Math.sqrt(Math.max(0, sumBeta2 / sum - atMean * atMean));
  out.ends = (firstEnd + lastEnd) / sum;
  for (let a = 0; a < d; a++) {
    const shiftA = sum1[a]! / sum;
    out.mean[a] = mean[a]! + shiftA;
    for (let b = 0; b < d; b++) out.cov[a * d + b] = sum2[a * d + b]! / sum - shiftA * (sum1[b]! / sum);
  }
}

/** The variance of the readings in two pieces, R = fixed + b^2 scaled (lower triangles), and the reach of e into them. */
function setVariances(part: PartSite, figures: ClassFigures, d: number): void {
  const { n } = part;
  const c2 = figures.pathScatter ** 2;
  for (let j = 0; j < n; j++) {
    const ej = part.ownVisit[j]!;
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
function lnChanceOfReadings(part: PartSite, b: number): number {
  const { n } = part;
  const b2 = b * b;
  let lnDet = 0;
  let product = 1;
  let quad = 0;
  for (let j = 0; j < n; j++) {
    const row = j * n;
    let rest = part.wearMm[j]! - b * part.t[j]! - (part.ownVisit[j]! > 0 ? meanLaw[part.ownVisit[j]!]! : 0);
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
    const least = part.noiseVar[j]!;
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

/** Adds one node's z to the sums, about the cavity's mean: with G = C'_.e, H = L^-1 G^T: mean m' + H^T L^-1 r, cov C' - H^T H. */
function addNode(part: PartSite, d: number, mean: Float64Array, weight: number): void {
  const { n } = part;
  if (d === 1) {
    const at = meanLaw[0]! - mean[0]!;
    sum1[0] = sum1[0]! + weight * at;
    sum2[0] = sum2[0]! + weight * (covLaw[0]! + at * at);
    return;
  }
  for (let a = 0; a < d; a++) {
    let at = meanLaw[a]! - mean[a]!;
    for (let j = 0; j < n; j++) {
      const ej = part.ownVisit[j]!;
      let entry = ej > 0 ? covLaw[a * d + ej]! : 0;
      for (let k = 0; k < j; k++) entry -= chol[j * n + k]! * reach[a * n + k]!;
      entry /= chol[j * n + j]!;
      reach[a * n + j] = entry;
      at += entry * residual[j]!;
    }
    zNode[a] = at;
    sum1[a] = sum1[a]! + weight * at;
  }
  for (let a = 0; a < d; a++)
    for (let b = 0; b <= a; b++) {
      let entry = covLaw[a * d + b]! + zNode[a]! * zNode[b]!;
      for (let j = 0; j < n; j++) entry -= reach[a * n + j]! * reach[b * n + j]!;
      sum2[a * d + b] = sum2[a * d + b]! + weight * entry;
      if (a !== b) sum2[b * d + a] = sum2[a * d + b]!;
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
