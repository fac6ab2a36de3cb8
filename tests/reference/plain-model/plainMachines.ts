import { normalDensity } from '#core/maths/normal.ts';
import { type Axis, axis, heldAt, openingAxis } from './plainGrid.ts';
import { addNode, emptyLaw, type PlainLaw, summingToOne } from './plainHours.ts';
import { fillKernel, type Kernel, type PlainPart, timesOf } from './plainKernel.ts';
import type { PlainPrior } from './plainModel.ts';

/**
 * The plain model extended by what parts of one machine share, summed over grids: its harshness a, and the error e of a visit in
 * which all its parts were measured.
 *
 *   beta = u + part's own;  u = mu + a;  a ~ N(expected, om^2), one a machine;  e ~ N(0, sv^2), one a machine's shared visit
 *   a size of the shared visit reads X + e + gauge; one taken by itself has an error of that size of its own
 *   om ~ half-normal, sv ~ half-normal; the rest as in plainModel.ts
 */
export type PlainMachine = {
  /** ln harshness expected by the shop's word */
  expected: number;
  parts: readonly MachinePart[];
};

/** `shared`: which of its readings was taken in the machine's shared visit; null: none. */
export type MachinePart = PlainPart & { shared: number | null };

export type MachinesPrior = PlainPrior & { omScale: number; svScale: number; svLeast: number };

/** Axes of all figures; those of om and sv hold one value where the readings tell nothing of them. */
export type MachinesGrid = { mu: Axis; omega: Axis; om: Axis; c: Axis; x: Axis; sv: Axis };

/** Steps of ln rate, fine enough for a part that was read sharply; u lies on every second of them, mu on every fourth. */
const RATE_STEP = 0.02;
const U_STEP = 2 * RATE_STEP;
const MU_STEP = 4 * RATE_STEP;
const U_REACH = 3.2;
const RATE_REACH = 4.8;
/** Nodes of a visit's error, in sd: a trapezium sum over 4 sd either way. */
const ERROR_NODES = Array.from({ length: 13 }, (_, k) => (2 * (k - 6)) / 3);

/**
 * Equal steps from a half to a third as wide find the same hours to 0.05 %, the same chances to 0.0003. The scatters reach where those
 * of a class of three parts still may lie.
 */
export const machinesGrid = (prior: MachinesPrior, of: { powers: boolean; visits: boolean }): MachinesGrid => ({
  mu: axis(prior.m0 - 15 * MU_STEP, MU_STEP, 31),
  omega: openingAxis(0.03, 0.17, 18),
  om: openingAxis(0.05, 0.2, 13),
  c: openingAxis(0.0154, 0.22, 13),
  x: of.powers ? axis(-3.5, 0.5, 15) : heldAt(0),
  sv: of.visits ? openingAxis(0.025, 0.25, 9) : heldAt(0),
});

/** Posterior of a class's figures, and all that is needed to carry it on to a part. */
export type PlainMachines = {
  prior: MachinesPrior;
  grid: MachinesGrid;
  machines: readonly PlainMachine[];
  /** over mu fastest, then om, omega, sv, c, x; sums to 1 */
  weight: Float64Array;
  /** parts' own laws at each omega */
  own: readonly Row[][];
  /** sums of the parts' curves under them, machine by machine, at each omega of each column */
  atU: readonly PartsAtU[][][];
};

const us = (prior: MachinesPrior): number[] => {
  const side = Math.round(U_REACH / U_STEP);
  return Array.from({ length: 2 * side + 1 }, (_, k) => prior.m0 + (k - side) * U_STEP);
};
const rates = (prior: MachinesPrior): number[] => {
  const side = Math.round(RATE_REACH / RATE_STEP);
  return Array.from({ length: 2 * side + 1 }, (_, k) => prior.m0 + (k - side) * RATE_STEP);
};

/** Values at nodes, and from where to where they are more than nothing. */
type Row = { values: Float64Array; from: number; end: number };

/** Values below this of the highest are nothing. */
const NOTHING = 1e-12;
/** No chance of a machine is less, lest a product of them be 0. */
const LEAST_CHANCE = 1e-60;

function rowOf(values: Float64Array): Row {
  const least = NOTHING * values.reduce((most, value) => Math.max(most, value), 0);
  return {
    values,
    from: values.findIndex((value) => value > least),
    end: values.findLastIndex((value) => value > least) + 1,
  };
}

const summed = (values: Float64Array): number => {
  let sum = 0;
  for (const value of values) sum += value;
  return sum;
};

/** Sum of the products of two rows; as two sums, of which neither waits for the other. */
function dot({ values: a, from: fromA, end: endA }: Row, { values: b, from: fromB, end: endB }: Row): number {
  const end = Math.min(endA, endB);
  let k = Math.max(fromA, fromB);
  let even = 0;
  let odd = 0;
  for (; k + 1 < end; k += 2) {
    even += a[k]! * b[k]!;
    odd += a[k + 1]! * b[k + 1]!;
  }
  return k < end ? even + odd + a[k]! * b[k]! : even + odd;
}

/** Adds so many times a row. */
function addTo(sums: Float64Array, times: number, row: Row): void {
  for (let k = row.from; k < row.end; k++) sums[k] = sums[k]! + times * row.values[k]!;
}

/** Weights of a normal at equal nodes, summing to 1; narrower than their steps it is the two next to its mean, which they keep. */
function bell(nodes: readonly number[], mean: number, sd: number): Float64Array {
  const step = nodes[1]! - nodes[0]!;
  const narrow = sd < 0.5 * step;
  const row = Float64Array.from(nodes, (node) =>
    narrow ? Math.max(0, 1 - Math.abs(node - mean) / step) : normalDensity((node - mean) / sd),
  );
  const total = row.reduce((sum, value) => sum + value, 0);
  return row.map((value) => value / total);
}

/** A part's own law about u at each u: rows of weights over the nodes of ln rate. */
function ownLaws(prior: MachinesPrior, omega: number): Row[] {
  const sd = Math.max(prior.least, omega);
  const betas = rates(prior);
  return us(prior).map((u) => {
    const like = bell(betas, u, sd);
    if (prior.oddShare === 0) return rowOf(like);
    const odd = bell(betas, u, prior.oddWidth * sd);
    return rowOf(like.map((value, k) => (1 - prior.oddShare) * value + prior.oddShare * odd[k]!));
  });
}

/** Figures at one column of the grid: c, power and error of visits. */
type Column = { c: number; g: number; sv: number };

const columnsOf = ({ prior, grid }: Pick<PlainMachines, 'prior' | 'grid'>): (Column & { lnPrior: number })[] =>
  grid.x.nodes.flatMap((x, ix) =>
    grid.c.nodes.flatMap((c, ic) =>
      grid.sv.nodes.map((sv, iv) => ({
        c: Math.max(prior.least, c),
        g: Math.exp(prior.lnGSd * (x + prior.lnGTail * x ** 3)),
        sv: grid.sv.nodes.length > 1 ? Math.max(prior.svLeast, sv) : 0,
        lnPrior:
          Math.log(grid.x.weights[ix]! * grid.c.weights[ic]! * grid.sv.weights[iv]!) -
          0.5 * ((grid.x.nodes.length > 1 ? x * x : 0) + (c / prior.cScale) ** 2 + (sv / prior.svScale) ** 2),
      })),
    ),
  );

/** Chance of a part's sizes, and its true wear, at every ln rate; for each error of the shared visit. */
function curvesOf(part: MachinePart, { c, g, sv }: Column, prior: MachinesPrior): Kernel[][] {
  const times = timesOf(part, prior.hRefHours, g);
  const betas = rates(prior);
  return errorsAt(sv).map(({ e }) => {
    const readings = part.readings.map((reading, j) =>
      j === part.shared
        ? { ...reading, wearMm: reading.wearMm - e }
        : { ...reading, sdMm: Math.hypot(reading.sdMm, sv) },
    );
    return betas.map((beta) => {
      const found: Kernel = { lnChance: 0, meanMm: 0, varMm2: 0, time: 0 };
      fillKernel(found, { ...part, readings }, times, beta, c);
      return found;
    });
  });
}

function errorsAt(sv: number): { e: number; weight: number }[] {
  if (sv === 0) return [{ e: 0, weight: 1 }];
  const total = ERROR_NODES.reduce((sum, z) => sum + normalDensity(z), 0);
  return ERROR_NODES.map((z) => ({ e: z * sv, weight: normalDensity(z) / total }));
}

/** Of one machine at one column and omega: the sum of each part's curve under its law at every u, for each error; parts outermost. */
type PartsAtU = Float64Array[][];

const partsAtU = (curves: readonly Row[][], laws: readonly Row[]): PartsAtU =>
  curves.map((ofPart) => ofPart.map((curve) => Float64Array.from(laws, (law) => dot(law, curve))));

/** Sum over errors of the product over parts, at every u. */
function product(z: PartsAtU, errors: readonly { weight: number }[]): Float64Array {
  const all = new Float64Array(z[0]![0]!.length);
  for (const [k, { weight }] of errors.entries())
    for (let u = 0; u < all.length; u++) {
      let at = weight;
      for (const ofPart of z) at *= ofPart[k]![u]!;
      all[u] = all[u]! + at;
    }
  return all;
}

/** Law of a machine's u about mu: one row of weights over u for each mu, for each om. */
const machineLaws = ({ prior, grid }: Pick<PlainMachines, 'prior' | 'grid'>, expected: number): Row[][] =>
  grid.om.nodes.map((om) =>
    grid.mu.nodes.map((mu) => rowOf(bell(us(prior), mu + expected, Math.max(prior.least, om)))),
  );

export function plainMachines(
  machines: readonly PlainMachine[],
  prior: MachinesPrior,
  grid: MachinesGrid,
): PlainMachines {
  const columns = columnsOf({ prior, grid });
  const own = grid.omega.nodes.map((omega) => ownLaws(prior, omega));
  const shared = machines.map(({ expected }) => machineLaws({ prior, grid }, expected));
  const [muCount, omCount] = [grid.mu.nodes.length, grid.om.nodes.length];
  const ln = new Float64Array(columns.length * own.length * omCount * muCount);
  const figures = lnOuter(prior, grid);
  const atU: PartsAtU[][][] = [];
  let at = 0;
  for (const column of columns) {
    const errors = errorsAt(column.sv);
    const curves = machines.map(({ parts }) => parts.map((part) => scaled(curvesOf(part, column, prior))));
    const lnColumn = column.lnPrior + tops(curves);
    const chances = curves.map((ofMachine) => ofMachine.map(({ chance }) => chance));
    const ofColumn = own.map((laws) => chances.map((ofMachine) => partsAtU(ofMachine, laws)));
    atU.push(ofColumn);
    for (const [io, z] of ofColumn.entries()) {
      const rows = z.map((ofMachine) => rowOf(product(ofMachine, errors)));
      for (let im = 0; im < omCount; im++)
        for (let k = 0; k < muCount; k++) {
          let chance = 1;
          for (let m = 0; m < rows.length; m++) chance *= dot(shared[m]![im]![k]!, rows[m]!) + LEAST_CHANCE;
          ln[at++] = lnColumn + figures[(io * omCount + im) * muCount + k]! + Math.log(chance);
        }
    }
  }
  const top = ln.reduce((most, value) => Math.max(most, value), Number.NEGATIVE_INFINITY);
  const weight = ln.map((value) => Math.exp(value - top));
  const total = summed(weight);
  return { prior, grid, machines, weight: weight.map((value) => value / total), own, atU };
}

/** Curves as chances under their highest point. */
function scaled(curves: readonly Kernel[][]): { chance: Row[]; lnTop: number } {
  const lnTop = curves.flat().reduce((most, { lnChance }) => Math.max(most, lnChance), Number.NEGATIVE_INFINITY);
  return {
    lnTop,
    chance: curves.map((curve) => rowOf(Float64Array.from(curve, (node) => Math.exp(node.lnChance - lnTop)))),
  };
}

const tops = (curves: readonly { lnTop: number }[][]): number =>
  curves.flat().reduce((sum, { lnTop }) => sum + lnTop, 0);

/** ln prior of (mu, om, omega), mu fastest. */
const lnOuter = (prior: MachinesPrior, { omega, om, mu }: MachinesGrid): number[] =>
  omega.nodes.flatMap((o, io) =>
    om.nodes.flatMap((m, im) =>
      mu.nodes.map(
        (at) =>
          Math.log(omega.weights[io]! * om.weights[im]!) -
          0.5 * ((o / prior.omegaScale) ** 2 + (m / prior.omScale) ** 2 + ((at - prior.m0) / prior.s0) ** 2),
      ),
    ),
  );

/** Columns, rows of a column, cells and nodes that hold less change no figure. */
const LEAST_COLUMN = 1e-6;
const LEAST_ROW = 1e-7;
const LEAST_CELL = 1e-10;
const LEAST_NODE = 1e-9;

/** What is held of each part of a machine, all figures, the machine's harshness and the error of its visit summed out. */
export function plainPartsOfMachine(of: PlainMachines, machine: number): PlainLaw[] {
  const { prior, grid, machines, weight, own, atU } = of;
  const { parts, expected } = machines[machine]!;
  const laws = parts.map(() => emptyLaw(prior.hRefHours));
  const betas = rates(prior);
  const acrossU = own.map((rows) => betas.map((_, beta) => rowOf(Float64Array.from(rows, (row) => row.values[beta]!))));
  const shared = machineLaws(of, expected);
  const [muCount, omCount] = [grid.mu.nodes.length, grid.om.nodes.length];
  const inner = own.length * omCount * muCount;
  for (const [ic, column] of columnsOf(of).entries()) {
    const cells = weight.subarray(ic * inner, (ic + 1) * inner);
    if (summed(cells) < LEAST_COLUMN) continue;
    const errors = errorsAt(column.sv);
    const kernels = parts.map((one) => curvesOf(one, column, prior));
    const curves = kernels.map((one) => scaled(one).chance);
    const heldOf = parts.map(() => errors.map(() => new Float64Array(betas.length)));
    for (const [io, across] of acrossU.entries()) {
      const outer = cells.subarray(io * omCount * muCount, (io + 1) * omCount * muCount);
      if (summed(outer) < LEAST_ROW) continue;
      const z = atU[ic]![io]![machine]!;
      const all = rowOf(product(z, errors));
      // posterior over u, less the parts' own word: sum over om and mu of cell x law / Z of the machine
      const from = new Float64Array(all.values.length);
      for (let im = 0; im < omCount; im++)
        for (let k = 0; k < muCount; k++) {
          const cell = outer[im * muCount + k]!;
          if (cell < LEAST_CELL) continue;
          const row = shared[im]![k]!;
          addTo(from, cell / dot(row, all), row);
        }
      for (const [e, { weight: ofError }] of errors.entries())
        for (const p of parts.keys()) {
          const others = rowOf(
            from.map((ofU, u) =>
              z.reduce((product, other, k) => (k === p ? product : product * other[e]![u]!), ofError * ofU),
            ),
          );
          const { from: first, end } = curves[p]![e]!;
          const held = heldOf[p]![e]!;
          for (let beta = first; beta < end; beta++) held[beta] = held[beta]! + dot(others, across[beta]!);
        }
    }
    for (const [p, law] of laws.entries()) {
      const power = law.powers.push({ g: column.g, time: kernels[p]![0]![0]!.time }) - 1;
      for (const e of errors.keys())
        for (const [k, beta] of betas.entries()) {
          const chance = heldOf[p]![e]![k]! * curves[p]![e]!.values[k]!;
          if (chance > LEAST_NODE) addNode(law, chance, beta, column.c, power, kernels[p]![e]![k]!);
        }
    }
  }
  return laws.map(summingToOne);
}
