import { type Axis, axisNames, halved, type PlainGrid, stepOf } from '../reference/plain-model/plainGrid.ts';
import { plainChance, plainHours } from '../reference/plain-model/plainHours.ts';
import type { PlainPart } from '../reference/plain-model/plainKernel.ts';
import { fittedPlainClass, type PlainClass, plainClass, plainPart } from '../reference/plain-model/plainModel.ts';
import { plainSettings, variedClass } from './agreement.ts';
import { plainPartOf, plainPrior } from './plainForetell.ts';

const LIMIT_MM = 2.5;
const { driftDelta } = plainSettings;

/** One axis of the plain model's grid: its step in sd of what it holds, and how far hours move when it is halved, as a share. */
export type Halving = { axis: keyof PlainGrid; nodes: number; stepOfSd: number; most: number };

/**
 * Steps of one axis of a class's grid halved at a time: errors of equal nodes on several axes add up.
 * @param parts of the class; the first twenty that are not worn past the limit already are forecast
 */
export function halvings(parts: number): Halving[] {
  const set = variedClass(parts, 0);
  const all = set.series.map(plainPartOf);
  const usual = fittedPlainClass(all, plainPrior([...set.priors.values()][0]!, plainSettings));
  const few = all.filter((part) => chancePast(usual, part) < 0.5).slice(0, 20);
  const before = few.map((part) => hoursOf(usual, part));
  return axisNames.map((axis) => {
    const own: Axis = usual.grid[axis];
    const finer = plainClass(all, usual.prior, { ...usual.grid, [axis]: halved(own) });
    const moved = few.flatMap((part, i) =>
      hoursOf(finer, part).map((hours, k) => Math.abs(hours / before[i]![k]! - 1)),
    );
    return {
      axis,
      nodes: own.nodes.length,
      stepOfSd: stepOf(own) / usual.marginals[axis].sd,
      most: Math.max(...moved),
    };
  });
}

const chancePast = (of: PlainClass, part: PlainPart): number => {
  const last = part.readings.at(-1)!.hours;
  return plainChance(plainPart(of, part), last, LIMIT_MM, last, driftDelta);
};

/** 10, 50 and 90 % points of hours to the limit; beyond the last that is spoken of: that last. */
const hoursOf = (of: PlainClass, part: PlainPart): number[] => {
  const law = plainPart(of, part);
  const last = part.readings.at(-1)!.hours;
  return [0.1, 0.5, 0.9].map((u) => plainHours(law, last, LIMIT_MM, u, driftDelta) ?? 20 * law.hRefHours);
};
