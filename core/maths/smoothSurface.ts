import { choleskyInPlace } from './cholesky.ts';

/** A function of a few coordinates of scale about 1, known at scattered points. */
export type SmoothSurface = {
  mean: (z: readonly number[]) => number;
  /** how much the values leave open there: next to nothing among the points, much beyond them */
  variance: (z: readonly number[]) => number;
};

/** Reaches over which a surface may bend beside its quadratic. */
const REACHES = [1.6, 2.3, 3.2, 4.5, 6.4];
/** Doubt about each value, as a share of the bend's variance: the middle one first. */
const USUAL_DOUBT = 1e-5;
const OTHER_DOUBTS = [1e-7, 1e-3];
/** How much freer the quadratic is than the bend beside it (variance): as good as free. */
const FREE = 100;

/**
 * A smooth surface through values at scattered points: a quadratic, and beside it what is left, of Gaussian covariance.
 *   k(z, z') = exp(-|z - z'|^2 / (2 reach^2)) + 100 (1 + z . z')^2
 *   mean k(z)^T (K + doubt I)^-1 y,  variance amplitude (k(z, z) - k(z)^T (K + doubt I)^-1 k(z))
 * Of a few reaches the one under which the values are likeliest, then of a few doubts; the amplitude at its own likeliest.
 * @param points more of them than a quadratic has terms, or it is drawn towards the highest value
 * @source C. E. Rasmussen and C. K. I. Williams, Gaussian Processes for Machine Learning (2006), algorithm 2.1 and
 *   sections 2.7 and 5.4.1
 */
export function smoothSurface(points: readonly (readonly number[])[], values: readonly number[]): SmoothSurface {
  const top = values.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  const y = values.map((value) => value - top);
  const pick = (best: Fit | null, next: Fit | null): Fit | null =>
    next === null || (best !== null && best.misfit <= next.misfit) ? best : next;
  let fit: Fit | null = null;
  for (const reach of REACHES) fit = pick(fit, fitted(points, y, reach, USUAL_DOUBT));
  const reach = fit?.reach ?? 1;
  for (const doubt of OTHER_DOUBTS) fit = pick(fit, fitted(points, y, reach, doubt));
  if (fit === null || points.length === 0) return { mean: () => top, variance: () => 0 };
  const { weights, factor, amplitude } = fit;
  const n = points.length;
  const near = new Float64Array(n);
  const quadratic = quadraticOf(points, weights);
  const width = points[0]!.length;
  const places = Float64Array.from(points.flat());
  const perReach = -0.5 / (reach * reach);
  return {
    mean: (z) => {
      let bend = 0;
      for (let i = 0, at = 0; i < n; i++) {
        let apart = 0;
        for (let axis = 0; axis < width; axis++, at++) apart += (places[at]! - z[axis]!) ** 2;
        bend += weights[i]! * Math.exp(perReach * apart);
      }
      return top + bend + quadratic(z);
    },
    variance: (z) => {
      let left = covariance(z, z, reach);
      for (let i = 0; i < n; i++) {
        let rest = covariance(points[i]!, z, reach);
        for (let j = 0; j < i; j++) rest -= factor[i * n + j]! * near[j]!;
        rest /= factor[i * n + i]!;
        near[i] = rest;
        left -= rest * rest;
      }
      return amplitude * Math.max(0, left);
    },
  };
}

/** sum of w_i 100 (1 + z_i . z)^2, its points summed up once: z^T A z with a 1 before z and before each z_i. */
function quadraticOf(points: readonly (readonly number[])[], weights: Float64Array): (z: readonly number[]) => number {
  const size = points[0]!.length + 1;
  const sums = new Float64Array(size * size);
  points.forEach((point, i) => {
    const ends = [1, ...point];
    for (let a = 0; a < size; a++)
      for (let b = 0; b < size; b++)
        sums[a * size + b] = sums[a * size + b]! + FREE * weights[i]! * ends[a]! * ends[b]!;
  });
  return (z) => {
    let value = 0;
    for (let a = 0; a < size; a++) {
      let row = sums[a * size]!;
      for (let b = 1; b < size; b++) row += sums[a * size + b]! * z[b - 1]!;
      value += a === 0 ? row : row * z[a - 1]!;
    }
    return value;
  };
}

/** @see smoothSurface; `weights` are (K + doubt I)^-1 y, `factor` the lower factor of K + doubt I */
type Fit = { misfit: number; reach: number; amplitude: number; weights: Float64Array; factor: Float64Array };

function fitted(
  points: readonly (readonly number[])[],
  y: readonly number[],
  reach: number,
  doubt: number,
): Fit | null {
  const n = points.length;
  const factor = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) factor[i * n + j] = covariance(points[i]!, points[j]!, reach);
    factor[i * n + i] = factor[i * n + i]! + doubt;
  }
  const lnDet = choleskyInPlace(factor, n);
  if (Number.isNaN(lnDet)) return null;
  const { weights, square } = solved(factor, y, n);
  const amplitude = square / n;
  return { misfit: n * Math.log(amplitude + 1e-300) + lnDet, reach, amplitude, weights, factor };
}

function covariance(a: readonly number[], b: readonly number[], reach: number): number {
  let apart = 0;
  let along = 1;
  for (let i = 0; i < a.length; i++) {
    const off = a[i]! - b[i]!;
    apart += off * off;
    along += a[i]! * b[i]!;
  }
  return Math.exp((-0.5 * apart) / (reach * reach)) + FREE * along * along;
}

/** K^-1 y and y^T K^-1 y, from K's lower factor. */
function solved(factor: Float64Array, y: readonly number[], n: number): { weights: Float64Array; square: number } {
  const weights = new Float64Array(n);
  let square = 0;
  for (let i = 0; i < n; i++) {
    let rest = y[i]!;
    for (let k = 0; k < i; k++) rest -= factor[i * n + k]! * weights[k]!;
    weights[i] = rest / factor[i * n + i]!;
    square += weights[i]! ** 2;
  }
  for (let i = n - 1; i >= 0; i--) {
    let rest = weights[i]!;
    for (let k = i + 1; k < n; k++) rest -= factor[k * n + i]! * weights[k]!;
    weights[i] = rest / factor[i * n + i]!;
  }
  return { weights, square };
}
