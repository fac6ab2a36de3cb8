import type { Writing } from '#core/words/quantityText.ts';
import { nextItem, type PointForm, type PositionForm, pointByHand, positionByHand } from './form.ts';

/** Changes of an assembly's table; each gives a new list and leaves the old one as it was. */
type Positions = readonly PositionForm[];

export const withPosition = (positions: Positions, at: number, next: Partial<PositionForm>): PositionForm[] =>
  positions.map((position, i) => (i === at ? { ...position, ...next } : position));

export const withPoint = (positions: Positions, at: number, point: number, next: Partial<PointForm>): PositionForm[] =>
  positions.map((position, i) =>
    i === at
      ? { ...position, points: position.points.map((old, j) => (j === point ? { ...old, ...next } : old)) }
      : position,
  );

/** Another point at a position, begun like the one above it: a bush and its pin differ in little. */
export const withPointAdded = (positions: Positions, at: number, writing: Writing): PositionForm[] =>
  positions.map((position, i) => {
    if (i !== at) return position;
    const above = position.points.at(-1);
    const fresh = pointByHand(writing);
    const begun = above
      ? { ...fresh, partClass: above.partClass, gaugeErrorText: above.gaugeErrorText, stationsText: above.stationsText }
      : fresh;
    return { ...position, points: [...position.points, begun] };
  });

/** A point taken out; a position keeps its last one, since it is the row it stands on. */
export const withoutPoint = (positions: Positions, at: number, point: number): PositionForm[] =>
  positions.map((position, i) =>
    i === at ? { ...position, points: position.points.filter((_, j) => j !== point) } : position,
  );

export const withPositionAdded = (positions: Positions, writing: Writing): PositionForm[] => [
  ...positions,
  positionByHand(nextItem(positions), writing),
];

/** "12 positions, 14 measuring points" of what is left in, and how many of the limits say where they are from. */
export function layoutCounts(positions: Positions): {
  positions: number;
  points: number;
  limits: number;
  withSource: number;
} {
  const left = positions.filter(({ leftOut }) => !leftOut);
  const points = left.flatMap((position) => position.points);
  const limited = points.filter(
    ({ renewAtText, rejectAtText }) => renewAtText.trim() !== '' || rejectAtText.trim() !== '',
  );
  return {
    positions: left.length,
    points: points.length,
    limits: limited.length,
    withSource: limited.filter(({ limitSource }) => limitSource.trim() !== '').length,
  };
}
