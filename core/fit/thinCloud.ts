import { recombine } from '../maths/recombine.ts';
import type { ClassFigures } from './partSite.ts';

/** Figures with the ln of their weight, up to a constant. */
export type WeighedFigures = { figures: ClassFigures; lnWeight: number };
export type WeighedPoint = { figures: ClassFigures; weight: number };

/**
 * How much each degree of a figure costs. Hours at limit turn first on the power, then on the scatter of paths, then on how
 * far parts and machines scatter: of the first more moments are kept.
 */
const DEGREE_COST: Record<keyof ClassFigures, number> = {
  power: 1,
  pathScatter: 1.25,
  partScatter: 1.5,
  machineScatter: 1.5,
  visitErrorMm: 2,
};
const FIGURES = Object.keys(DEGREE_COST) as (keyof ClassFigures)[];
const MOST_DEGREE = 6;

/** Points lighter than this change no figure that is shown. */
const LIGHTEST = 1e-9;

/**
 * A few figures for many: points of the cloud, weighed anew so that mean, spread and higher moments of the figures are
 * those of the whole cloud, as many moments as points. A forecast is smooth in the figures, so what it averages to is kept.
 */
export function thinCloud(cloud: readonly WeighedFigures[], count: number): WeighedPoint[] {
  const top = Math.max(...cloud.map((point) => point.lnWeight));
  const heavy = cloud
    .map(({ figures, lnWeight }) => ({ figures, weight: Math.exp(lnWeight - top) }))
    .filter(({ weight }) => weight > LIGHTEST);
  const total = heavy.reduce((sum, { weight }) => sum + weight, 0);
  const weights = heavy.map(({ weight }) => weight / total);
  const rows = standardised(heavy, weights);
  const degrees = moments(varying(heavy), count);
  const kept = recombine(atRightAngles(rows, degrees, weights), weights);
  const sum = kept.reduce((all, weight) => all + weight, 0);
  return heavy.flatMap(({ figures }, k) => (kept[k]! > 0 ? [{ figures, weight: kept[k]! / sum }] : []));
}

/** A product that is a sum of the ones before but for this share of it says nothing of its own. */
const OF_ITS_OWN = 1e-7;

/**
 * Products of powers of the figures at each point, freed of each other under the weights: sums of them are then kept to the last
 * digits, high degrees or not.
 * @source modified Gram-Schmidt: G. H. Golub and C. F. Van Loan, Matrix Computations (cited from memory)
 */
function atRightAngles(
  rows: readonly (readonly number[])[],
  degrees: readonly (readonly number[])[],
  weights: readonly number[],
): number[][] {
  const free: Float64Array[] = [];
  const dot = (a: Float64Array, b: Float64Array): number => {
    let sum = 0;
    for (let k = 0; k < a.length; k++) sum += weights[k]! * a[k]! * b[k]!;
    return sum;
  };
  for (const of of degrees) {
    const column = Float64Array.from(rows, (row) => of.reduce((product, degree, i) => product * row[i]! ** degree, 1));
    const whole = Math.sqrt(dot(column, column));
    for (const other of free) {
      const share = dot(column, other);
      for (let k = 0; k < column.length; k++) column[k] = column[k]! - share * other[k]!;
    }
    const own = Math.sqrt(dot(column, column));
    if (own > OF_ITS_OWN * whole) free.push(column.map((value) => value / own));
  }
  return rows.map((_, k) => free.map((column) => column[k]!));
}

const coordinate = (figures: ClassFigures, name: keyof ClassFigures): number =>
  name === 'power' ? Math.log(figures.power) : figures[name];

/** Figures that are not the same at every point. */
const varying = (points: readonly WeighedPoint[]): (keyof ClassFigures)[] =>
  FIGURES.filter((name) => points.some(({ figures }) => figures[name] !== points[0]!.figures[name]));

/** Coordinates of the figures that vary, with mean 0 and sd 1. */
function standardised(points: readonly WeighedPoint[], weights: readonly number[]): number[][] {
  const columns = varying(points).map((name) => {
    const values = points.map(({ figures }) => coordinate(figures, name));
    const mean = values.reduce((sum, value, k) => sum + weights[k]! * value, 0);
    const square = values.reduce((sum, value, k) => sum + weights[k]! * (value - mean) ** 2, 0);
    return values.map((value) => (square > 0 ? (value - mean) / Math.sqrt(square) : 0));
  });
  return points.map((_, k) => columns.map((column) => column[k]!));
}

/** The `count` cheapest products of powers of the figures: 1, then the power, its square, ... */
function moments(names: readonly (keyof ClassFigures)[], count: number): number[][] {
  const costs = names.map((name) => DEGREE_COST[name]);
  // each row follows from one already found by a degree more of its last figure, or of one behind it
  const found: { row: number[]; cost: number }[] = [];
  const open = [{ row: names.map(() => 0), cost: 0 }];
  while (found.length < count && open.length > 0) {
    const least = open.reduce((best, one, k) => (one.cost < open[best]!.cost - 1e-9 ? k : best), 0);
    const [next] = open.splice(least, 1);
    found.push(next!);
    const last = next!.row.findLastIndex((degree) => degree > 0);
    for (let i = Math.max(0, last); i < names.length; i++)
      if (next!.row[i]! < MOST_DEGREE)
        open.push({
          row: next!.row.map((degree, k) => (k === i ? degree + 1 : degree)),
          cost: next!.cost + costs[i]!,
        });
  }
  return found.map(({ row }) => row);
}
