import { expect, it } from 'vitest';
import { shrinking } from './printSlip.ts';

const whole = { axisRows: 6, listLines: 4, watchLines: 1, drawing: false, cut: false };
const rooms = shrinking(whole, [
  { axisRows: 5, listLines: 2, watchLines: 1, cut: false },
  { axisRows: 2, listLines: 1, watchLines: 1, cut: true },
]);
const lines = ({ axisRows, listLines, watchLines }: typeof whole) => axisRows + listLines + watchLines;

it('a page is shortened a line at a time, from the list furthest above its worth', () => {
  expect(rooms[0]).toEqual(whole);
  expect(rooms[1]).toEqual({ ...whole, listLines: 3 });
  for (let i = 1; i < rooms.length - 1; i++) expect(lines(rooms[i]!)).toBe(lines(rooms[i - 1]!) - 1);
});

it('texts are cut only when no list can be shortened any more', () => {
  expect(rooms.at(-1)).toEqual({ axisRows: 2, listLines: 1, watchLines: 1, drawing: false, cut: true });
  expect(rooms.slice(0, -1).every(({ cut }) => !cut)).toBe(true);
});
