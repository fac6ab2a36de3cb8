import { normalCdf } from '../maths/normal.ts';
import type { WeighedFigures } from './thinCloud.ts';

/** Where the chances of a part are taken, in sd of its ln rate: over the whole of what is held possible. */
const WHERE = [-1.6, -0.6, 0.6, 1.6];

/**
 * Chances that a part has worn as much by some hours as its like does in a typical life, at each of the figures that are held
 * possible of the class: much like what it will be forecast by. A part's hours are those at which it is worn so with a chance of
 * about 5, 27, 73 and 95 %; of more parts than rows allow, the first, then every second, third, ...
 *   h = H exp((m0 - mean beta - z sd beta) / mean g),  chance = Phi((beta + g ln(h / H) - m0) / sd)
 * @param points those of one class; without their bells there are no rows
 * @param weights of the points, summing to 1
 * @param m0 ln wear in a typical life H, as the class's prior has it
 * @source own derivation
 * @returns at most `most` rows, one chance a point
 */
export function partChances(
  points: readonly WeighedFigures[],
  weights: readonly number[],
  m0: number,
  most: number,
): Float64Array[] {
  const parts = points.every(({ bells }) => bells) ? (points[0]?.bells?.length ?? 0) / 2 : 0;
  const stride = Math.max(1, parts / Math.floor(most / WHERE.length));
  const mean = (of: (point: WeighedFigures) => number): number =>
    points.reduce((sum, point, k) => sum + weights[k]! * of(point), 0);
  const power = mean(({ figures }) => figures.power);
  const rows: Float64Array[] = [];
  for (let at = 0; Math.floor(at) < parts; at += stride) {
    const beta = ({ bells }: WeighedFigures) => bells![2 * Math.floor(at)]!;
    const sd = ({ bells }: WeighedFigures) => bells![2 * Math.floor(at) + 1]!;
    const middle = mean(beta);
    const spread = Math.sqrt(mean((point) => (beta(point) - middle) ** 2 + sd(point) ** 2));
    for (const z of WHERE) {
      const lnLives = (m0 - middle - z * spread) / power;
      rows.push(
        Float64Array.from(points, (point) => normalCdf((beta(point) + point.figures.power * lnLives - m0) / sd(point))),
      );
    }
  }
  return rows;
}
