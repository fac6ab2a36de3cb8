import type { ClassFigures } from './partSite.ts';
import { shares } from './proposal.ts';
import type { WeighedFigures } from './thinCloud.ts';

/**
 * A figure known to within this [sd, as a share of it] bends a forecast by less than 0.5 % (half its variance times the bend): hours far
 * ahead bend most with the power. The error of visits is small beside the gauges' and is not asked.
 */
const SHARP_SHARE: Record<Exclude<keyof ClassFigures, 'lnRate'>, number> = {
  power: 0.02,
  pathScatter: 0.2,
  partScatter: 0.2,
  machineScatter: 0.2,
  visitErrorMm: Number.POSITIVE_INFINITY,
};
const FIGURES = Object.keys(SHARP_SHARE) as (keyof typeof SHARP_SHARE)[];

/**
 * Figures that are known so sharply that their mean stands for all that is held possible of them; null: they are not.
 *   E f(x) = f(E x) + f''(E x) var(x) / 2:  the last term is what is left out
 * @source Taylor's series of a mean to its second term
 * @checked tests/way/heardMachines.test.ts: against all nodes, 9 of 10 hours at limit within 0.4 %, all within 1.2 %
 */
export function sharpMean(cloud: readonly WeighedFigures[]): ClassFigures | null {
  const { mean, square } = spread(cloud);
  const sharp = FIGURES.every((name) => square[name] <= (SHARP_SHARE[name] * mean[name]) ** 2);
  return sharp ? mean : null;
}

export const meanFigures = (cloud: readonly WeighedFigures[]): ClassFigures => spread(cloud).mean;

/** Mean of each figure, and its variance. */
function spread(cloud: readonly WeighedFigures[]): { mean: ClassFigures; square: ClassFigures } {
  const weights = shares(cloud);
  const over = (of: (figures: ClassFigures) => number): number =>
    cloud.reduce((sum, { figures }, k) => sum + weights[k]! * of(figures), 0);
  const each = (of: (name: keyof typeof SHARP_SHARE) => number) =>
    Object.fromEntries(FIGURES.map((name) => [name, of(name)])) as ClassFigures;
  const mean = each((name) => over((figures) => figures[name]));
  return { mean, square: each((name) => over((figures) => (figures[name] - mean[name]) ** 2)) };
}
