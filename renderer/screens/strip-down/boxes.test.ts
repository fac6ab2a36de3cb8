import { describe, expect, it } from 'vitest';
import { aRow } from './aRow.ts';
import { type Box, boxAfter, boxesOf, columnNames, columnsOf, nextEmpty } from './boxes.ts';

const rows = [
  aRow({ pointId: 1, stations: ['front', 'middle', 'rear'] }),
  aRow({ pointId: 2, stations: [''] }),
  aRow({ pointId: 3, stations: [] }),
  aRow({ pointId: 4, stations: ['A', 'B'] }),
];
const boxes = boxesOf(rows);
const at = (row: number, column: number): Box => boxes.find((box) => box.row === row && box.column === column)!;

describe('moving between boxes', () => {
  it('goes along a row and on to the next that has boxes', () => {
    expect(boxAfter(boxes, at(0, 0), 'next')).toBe(at(0, 1));
    expect(boxAfter(boxes, at(0, 2), 'next')).toBe(at(1, 0));
    expect(boxAfter(boxes, at(1, 0), 'next')).toBe(at(3, 0));
    expect(boxAfter(boxes, at(3, 0), 'previous')).toBe(at(1, 0));
  });
  it('goes down in its column, or the nearest a shorter row has', () => {
    expect(boxAfter(boxes, at(0, 2), 'down')).toBe(at(1, 0));
    expect(boxAfter(boxes, at(1, 0), 'down')).toBe(at(3, 0));
    expect(boxAfter(boxes, at(3, 1), 'up')).toBe(at(1, 0));
    expect(boxAfter(boxes, at(1, 0), 'up')).toBe(at(0, 0));
  });
  it('ends at the edges', () => {
    expect(boxAfter(boxes, at(3, 1), 'next')).toBeNull();
    expect(boxAfter(boxes, at(0, 0), 'up')).toBeNull();
    expect(boxAfter(boxes, at(0, 1), 'row-end')).toBe(at(0, 2));
    expect(boxAfter(boxes, at(0, 1), 'row-start')).toBe(at(0, 0));
  });
  it('finds the next box nobody has typed in, going round', () => {
    const typed = new Set([at(3, 0), at(3, 1)]);
    expect(nextEmpty(boxes, at(1, 0), (box) => !typed.has(box))).toBe(at(0, 0));
    expect(nextEmpty(boxes, null, () => false)).toBeNull();
  });
});

it('a column is named for every station in it', () => {
  expect(columnsOf(rows)).toBe(3);
  expect(columnNames(rows)).toEqual([['front', 'A'], ['middle', 'B'], ['rear']]);
});
