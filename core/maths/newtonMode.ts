import { symmetricEigen } from './symmetricEigen.ts';

export type Mode = {
  x: number[];
  value: number;
  /** steps along which the function falls by 1/2 from its top, were it quadratic: one row a coordinate, one column a step */
  axes: number[][];
};

const STEP = 0.1;
const LEAST_CURVATURE = 0.5;
const LONGEST_MOVE = 1;
/** Mixed second derivatives are taken once a move would gain less than this, and no more moves made below the other. */
const NEAR_GAIN = 0.5;
const ENOUGH_GAIN = 0.03;
const MOST_MOVES = 12;

/**
 * Top of a smooth function of a few coordinates of scale about 1, by Newton's steps on central differences: along the
 * coordinates at first, and with the mixed second derivatives, taken once, near the top. Curvatures less than 1/2 are taken as
 * 1/2, moves longer than 1 are cut to 1 and halved until they lead uphill.
 * @param f a log density; called in a fixed order, so the same function gives the same bits
 * @source J. Nocedal and S. Wright, Numerical Optimization, 2nd ed. (2006), sections 3.4 and 8.1
 */
export function newtonMode(f: (x: readonly number[]) => number, start: readonly number[]): Mode {
  let x = [...start];
  let value = f(x);
  let around = differences(f, x, value);
  let hessian: number[][] | null = null;
  for (let move = 0; move < MOST_MOVES; move++) {
    let { step, gain } = newtonStep(hessian ?? diagonal(around), around);
    if (gain < NEAR_GAIN && hessian === null) {
      hessian = withMixed(f, x, value, around);
      ({ step, gain } = newtonStep(hessian, around));
    }
    if (gain < ENOUGH_GAIN) break;
    let better: { x: number[]; value: number } | null = null;
    for (let half = 0; half < 6 && better === null; half++) {
      const next = x.map((entry, i) => entry + step[i]! * 0.5 ** half);
      const nextValue = f(next);
      if (nextValue > value) better = { x: next, value: nextValue };
    }
    if (better === null) break;
    ({ x, value } = better);
    around = differences(f, x, value);
    if (hessian !== null) setDiagonal(hessian, around.second);
  }
  const { curvatures, vectors } = curvatureAxes(hessian ?? withMixed(f, x, value, around));
  return { x, value, axes: x.map((_, i) => vectors.map((vector, a) => vector[i]! / Math.sqrt(curvatures[a]!))) };
}

/** The move to the top of the quadratic, no longer than may be, and what it would gain. */
function newtonStep(hessian: readonly (readonly number[])[], { gradient }: Differences) {
  const { curvatures, vectors } = curvatureAxes(hessian);
  const along = vectors.map((vector, a) => dot(vector, gradient) / curvatures[a]!);
  const whole = gradient.map((_, i) => vectors.reduce((sum, vector, a) => sum + vector[i]! * along[a]!, 0));
  const length = Math.hypot(...whole);
  const step = length > LONGEST_MOVE ? whole.map((entry) => (entry * LONGEST_MOVE) / length) : whole;
  return { step, gain: 0.5 * Math.abs(dot(step, gradient)) };
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

const diagonal = ({ second }: Differences): number[][] =>
  second.map((entry, i) => second.map((_, j) => (i === j ? entry : 0)));

/** All second derivatives; the mixed ones from the two corners (+, +) and (-, -). */
function withMixed(
  f: (x: readonly number[]) => number,
  x: readonly number[],
  value: number,
  around: Differences,
): number[][] {
  const { up, down } = around;
  const corner = (i: number, j: number, by: number) =>
    f(x.map((entry, k) => (k === i || k === j ? entry + by : entry)));
  const hessian = diagonal(around);
  for (let i = 0; i < x.length; i++)
    for (let j = 0; j < i; j++) {
      const mixed =
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
