import { type Outcome, ok, type Refusal, refuse } from '../outcome.ts';

export type LineRefusal = Refusal & { code: 'too-few-points' | 'all-at-one-place' };

export type LineThroughOrigin = {
  slope: number;
  /** standard error of the slope; null with a single point */
  slopeSe: number | null;
  /** sum of squared residuals */
  residualSs: number;
  residualDf: number;
};

export type Line = LineThroughOrigin & { intercept: number; interceptSe: number | null };

const sum = (values: readonly number[]): number => values.reduce((total, value) => total + value, 0);

/**
 * Straight line through the origin, y = slope x, by least squares.
 * @refuses too-few-points (none), all-at-one-place (every x is 0)
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, section 4.1.4.1
 * @checked tests/reference/nist-strd/leastSquares.test.ts
 */
export function lineThroughOrigin(x: readonly number[], y: readonly number[]): Outcome<LineThroughOrigin, LineRefusal> {
  if (x.length === 0) return refuse({ code: 'too-few-points', facts: { points: 0, needed: 1 } });
  const sxx = sum(x.map((value) => value * value));
  if (sxx === 0) return refuse({ code: 'all-at-one-place' });
  const slope = sum(x.map((value, i) => value * y[i]!)) / sxx;
  const residualSs = sum(x.map((value, i) => (y[i]! - slope * value) ** 2));
  const residualDf = x.length - 1;
  return ok({
    slope,
    slopeSe: residualDf > 0 ? Math.sqrt(residualSs / residualDf / sxx) : null,
    residualSs,
    residualDf,
  });
}

/**
 * Straight line y = intercept + slope x, by least squares about the means.
 * @refuses too-few-points (fewer than 2), all-at-one-place (every x the same)
 * @source NIST/SEMATECH e-Handbook of Statistical Methods, section 4.1.4.1
 * @checked tests/reference/nist-strd/leastSquares.test.ts
 */
export function line(x: readonly number[], y: readonly number[]): Outcome<Line, LineRefusal> {
  const n = x.length;
  if (n < 2) return refuse({ code: 'too-few-points', facts: { points: n, needed: 2 } });
  const xMean = sum(x) / n;
  const yMean = sum(y) / n;
  const sxx = sum(x.map((value) => (value - xMean) ** 2));
  if (sxx === 0) return refuse({ code: 'all-at-one-place' });
  const slope = sum(x.map((value, i) => (value - xMean) * (y[i]! - yMean))) / sxx;
  const intercept = yMean - slope * xMean;
  const residualSs = sum(x.map((value, i) => (y[i]! - intercept - slope * value) ** 2));
  const residualDf = n - 2;
  const variance = residualDf > 0 ? residualSs / residualDf : null;
  return ok({
    slope,
    intercept,
    slopeSe: variance === null ? null : Math.sqrt(variance / sxx),
    interceptSe: variance === null ? null : Math.sqrt(variance * (1 / n + xMean ** 2 / sxx)),
    residualSs,
    residualDf,
  });
}
