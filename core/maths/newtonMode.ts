import { symmetricEigen } from './symmetricEigen.ts';

export type Mode = {
  x: number[];
  value: number;
  /** steps along which the function falls by 1/2 from its top, were it quadratic: one row a coordinate, one column a step */
  axes: number[][];
  /** second derivatives at x, or near it */
  hessian: number[][];
};

/**
 * Where to begin. Second derivatives known from a like function, for the first coordinates at least, are not asked for
 * again unless x moves far.
 */
export type ModeStart = { x: readonly number[]; hessian?: readonly (readonly number[])[] };

const STEP = 0.1;
const LEAST_CURVATURE = 0.5;
const LONGEST_MOVE = 1;
const ENOUGH_GAIN = 0.01;
const MOST_MOVES = 12;
/** Second derivatives of a place further off than this are taken again where the search ends. */
const STALE = 0.5;

/**
 * Top of a smooth function of a few coordinates of scale about 1, by Newton's steps on central differences.
 * Mixed second derivatives are taken once, at the start, and again at the end if that is far off; the plain ones
 * come with each gradient. Curvatures less than 1/2 are taken as 1/2, moves longer than 1 are cut to 1 and halved
 * until they lead uphill.
 * @param f a log density; called in a fixed order, so the same function gives the same bits
 * @source J. Nocedal and S. Wright, Numerical Optimization, 2nd ed. (2006), sections 3.4 and 8.1
 */
export function newtonMode(f: (x: readonly number[]) => number, start: ModeStart): Mode {
  let x = [...start.x];
  let value = f(x);
  let around = differences(f, x, value);
  let hessian = withMixed(f, x, value, around, start.hessian ?? []);
  let hessianAt = x;
  for (let move = 0; move < MOST_MOVES; move++) {
    setDiagonal(hessian, around.second);
    const { curvatures, vectors } = curvatureAxes(hessian);
    const along = vectors.map((vector, a) => dot(vector, around.gradient) / curvatures[a]!);
    let step = x.map((_, i) => vectors.reduce((sum, vector, a) => sum + vector[i]! * along[a]!, 0));
    const length = Math.hypot(...step);
    if (length > LONGEST_MOVE) step = step.map((entry) => (entry * LONGEST_MOVE) / length);
    if (0.5 * Math.abs(dot(step, around.gradient)) < ENOUGH_GAIN) break;
    let better: { x: number[]; value: number } | null = null;
    for (let half = 0; half < 6 && better === null; half++) {
      const next = x.map((entry, i) => entry + step[i]! * 0.5 ** half);
      const nextValue = f(next);
      if (nextValue > value) better = { x: next, value: nextValue };
    }
    if (better === null) break;
    ({ x, value } = better);
    around = differences(f, x, value);
  }
  if (Math.hypot(...x.map((entry, i) => entry - hessianAt[i]!)) > STALE) {
    hessian = withMixed(f, x, value, around, []);
    hessianAt = x;
  }
  setDiagonal(hessian, around.second);
  const { curvatures, vectors } = curvatureAxes(hessian);
  return {
    x,
    value,
    hessian,
    axes: x.map((_, i) => vectors.map((vector, a) => vector[i]! / Math.sqrt(curvatures[a]!))),
  };
}

const dot = (a: readonly number[], b: readonly number[]): number => a.reduce((sum, entry, i) => sum + entry * b[i]!, 0);

function curvatureAxes(hessian: readonly (readonly number[])[]): { curvatures: number[]; vectors: number[][] } {
  const { values, vectors } = symmetricEigen(hessian.map((row) => row.map((entry) => -entry)));
  return { curvatures: values.map((entry) => Math.max(Math.abs(entry), LEAST_CURVATURE)), vectors };
}

type Differences = { up: number[]; down: number[]; gradient: number[]; second: number[] };

function differences(f: (x: readonly number[]) => number, x: readonly number[], value: number): Differences {
  const at = (i: number, by: number) => f(x.map((entry, k) => (k === i ? entry + by : entry)));
  const up = x.map((_, i) => at(i, STEP));
  const down = x.map((_, i) => at(i, -STEP));
  return {
    up,
    down,
    gradient: x.map((_, i) => (up[i]! - down[i]!) / (2 * STEP)),
    second: x.map((_, i) => (up[i]! + down[i]! - 2 * value) / STEP ** 2),
  };
}

/** All second derivatives; the mixed ones as known, else from the two corners (+, +) and (-, -). */
function withMixed(
  f: (x: readonly number[]) => number,
  x: readonly number[],
  value: number,
  { up, down, second }: Differences,
  known: readonly (readonly number[])[],
): number[][] {
  const corner = (i: number, j: number, by: number) =>
    f(x.map((entry, k) => (k === i || k === j ? entry + by : entry)));
  const hessian = x.map((_, i) => x.map((_, j) => (i === j ? second[i]! : 0)));
  for (let i = 0; i < x.length; i++)
    for (let j = 0; j < i; j++) {
      const mixed =
        known[i]?.[j] ??
        (corner(i, j, STEP) + corner(i, j, -STEP) - up[i]! - down[i]! - up[j]! - down[j]! + 2 * value) /
          (2 * STEP ** 2);
      hessian[i]![j] = mixed;
      hessian[j]![i] = mixed;
    }
  return hessian;
}

const setDiagonal = (hessian: number[][], second: readonly number[]): void => {
  second.forEach((entry, i) => {
    hessian[i]![i] = entry;
  });
};
