/** Scores of forecasts against what came. Definitions: T. Gneiting and A. E. Raftery, JASA 102 (2007) 359-378. */

export type HoursCase = { low: number; middle: number; high: number; truth: number };

export type HoursScore = {
  parts: number;
  mae: number;
  cover: number;
  belowLow: number;
  aboveHigh: number;
  width: number;
  pinball: number;
};

const pinballAt = (u: number, q: number, y: number): number => (y >= q ? u * (y - q) : (1 - u) * (q - y));

const mean = (values: readonly number[]): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** Mean over the 10, 50 and 90 % points. */
export const pinball = (of: HoursCase): number =>
  (pinballAt(0.1, of.low, of.truth) + pinballAt(0.5, of.middle, of.truth) + pinballAt(0.9, of.high, of.truth)) / 3;

export function scoreHours(cases: readonly HoursCase[]): HoursScore {
  return {
    parts: cases.length,
    mae: mean(cases.map((one) => Math.abs(one.truth - one.middle))),
    cover: mean(cases.map((one) => (one.truth >= one.low && one.truth <= one.high ? 1 : 0))),
    belowLow: mean(cases.map((one) => (one.truth < one.low ? 1 : 0))),
    aboveHigh: mean(cases.map((one) => (one.truth > one.high ? 1 : 0))),
    width: mean(cases.map((one) => one.high - one.low)),
    pinball: mean(cases.map(pinball)),
  };
}

export type ReadingCase = HoursCase & { crps: number; pit: number };

export type ReadingScore = HoursScore & { crps: number; intervalScore: number; bias: number };

export function scoreReadings(cases: readonly ReadingCase[]): ReadingScore {
  return {
    ...scoreHours(cases),
    crps: mean(cases.map((one) => one.crps)),
    bias: mean(cases.map((one) => one.truth - one.middle)),
    intervalScore: mean(
      cases.map(
        (one) => one.high - one.low + 10 * (Math.max(0, one.low - one.truth) + Math.max(0, one.truth - one.high)),
      ),
    ),
  };
}

/** Integral of (F(y) - 1[y >= observed])^2 dy, by trapezium over `from`..`to` cut at the observed value. */
export function crps(cdf: (y: number) => number, observed: number, from: number, to: number): number {
  const piece = (a: number, b: number, f: (y: number) => number): number => {
    const steps = 400;
    let sum = 0;
    for (let i = 0; i <= steps; i++) sum += (i === 0 || i === steps ? 0.5 : 1) * f(a + ((b - a) * i) / steps);
    return (sum * (b - a)) / steps;
  };
  const low = Math.min(from, observed);
  const high = Math.max(to, observed);
  return piece(low, observed, (y) => cdf(y) ** 2) + piece(observed, high, (y) => (1 - cdf(y)) ** 2);
}

/**
 * Chance of a Kolmogorov-Smirnov distance this large or larger, were the values uniform on 0..1.
 * @source M. A. Stephens, JRSS B 32 (1970): the limit law at (sqrt n + 0.12 + 0.11 / sqrt n) D
 */
export function ksUniform(values: readonly number[]): { distance: number; p: number } {
  const sorted = [...values].sort((a, b) => a - b);
  const n = sorted.length;
  let distance = 0;
  sorted.forEach((value, i) => {
    distance = Math.max(distance, (i + 1) / n - value, value - i / n);
  });
  const lambda = (Math.sqrt(n) + 0.12 + 0.11 / Math.sqrt(n)) * distance;
  let p = 0;
  for (let k = 1; k <= 100; k++) p += 2 * (k % 2 === 1 ? 1 : -1) * Math.exp(-2 * k * k * lambda * lambda);
  return { distance, p: Math.min(1, Math.max(0, p)) };
}
