import { recombine } from '../maths/recombine.ts';
import { partChances } from './partChances.ts';
import type { ClassFigures } from './partSite.ts';
import { shares } from './proposal.ts';

/**
 * Figures with the ln of their weight, up to a constant; and, where they were asked, what is held of the parts' ln rates there: mean
 * and sd of each, one part after another; first of one that was never read.
 */
export type WeighedFigures = { figures: ClassFigures; lnWeight: number; bells?: Float64Array };
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
  lnRate: 1.25,
};
const FIGURES = Object.keys(DEGREE_COST) as (keyof ClassFigures)[];
const MOST_DEGREE = 6;

/** Points lighter than this change no figure that is shown. */
const LIGHTEST = 1e-9;

/** Of the sums that are kept so many may be chances of parts. */
const CHANCES = 0.5;

/**
 * A few figures for many: points of the cloud, weighed anew so that mean, spread and higher moments of the figures are
 * those of the whole cloud, and so are the chances of its parts where they were asked: as many sums as points. A forecast is smooth
 * in the figures, and near those chances, so what it averages to is kept.
 * @param m0 ln wear in a typical life, as the class's prior has it
 */
export function thinCloud(cloud: readonly WeighedFigures[], count: number, m0: number): WeighedPoint[] {
  const top = cloud.reduce((most, { lnWeight }) => Math.max(most, lnWeight), Number.NEGATIVE_INFINITY);
  const heavy = cloud.filter(({ lnWeight }) => Math.exp(lnWeight - top) > LIGHTEST);
  const weights = shares(heavy);
  const names = varying(heavy);
  const columns = names.map((name) =>
    freed(
      heavy.map(({ figures }) => coordinate(figures, name)),
      weights,
    ),
  );
  const chances = partChances(heavy, weights, m0, CHANCES * count);
  const degrees = moments(names, count - chances.length).filter((row) =>
    row.every((degree, i) => degree < columns[i]!.length),
  );
  const powers = degrees.map((row) =>
    productOf(
      row.map((degree, i) => columns[i]![degree]!),
      heavy.length,
    ),
  );
  const kept = recombine([...powers, ...chances], weights);
  const sum = kept.reduce((all, weight) => all + weight, 0);
  return heavy.flatMap(({ figures }, k) => (kept[k]! > 0 ? [{ figures, weight: kept[k]! / sum }] : []));
}

function productOf(factors: readonly Float64Array[], length: number): Float64Array {
  const product = new Float64Array(length).fill(1);
  for (const factor of factors) for (let k = 0; k < length; k++) product[k] = product[k]! * factor[k]!;
  return product;
}

/** A power that is a sum of the ones before but for this share of it says nothing of its own. */
const OF_ITS_OWN = 1e-7;

/**
 * The powers of one figure at each point, 1 first, each freed of the ones before under the weights and brought to a mean square of 1:
 * sums of their products are then kept to the last digits, high degrees or not.
 * @returns one row a degree
 * @source polynomials at right angles by their recurrence: W. Gautschi, Orthogonal Polynomials (2004; cited from memory)
 */
function freed(of: readonly number[], weights: readonly number[]): Float64Array[] {
  const rows = [Float64Array.from(of, () => 1)];
  while (rows.length <= MOST_DEGREE) {
    const last = rows.at(-1)!;
    const next = last.map((value, k) => value * of[k]!);
    const whole = Math.sqrt(meanProduct(next, next, weights));
    // twice over, so that rounding leaves nothing
    for (const row of [...rows, ...rows]) {
      const share = meanProduct(next, row, weights);
      for (let k = 0; k < next.length; k++) next[k] = next[k]! - share * row[k]!;
    }
    const own = Math.sqrt(meanProduct(next, next, weights));
    if (!(own > OF_ITS_OWN * whole)) break;
    rows.push(next.map((value) => value / own));
  }
  return rows;
}

function meanProduct(one: Float64Array, other: Float64Array, weights: readonly number[]): number {
  let sum = 0;
  for (let k = 0; k < one.length; k++) sum += weights[k]! * (one[k]! * other[k]!);
  return sum;
}

const coordinate = (figures: ClassFigures, name: keyof ClassFigures): number =>
  name === 'power' ? Math.log(figures.power) : (figures[name] ?? 0);

/** Figures that are not the same at every point. */
const varying = (points: readonly WeighedFigures[]): (keyof ClassFigures)[] =>
  FIGURES.filter((name) => points.some(({ figures }) => figures[name] !== points[0]!.figures[name]));

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
