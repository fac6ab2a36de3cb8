import type { ClassFigures } from './partSite.ts';

/** Figures with the ln of their weight, up to a constant. */
export type WeighedFigures = { figures: ClassFigures; lnWeight: number };

/**
 * How strongly each figure moves hours at limit, so that the cloud is cut where it matters: a forecast far ahead
 * turns first on the power, then on the scatter of paths, then on how far parts and machines scatter.
 */
const INFLUENCE: Record<keyof ClassFigures, number> = {
  power: 1,
  pathScatter: 1,
  partScatter: 0.4,
  machineScatter: 0.4,
  visitErrorMm: 0.3,
};

type Cell = { points: WeighedPoint[]; weight: number; axis: keyof ClassFigures; middle: number; spread: number };
export type WeighedPoint = { figures: ClassFigures; weight: number };

/**
 * A few figures for many: the cloud is cut into cells, always the one with most spread, across its widest axis at its
 * mean; each cell is then stood for by its mean figures.
 */
export function thinCloud(cloud: readonly WeighedFigures[], count: number): WeighedPoint[] {
  const top = Math.max(...cloud.map((point) => point.lnWeight));
  const weights = cloud.map((point) => Math.exp(point.lnWeight - top));
  const total = weights.reduce((sum, weight) => sum + weight, 0);
  const points = cloud.map((point, i) => ({ figures: point.figures, weight: weights[i]! / total }));
  const cells = [cellOf(points.filter((point) => point.weight > 1e-9))];
  while (cells.length < count) {
    const widest = cells.reduce((most, cell, i) => (cell.spread > cells[most]!.spread ? i : most), 0);
    const { points: all, axis, middle, spread } = cells[widest]!;
    if (!(spread > 1e-12)) break;
    const below = all.filter((point) => coordinate(point.figures, axis) <= middle);
    const above = all.filter((point) => coordinate(point.figures, axis) > middle);
    cells.splice(widest, 1, cellOf(below), cellOf(above));
  }
  return cells.map((cell) => ({ figures: meanFigures(cell.points), weight: cell.weight }));
}

const FIGURES = Object.keys(INFLUENCE) as (keyof ClassFigures)[];

const coordinate = (figures: ClassFigures, name: keyof ClassFigures): number =>
  name === 'power' ? Math.log(figures.power) : figures[name];

function cellOf(points: WeighedPoint[]): Cell {
  const weight = points.reduce((sum, point) => sum + point.weight, 0);
  let best: Cell = { points, weight, axis: 'power', middle: 0, spread: -1 };
  for (const axis of FIGURES) {
    const middle = points.reduce((sum, point) => sum + point.weight * coordinate(point.figures, axis), 0) / weight;
    const spread =
      INFLUENCE[axis] ** 2 *
      points.reduce((sum, point) => sum + point.weight * (coordinate(point.figures, axis) - middle) ** 2, 0);
    if (spread > best.spread) best = { points, weight, axis, middle, spread };
  }
  return best;
}

function meanFigures(points: readonly WeighedPoint[]): ClassFigures {
  const weight = points.reduce((sum, point) => sum + point.weight, 0);
  const mean = (name: keyof ClassFigures) =>
    points.reduce((sum, point) => sum + point.weight * coordinate(point.figures, name), 0) / weight;
  return {
    partScatter: mean('partScatter'),
    pathScatter: mean('pathScatter'),
    power: Math.exp(mean('power')),
    machineScatter: mean('machineScatter'),
    visitErrorMm: mean('visitErrorMm'),
  };
}
