import type { PartLaw } from '../fit/partLaw.ts';
import { choleskyInPlace } from '../maths/cholesky.ts';
import type { WearSeries } from '../series/wearSeries.ts';

/** True wear at hours already run: 10, 50 and 90 % points. */
export type FittedWear = { workedHours: number; low: number; middle: number; high: number };

const Z_90 = 1.2815515655446004; // 90 % point of the standard normal

/** Nodes lighter than this change nothing a chart can show. */
const LIGHTEST = 1e-6;

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
  const n = series.readings.length;
  if (n === 0) return [];
  const count = at.length;
  const mean = new Float64Array(count);
  const square = new Float64Array(count);
  const room = roomFor(law, series, at);
  let weights = 0;
  for (let node = 0; node < law.weight.length; node++) {
    const weight = law.weight[node]!;
    if (weight < LIGHTEST) continue;
    weights += weight;
    condition(room, law, series, node);
    for (let i = 0; i < count; i++) {
      wearAtTime(room, room.time[law.shapeOf[node]! * count + i]!);
      mean[i]! += weight * room.mean;
      square[i]! += weight * (room.variance + room.mean * room.mean);
    }
  }
  return at.map((workedHours, i) => {
    const middle = mean[i]! / weights;
    const sd = Math.sqrt(Math.max(0, square[i]! / weights - middle * middle));
    return { workedHours, low: middle - Z_90 * sd, middle, high: middle + Z_90 * sd };
  });
}

/** One node's wear given the sizes: R = L L^T, L^-1 (y - b t_j), and what is asked of it. */
type Room = {
  n: number;
  /** model time of the readings, and of the hours asked for, by shape */
  readAt: Float64Array;
  time: Float64Array;
  /** of the node in hand: b, b^2 c^2, tau0^2, and where its shape's readings stand */
  rate: number;
  scatter: number;
  start: number;
  from: number;
  factor: Float64Array;
  residual: Float64Array;
  across: Float64Array;
  mean: number;
  variance: number;
};

function roomFor(law: PartLaw, { readings, newSizeSdMm }: WearSeries, at: readonly number[]): Room {
  const n = readings.length;
  const timesOf = (hours: readonly number[]) =>
    Float64Array.from(
      law.shapes.flatMap(({ power }) => hours.map((one) => (Math.max(0, one) / law.hRefHours) ** power)),
    );
  return {
    n,
    readAt: timesOf(readings.map(({ workedHours }) => workedHours)),
    time: timesOf(at),
    rate: 0,
    scatter: 0,
    start: newSizeSdMm ** 2,
    from: 0,
    factor: new Float64Array(n * n),
    residual: new Float64Array(n),
    across: new Float64Array(n),
    mean: 0,
    variance: 0,
  };
}

/** Takes a node in hand: its readings' covariance as a root, and how far off they lie. */
function condition(room: Room, law: PartLaw, { readings }: WearSeries, node: number): void {
  const { n, readAt, start, factor, residual } = room;
  const shape = law.shapes[law.shapeOf[node]!]!;
  const b = law.rate[node]!;
  room.rate = b;
  room.scatter = (b * shape.pathScatter) ** 2;
  room.from = law.shapeOf[node]! * n;
  for (let i = 0; i < n; i++) {
    const t = readAt[room.from + i]!;
    for (let j = 0; j < n; j++) factor[i * n + j] = start + room.scatter * Math.min(t, readAt[room.from + j]!);
    factor[i * n + i]! += readings[i]!.errorSdMm ** 2 + shape.visitErrorMm ** 2;
    residual[i] = readings[i]!.wearMm - b * t;
  }
  choleskyInPlace(factor, n);
  forward(factor, n, residual);
}

function wearAtTime(room: Room, t: number): void {
  const { n, readAt, from, start, scatter, factor, residual, across } = room;
  for (let j = 0; j < n; j++) across[j] = start + scatter * Math.min(t, readAt[from + j]!);
  forward(factor, n, across);
  let explained = 0;
  let shift = 0;
  for (let j = 0; j < n; j++) {
    explained += across[j]! * across[j]!;
    shift += across[j]! * residual[j]!;
  }
  room.mean = room.rate * t + shift;
  room.variance = Math.max(0, start + scatter * t - explained);
}

/** Solves L x = v for a lower factor L, in place of v. */
function forward(factor: Float64Array, n: number, v: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = v[i]!;
    for (let k = 0; k < i; k++) sum -= factor[i * n + k]! * v[k]!;
    v[i] = sum / factor[i * n + i]!;
  }
}
