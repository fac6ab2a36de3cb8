import { describe, expect, test } from 'vitest';
import { aRow } from '../strip-down/aRow.ts';
import { likelyStations, pairsOfPoints, pairsOfStations, partnerOf } from './swapPairs.ts';

const left = aRow({ pointId: 1, position: 'Side pad, left', stations: ['front', 'rear'] });
const right = aRow({ pointId: 2, position: 'Side pad, right', stations: ['front', 'rear'] });
const pin = aRow({ pointId: 3, position: 'Ram pin', point: 'pin diameter', stations: [''] });

describe('what changes round', () => {
  test('of two points: the stations of one name', () => {
    expect(pairsOfPoints(left, right)).toEqual([
      { one: { pointId: 1, station: 'front' }, other: { pointId: 2, station: 'front' } },
      { one: { pointId: 1, station: 'rear' }, other: { pointId: 2, station: 'rear' } },
    ]);
  });

  test('of two points named otherwise: by their place, and what only one has stays', () => {
    expect(pairsOfPoints(left, pin)).toEqual([
      { one: { pointId: 1, station: 'front' }, other: { pointId: 3, station: '' } },
    ]);
  });

  test('of two stations: on every point that has both', () => {
    expect(pairsOfStations([left, right, pin], 'front', 'rear').map(({ one }) => one.pointId)).toEqual([1, 2]);
    expect(pairsOfStations([left], 'front', 'front')).toEqual([]);
  });

  test('the other side of a point is guessed by its name, of the same measure', () => {
    const bush = aRow({ pointId: 4, position: 'Pivot, left', point: 'bush bore', stations: ['A', 'B'] });
    const bushRight = aRow({ pointId: 5, position: 'Pivot, right', point: 'bush bore', stations: ['A', 'B'] });
    const pinRight = aRow({ pointId: 6, position: 'Pivot, right', point: 'pin diameter', stations: [''] });
    expect(partnerOf([left, right, bush, pinRight, bushRight], bush)).toBe(bushRight);
    expect(partnerOf([left, right], right)).toBe(left);
    expect(partnerOf([left, right, pin], pin)).toBeNull();
  });

  test('front and rear are the stations likely meant, else the first two there are', () => {
    expect(likelyStations([pin, left])).toEqual(['front', 'rear']);
    expect(likelyStations([aRow({ pointId: 7, stations: ['A', 'B'] })])).toEqual(['A', 'B']);
    expect(likelyStations([pin])).toBeNull();
  });
});
