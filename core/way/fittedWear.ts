import type { PartLaw } from '../fit/partLaw.ts';
import { choleskyInPlace } from '../maths/cholesky.ts';
import type { WearSeries } from '../series/wearSeries.ts';

/** True wear at hours already run: 10, 50 and 90 % points. */
export type FittedWear = { workedHours: number; low: number; middle: number; high: number };

const Z_90 = 1.2815515655446004; // 90 % point of the standard normal

/** Nodes lighter than this change nothing a chart can show. */
const LIGHTEST = 1e-3;

/**
 * True wear over the life a part has had, in the light of all its sizes: the line and band of the wear chart before the
 * last size. For each node of the law wear is Gaussian:
 *   X(t) has mean b t, covariance tau0^2 + b^2 c^2 min(t, t');  y_j = X(t_j) + error,  t = (h / H)^g
 *   E[X(t) | y] = b t + k^T R^-1 (y - b t_j),   var = tau0^2 + b^2 c^2 t - k^T R^-1 k
 * and the nodes are mixed by weight. The band is drawn from the mixture's mean and sd.
 *
 * @param at worked hours, from 0 to the last size [h]
 * @returns nothing for a part without sizes
 * @source Gaussian conditioning: C. E. Rasmussen and C. K. I. Williams, Gaussian Processes for Machine Learning (2006), eq. 2.23-2.24
 */
export function fittedWear(law: PartLaw, series: WearSeries, at: readonly number[]): FittedWear[] {
  if (series.readings.length === 0) return [];
  const sums = at.map(() => ({ weight: 0, mean: 0, square: 0 }));
  for (let node = 0; node < law.weight.length; node++) {
    const weight = law.weight[node]!;
    if (weight < LIGHTEST) continue;
    const wear = wearOfNode(law, series, node);
    at.forEach((hours, i) => {
      const { mean, variance } = wear(hours);
      sums[i]!.weight += weight;
      sums[i]!.mean += weight * mean;
      sums[i]!.square += weight * (variance + mean * mean);
    });
  }
  return sums.map(({ weight, mean, square }, i) => {
    const middle = mean / weight;
    const sd = Math.sqrt(Math.max(0, square / weight - middle * middle));
    return { workedHours: at[i]!, low: middle - Z_90 * sd, middle, high: middle + Z_90 * sd };
  });
}

function wearOfNode(law: PartLaw, series: WearSeries, node: number) {
  const shape = law.shapes[law.shapeOf[node]!]!;
  const b = law.rate[node]!;
  const scatter = (b * shape.pathScatter) ** 2;
  const start = series.newSizeSdMm ** 2;
  const time = (hours: number) => (Math.max(0, hours) / law.hRefHours) ** shape.power;
  const together = (t: number, u: number) => start + scatter * Math.min(t, u);
  const times = series.readings.map(({ workedHours }) => time(workedHours));
  const n = times.length;
  const factor = new Float64Array(n * n);
  series.readings.forEach(({ errorSdMm }, i) => {
    for (let j = 0; j < n; j++) factor[i * n + j] = together(times[i]!, times[j]!);
    factor[i * n + i]! += errorSdMm ** 2 + shape.visitErrorMm ** 2;
  });
  choleskyInPlace(factor, n);
  const residual = forward(
    factor,
    n,
    series.readings.map(({ wearMm }, i) => wearMm - b * times[i]!),
  );
  return (hours: number) => {
    const t = time(hours);
    const k = forward(
      factor,
      n,
      times.map((u) => together(t, u)),
    );
    const explained = k.reduce((sum, value) => sum + value * value, 0);
    const shift = k.reduce((sum, value, i) => sum + value * residual[i]!, 0);
    return { mean: b * t + shift, variance: Math.max(0, together(t, t) - explained) };
  };
}

/** Solves L x = v for a lower factor L. */
function forward(factor: Float64Array, n: number, v: readonly number[]): number[] {
  const x: number[] = [];
  for (let i = 0; i < n; i++) {
    let sum = v[i]!;
    for (let k = 0; k < i; k++) sum -= factor[i * n + k]! * x[k]!;
    x.push(sum / factor[i * n + i]!);
  }
  return x;
}
