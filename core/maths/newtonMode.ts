import { symmetricEigen } from './symmetricEigen.ts';

export type Mode = {
  x: number[];
  value: number;
  /** columns: steps along which the function falls by 1/2 from its top, were it quadratic; one row a coordinate */
  axes: number[][];
};

const STEP = 0.1;
const LEAST_CURVATURE = 0.5;
const LONGEST_MOVE = 1;
const ENOUGH_GAIN = 0.01;
const MOST_MOVES = 12;

/**
 * Top of a smooth function of a few coordinates of scale about 1, by Newton's steps on central differences.
 * Curvatures less than 1/2 are taken as 1/2, moves longer than 1 are cut to 1 and halved until they lead uphill.
 * @param f a log density; called in a fixed order, so the same function gives the same bits
 * @source J. Nocedal and S. Wright, Numerical Optimization, 2nd ed. (2006), sections 3.4 and 8.1
 */
export function newtonMode(f: (x: readonly number[]) => number, start: readonly number[]): Mode {
  let x = [...start];
  let value = f(x);
  for (let move = 0; ; move++) {
    const { gradient, hessian } = centralDifferences(f, x, value);
    const { values, vectors } = symmetricEigen(hessian.map((row) => row.map((entry) => -entry)));
    const curvatures = values.map((entry) => Math.max(Math.abs(entry), LEAST_CURVATURE));
    const axes = x.map((_, i) => vectors.map((vector, a) => vector[i]! / Math.sqrt(curvatures[a]!)));
    const done = { x, value, axes };
    if (move >= MOST_MOVES) return done;
    const along = vectors.map((vector, a) => dot(vector, gradient) / curvatures[a]!);
    let step = x.map((_, i) => vectors.reduce((sum, vector, a) => sum + vector[i]! * along[a]!, 0));
    const length = Math.hypot(...step);
    if (length > LONGEST_MOVE) step = step.map((entry) => (entry * LONGEST_MOVE) / length);
    if (0.5 * Math.abs(dot(step, gradient)) < ENOUGH_GAIN) return done;
    let better: { x: number[]; value: number } | null = null;
    for (let half = 0; half < 6 && better === null; half++) {
      const next = x.map((entry, i) => entry + step[i]! * 0.5 ** half);
      const nextValue = f(next);
      if (nextValue > value) better = { x: next, value: nextValue };
    }
    if (better === null) return done;
    ({ x, value } = better);
  }
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, entry, i) => sum + entry * b[i]!, 0);

/** Gradient and second derivatives; the mixed ones from the two corners (+, +) and (-, -). */
function centralDifferences(f: (x: readonly number[]) => number, x: readonly number[], value: number) {
  const n = x.length;
  const at = (i: number, si: number, j: number, sj: number): number =>
    f(x.map((entry, k) => entry + (k === i ? si * STEP : 0) + (k === j ? sj * STEP : 0)));
  const up = x.map((_, i) => at(i, 1, -1, 0));
  const down = x.map((_, i) => at(i, -1, -1, 0));
  const gradient = x.map((_, i) => (up[i]! - down[i]!) / (2 * STEP));
  const hessian = x.map((_, i) => x.map((_, j) => (i === j ? (up[i]! + down[i]! - 2 * value) / STEP ** 2 : 0)));
  for (let i = 0; i < n; i++)
    for (let j = 0; j < i; j++) {
      const corners = at(i, 1, j, 1) + at(i, -1, j, -1);
      const mixed = (corners - up[i]! - down[i]! - up[j]! - down[j]! + 2 * value) / (2 * STEP ** 2);
      hessian[i]![j] = mixed;
      hessian[j]![i] = mixed;
    }
  return { gradient, hessian };
}
