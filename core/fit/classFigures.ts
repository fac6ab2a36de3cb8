import { median } from '../maths/median.ts';
import { normalCdf, normalQuantile } from '../maths/normal.ts';
import type { ClassPrior } from './classPrior.ts';
import type { ModelSettings } from './modelSettings.ts';
import type { ClassFigures } from './partSite.ts';

/**
 * The figures of a class as coordinates x, each N(0, 1) before any reading:
 *   op = 0.5 k(x),  c = 0.15 k(x),  om = 0.3 k(x),  sv = 2 x median gauge error x k(x),  ln g = 0.15 x,
 *   mu ~ N(m0 + sqrt(1 - w^2) s0 x, (w s0)^2):  slices that together are N(m0, s0^2)
 * with k(x) = normalQuantile((1 + normalCdf(x)) / 2), which turns a normal into a half-normal.
 */
export type FigureCoordinates = {
  /** free coordinates, in this order */
  readonly names: readonly (keyof ClassFigures)[];
  /** 1 sd of the usual gauge of the class [mm] */
  readonly gaugeSdMm: number;
  readonly prior: ClassPrior;
};

/** Scatters are never quite nothing: at 0 a path has no noise and a class no spread, and sums become steps. */
const LEAST_SCATTER = 0.01;

/** Powers beyond e^-2 .. e^2 are no wear of this world; the most bent set at hand has 0.2. */
const MOST_LN_POWER = 2;

/** How wide a slice of mu is, as a share of all that is held of it: so wide that parts' forecasts go smoothly from one to the next. */
const SLICE = 0.6;

/** What is held of mu before any reading, at these figures: of the slice that they look at. */
export const priorAt = (prior: ClassPrior, { lnRate }: ClassFigures): ClassPrior =>
  lnRate === undefined ? prior : { ...prior, m0: lnRate, s0: SLICE * prior.s0 };

const halfNormal = (x: number): number => {
  // (1 + Phi(x)) / 2 from the upper side, which keeps its digits for large x
  const upper = 0.5 * normalCdf(-x);
  return -normalQuantile(upper);
};

/**
 * Which figures a class can tell apart.
 * One part a machine: its machine's harshness cannot be told from the part's own; no machine with two: it is left out.
 * One size a visit: the visit's error cannot be told from the gauge's; no visit with two: it is left out.
 * In a class of few parts, each on its own machine, mu is looked at slice by slice: of parts that contradict each other any may be
 * the odd one, and what is held of mu has more tops than one, which no normal has. A slice has one.
 */
export function figureCoordinates(
  told: { fewParts: boolean; machines: boolean; visits: boolean; power: boolean },
  gaugeSdsMm: readonly number[],
  prior: ClassPrior,
): FigureCoordinates {
  const names: (keyof ClassFigures)[] = ['partScatter', 'pathScatter'];
  if (told.fewParts && !told.machines && !told.visits) names.push('lnRate');
  if (told.machines) names.push('machineScatter');
  if (told.visits) names.push('visitErrorMm');
  if (told.power) names.push('power');
  return { names, gaugeSdMm: median(gaugeSdsMm) ?? 0.05, prior };
}

export function figuresAt(x: readonly number[], coordinates: FigureCoordinates, settings: ModelSettings): ClassFigures {
  const figures: ClassFigures = { partScatter: 0, pathScatter: 0, power: 1, machineScatter: 0, visitErrorMm: 0 };
  coordinates.names.forEach((name, i) => {
    figures[name] = figureAt(name, x[i]!, coordinates, settings);
  });
  return figures;
}

function figureAt(
  name: keyof ClassFigures,
  x: number,
  { gaugeSdMm, prior }: FigureCoordinates,
  settings: ModelSettings,
): number {
  switch (name) {
    case 'partScatter':
      return Math.max(LEAST_SCATTER, settings.partScatterScale * halfNormal(x));
    case 'pathScatter':
      return Math.max(LEAST_SCATTER, settings.pathScatterScale * halfNormal(x));
    case 'machineScatter':
      return Math.max(LEAST_SCATTER, settings.machineScatterScale * halfNormal(x));
    case 'visitErrorMm':
      return gaugeSdMm * Math.max(LEAST_SCATTER, settings.visitErrorGauges * halfNormal(x));
    case 'lnRate':
      return prior.m0 + Math.sqrt(1 - SLICE ** 2) * prior.s0 * x;
    case 'power':
      return Math.exp(
        Math.min(MOST_LN_POWER, Math.max(-MOST_LN_POWER, settings.lnPowerSd * (x + settings.lnPowerTail * x ** 3))),
      );
  }
}
