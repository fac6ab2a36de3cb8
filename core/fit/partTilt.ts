import { LN_2PI } from '../maths/normal.ts';
import type { ClassFigures, PartSite } from './partSite.ts';
import { MOST_NODES, type TiltRoom, tiltRoom } from './tiltRoom.ts';

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
  const room = tiltRoom(n, d);
  const spacing = (2 * halfWidth) / (nodeCount - 1);
  for (let i = 0; i < nodeCount; i++) {
    room.beta[i] = centre - halfWidth + i * spacing;
    room.rate[i] = Math.exp(room.beta[i]!);
  }
  const lawCount = laws.share.length;
  let top = Number.NEGATIVE_INFINITY;
  for (let law = 0; law < lawCount; law++) {
    setLaw(room, law, d, cov, laws.sd[law]! ** 2);
    // without shared visits the readings' chance is the same under every law
    if (law === 0 || d > 1) {
      setReadings(room, law, part, figures, mean);
      factorReadings(room, law, part, mean[0]!, nodeCount);
    }
    top = Math.max(
      top,
      weighNodes(room, law, part, laws.share[law]!, cov[0]! + laws.sd[law]! ** 2, mean[0]!, nodeCount),
    );
  }
  sumBell(room, lawCount, top, centre, nodeCount, spacing, out);
  if (keepNodes) keepAll(room, part, figures, lawCount, top, nodeCount, out.nodes);
  else sumUnknowns(room, part, mean, lawCount, nodeCount, out);
}

/** k = C_.u / v and C' = C - k k^T v of one law. */
function setLaw(room: TiltRoom, law: number, d: number, cov: Float64Array, lawVar: number): void {
  const v = cov[0]! + lawVar;
  const gainAt = law * d;
  const covAt = law * d * d;
  for (let a = 0; a < d; a++) room.gain[gainAt + a] = cov[a * d]! / v;
  for (let a = 0; a < d; a++)
    for (let b = 0; b < d; b++)
      room.covLaw[covAt + a * d + b] = cov[a * d + b]! - room.gain[gainAt + a]! * room.gain[gainAt + b]! * v;
}

function setReadings(room: TiltRoom, law: number, part: PartSite, figures: ClassFigures, mean: Float64Array): void {
  const { n, d, ownVisit, t, slope } = part;
  const { fixed, scaled, bare, pull, covLaw, gain } = room;
  const covAt = law * d * d;
  const c2 = figures.pathScatter ** 2;
  for (let j = 0; j < n; j++) {
    const ej = ownVisit[j]!;
    bare[j] = part.wearMm[j]! - (ej > 0 ? mean[ej]! : 0);
    pull[j] = ej > 0 ? gain[law * d + ej]! : 0;
    for (let l = 0; l <= j; l++) {
      const el = ownVisit[l]!;
      fixed[j * n + l] = part.newSizeVar + (ej > 0 && el > 0 ? covLaw[covAt + ej * d + el]! : 0);
      scaled[j * n + l] = c2 * t[l]! + part.startHoursVar * slope[j]! * slope[l]!;
    }
    fixed[j * n + j] = fixed[j * n + j]! + part.noiseVar[j]!;
    scaled[j * n + j] = scaled[j * n + j]! + part.hoursVar[j]! * slope[j]! ** 2;
  }
}

/**
 * At every node: R = L L^T, L^-1 r, and -(ln|R| + r^T R^-1 r) / 2 in place of the ln weight.
 * R is at least the reading's own variance, so no pivot may be less: that keeps wild rates from breaking the root.
 */
function factorReadings(room: TiltRoom, law: number, part: PartSite, mU: number, nodeCount: number): void {
  const { n, t, noiseVar } = part;
  const { fixed, scaled, bare, pull, factor, whitened, beta, rate } = room;
  for (let i = 0; i < nodeCount; i++) {
    const at = law * MOST_NODES + i;
    const f = at * n * n;
    const w = at * n;
    const b = rate[i]!;
    const b2 = b * b;
    const off = beta[i]! - mU;
    let lnDet = 0;
    let product = 1;
    let quad = 0;
    for (let j = 0; j < n; j++) {
      const row = j * n;
      let rest = bare[j]! - b * t[j]! - pull[j]! * off;
      let pivot = fixed[row + j]! + b2 * scaled[row + j]!;
      for (let l = 0; l < j; l++) {
        let entry = fixed[row + l]! + b2 * scaled[row + l]!;
        const other = f + l * n;
        for (let k = 0; k < l; k++) entry -= factor[f + row + k]! * factor[other + k]!;
        entry /= factor[other + l]!;
        factor[f + row + l] = entry;
        pivot -= entry * entry;
        rest -= entry * whitened[w + l]!;
      }
      const least = noiseVar[j]!;
      if (!(pivot > least)) pivot = least;
      const root = Math.sqrt(pivot);
      factor[f + row + j] = root;
      rest /= root;
      whitened[w + j] = rest;
      quad += rest * rest;
      product *= pivot;
      if (product < 1e-200 || product > 1e200) {
        lnDet += Math.log(product);
        product = 1;
      }
    }
    room.lnWeight[at] = -0.5 * (lnDet + Math.log(product) + quad);
  }
}

/** Adds the law's own chance to the ln weights of its nodes. @returns the highest */
function weighNodes(
  room: TiltRoom,
  law: number,
  part: PartSite,
  share: number,
  v: number,
  mU: number,
  nodeCount: number,
): number {
  const { lnWeight, beta } = room;
  const head = Math.log(share) - 0.5 * (LN_2PI + Math.log(v)) - 0.5 * part.n * LN_2PI;
  const from = part.d > 1 ? law * MOST_NODES : 0;
  let top = Number.NEGATIVE_INFINITY;
  // where nothing is shared the readings' chance is worked out once: kept aside for the other law before its own is added
  if (law === 0 && part.d === 1) for (let i = 0; i < nodeCount; i++) lnWeight[MOST_NODES + i] = lnWeight[i]!;
  for (let i = 0; i < nodeCount; i++) {
    const off = beta[i]! - mU;
    const chance = lnWeight[part.d === 1 && law > 0 ? MOST_NODES + i : from + i]!;
    const ln = head - (0.5 * off * off) / v + chance;
    lnWeight[law * MOST_NODES + i] = ln;
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
  const { lnWeight, beta } = room;
  let sum = 0;
  let first = 0;
  let second = 0;
  let ends = 0;
  for (let law = 0; law < lawCount; law++)
    for (let i = 0; i < nodeCount; i++) {
      const at = law * MOST_NODES + i;
      const ln = lnWeight[at]! - top;
      const weight = ln > LN_NOTHING ? Math.exp(ln) : 0;
      lnWeight[at] = weight;
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

/** Mean and variance of z over all laws and nodes; `lnWeight` holds the weights by now. */
function sumUnknowns(
  room: TiltRoom,
  part: PartSite,
  mean: Float64Array,
  lawCount: number,
  nodeCount: number,
  out: Tilt,
): void {
  const { d } = part;
  if (out.mean.length < d) {
    out.mean = new Float64Array(d);
    out.cov = new Float64Array(d * d);
  }
  room.sum1.fill(0);
  room.sum2.fill(0);
  for (let law = 0; law < lawCount; law++) {
    if (d > 1) sumReadings(room, law, part, mean[0]!, nodeCount);
    addLaw(room, law, part, mean[0]!, nodeCount);
  }
  let sum = 0;
  for (let law = 0; law < lawCount; law++)
    for (let i = 0; i < nodeCount; i++) sum += room.lnWeight[law * MOST_NODES + i]!;
  for (let a = 0; a < d; a++) {
    const shift = room.sum1[a]! / sum;
    out.mean[a] = mean[a]! + shift;
    for (let b = 0; b < d; b++) out.cov[a * d + b] = room.sum2[a * d + b]! / sum - shift * (room.sum1[b]! / sum);
  }
}

/** Sums alpha = R^-1 r, alpha (beta - m_u) and alpha alpha^T - R^-1 (lower triangle) over the nodes of one law. */
function sumReadings(room: TiltRoom, law: number, part: PartSite, mU: number, nodeCount: number): void {
  const { n } = part;
  const { lnWeight: weights, beta, factor, whitened, inverse, alpha, alphas, alphasOff, spreads } = room;
  for (let j = 0; j < n; j++) {
    alphas[j] = 0;
    alphasOff[j] = 0;
  }
  for (let j = 0; j < n * n; j++) spreads[j] = 0;
  for (let i = 0; i < nodeCount; i++) {
    const at = law * MOST_NODES + i;
    const weight = weights[at]!;
    if (weight === 0) continue;
    const f = at * n * n;
    const w = at * n;
    const weightOff = weight * (beta[i]! - mU);
    // rows of L^-1, then alpha = L^-T (L^-1 r)
    for (let j = 0; j < n; j++) {
      const root = factor[f + j * n + j]!;
      for (let l = 0; l < j; l++) {
        let entry = 0;
        for (let k = l; k < j; k++) entry -= factor[f + j * n + k]! * inverse[k * n + l]!;
        inverse[j * n + l] = entry / root;
      }
      inverse[j * n + j] = 1 / root;
    }
    for (let j = 0; j < n; j++) {
      let a = 0;
      for (let k = j; k < n; k++) a += inverse[k * n + j]! * whitened[w + k]!;
      alpha[j] = a;
      alphas[j] = alphas[j]! + weight * a;
      alphasOff[j] = alphasOff[j]! + weightOff * a;
      for (let l = 0; l <= j; l++) {
        let entry = a * alpha[l]!;
        for (let k = j; k < n; k++) entry -= inverse[k * n + j]! * inverse[k * n + l]!;
        spreads[j * n + l] = spreads[j * n + l]! + weight * entry;
      }
    }
  }
}

/**
 * Adds one law's z to the sums, about the cavity's mean. With off = beta - m_u and G = C'_.e, at each node
 *   z - m = k off + G alpha,  variance C' - G R^-1 G^T
 */
function addLaw(room: TiltRoom, law: number, part: PartSite, mU: number, nodeCount: number): void {
  const { n, d, ownVisit } = part;
  const { lnWeight, beta, gain, covLaw, alphas, alphasOff, spreads, reach, crossed, sum1, sum2 } = room;
  const gainAt = law * d;
  const covAt = law * d * d;
  let weights = 0;
  let offs = 0;
  let offs2 = 0;
  for (let i = 0; i < nodeCount; i++) {
    const weight = lnWeight[law * MOST_NODES + i]!;
    const off = beta[i]! - mU;
    weights += weight;
    offs += weight * off;
    offs2 += weight * off * off;
  }
  if (d === 1) {
    const k = gain[gainAt]!;
    sum1[0] = sum1[0]! + k * offs;
    sum2[0] = sum2[0]! + covLaw[covAt]! * weights + k * k * offs2;
    return;
  }
  for (let a = 0; a < d; a++) {
    const row = covAt + a * d;
    let first = gain[gainAt + a]! * offs;
    let cross = 0;
    for (let j = 0; j < n; j++) {
      const ej = ownVisit[j]!;
      if (ej > 0) {
        first += covLaw[row + ej]! * alphas[j]!;
        cross += covLaw[row + ej]! * alphasOff[j]!;
      }
      let entry = 0;
      for (let l = 0; l < n; l++) {
        const el = ownVisit[l]!;
        if (el > 0) entry += (l <= j ? spreads[j * n + l]! : spreads[l * n + j]!) * covLaw[row + el]!;
      }
      reach[a * n + j] = entry;
    }
    sum1[a] = sum1[a]! + first;
    crossed[a] = cross;
  }
  for (let a = 0; a < d; a++) {
    const ka = gain[gainAt + a]!;
    for (let b = 0; b <= a; b++) {
      const kb = gain[gainAt + b]!;
      let entry = covLaw[covAt + a * d + b]! * weights + ka * kb * offs2 + kb * crossed[a]! + ka * crossed[b]!;
      for (let j = 0; j < n; j++) {
        const ej = ownVisit[j]!;
        if (ej > 0) entry += covLaw[covAt + b * d + ej]! * reach[a * n + j]!;
      }
      sum2[a * d + b] = sum2[a * d + b]! + entry;
      if (a !== b) sum2[b * d + a] = sum2[b * d + a]! + entry;
    }
  }
}

/** All nodes with their wear, the laws of a node joined into one. */
function keepAll(
  room: TiltRoom,
  part: PartSite,
  figures: ClassFigures,
  lawCount: number,
  top: number,
  nodeCount: number,
  nodes: TiltNodes,
): void {
  nodes.count = nodeCount;
  nodes.lnWeight.fill(Number.NEGATIVE_INFINITY);
  for (let i = 0; i < nodeCount; i++) {
    let sum = 0;
    for (let law = 0; law < lawCount; law++) {
      const weight = room.lnWeight[law * MOST_NODES + i]!;
      if (weight === 0) continue;
      keepNode(room, part, figures, part.d > 1 ? law : 0, i, sum, weight, nodes);
      sum += weight;
    }
    nodes.beta[i] = room.beta[i]!;
    if (sum > 0) nodes.lnWeight[i] = top + Math.log(sum);
  }
}

/**
 * True wear at the last reading, given one node: with q_j the covariance of X(h_n) and reading j,
 *   mean b t_n + q^T R^-1 r,  variance tau0^2 + b^2 c^2 t_n - q^T R^-1 q
 * The laws share a node's beta; their wears are joined by mean and variance.
 * @param before weight of the laws already at this node
 */
function keepNode(
  room: TiltRoom,
  part: PartSite,
  figures: ClassFigures,
  law: number,
  i: number,
  before: number,
  weight: number,
  nodes: TiltNodes,
): void {
  const { n, t, slope } = part;
  const { factor, whitened, alpha: passage } = room;
  const b = room.rate[i]!;
  const b2 = b * b;
  let wear = 0;
  // a part never read, whose start is in doubt: the slope of time over its whole life
  let variance = part.newSizeVar + b2 * part.startHoursVar * part.lifeSlope ** 2;
  if (n > 0) {
    const c2 = figures.pathScatter ** 2;
    const f = (law * MOST_NODES + i) * n * n;
    const w = (law * MOST_NODES + i) * n;
    const slopeLast = slope[n - 1]!;
    wear = b * t[n - 1]!;
    variance = part.newSizeVar + b2 * (c2 * t[n - 1]! + part.startHoursVar * slopeLast * slopeLast);
    for (let j = 0; j < n; j++) {
      let entry = part.newSizeVar + b2 * (c2 * t[j]! + part.startHoursVar * slope[j]! * slopeLast);
      for (let k = 0; k < j; k++) entry -= factor[f + j * n + k]! * passage[k]!;
      entry /= factor[f + j * n + j]!;
      passage[j] = entry;
      wear += entry * whitened[w + j]!;
      variance -= entry * entry;
    }
    if (!(variance > 0)) variance = 0;
  }
  const share = weight / (before + weight);
  const apart = before > 0 ? wear - nodes.wearMm[i]! : 0;
  nodes.wearMm[i] = before > 0 ? nodes.wearMm[i]! + share * apart : wear;
  nodes.wearVar[i] =
    before > 0 ? (1 - share) * nodes.wearVar[i]! + share * variance + share * (1 - share) * apart * apart : variance;
}
