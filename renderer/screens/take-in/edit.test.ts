import { expect, it } from 'vitest';
import { layoutCounts, withoutPoint, withPoint, withPointAdded, withPosition, withPositionAdded } from './edit.ts';
import { positionByHand } from './form.ts';

const positions = [positionByHand(1, '.'), positionByHand(7, '.')];

it('another position gets the next number, another point begins like the one above', () => {
  expect(withPositionAdded(positions, '.').map(({ itemText }) => itemText)).toEqual(['1', '7', '8']);
  const classed = withPoint(positions, 1, 0, { partClass: 'Greased bush', stationsText: 'A, B' });
  expect(withPointAdded(classed, 1, '.')[1]?.points[1]).toMatchObject({
    partClass: 'Greased bush',
    stationsText: 'A, B',
    newSizeText: '',
  });
  expect(positions[1]?.points).toHaveLength(1);
});

it('a point is taken out of its own position only', () => {
  const two = withPointAdded(positions, 0, '.');
  expect(withoutPoint(two, 0, 0)[0]?.points).toHaveLength(1);
  expect(withoutPoint(two, 0, 0)[0]?.points[0]?.id).toBe(two[0]?.points[1]?.id);
});

it('what is ticked off is not counted', () => {
  let table = withPoint(positions, 0, 0, { renewAtText: '9.5', limitSource: 'maker' });
  table = withPoint(table, 1, 0, { rejectAtText: '3' });
  expect(layoutCounts(table)).toEqual({ positions: 2, points: 2, limits: 2, withSource: 1 });
  expect(layoutCounts(withPosition(table, 1, { leftOut: true }))).toMatchObject({ positions: 1, limits: 1 });
});
