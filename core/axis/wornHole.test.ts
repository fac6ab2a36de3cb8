import { expect, test } from 'vitest';
import { reachMm, wornHole } from './wornHole.ts';

const circles = [
  { x: 0, y: 0, radius: 20 },
  { x: 1.2, y: 0, radius: 20 },
  { x: 21.2, y: 0, radius: 0 },
];
const drawn = wornHole(
  { circles, newBoreMm: 40, bossOutsideMm: 80, cleanUp: { boreMm: 41.2, shift: { xMm: 0.6, yMm: 0 } } },
  { x: 200, y: 200, radius: 160 },
);

test('the outline reaches as far as the wear on the worn side, and no further than new on the other', () => {
  expect(reachMm(circles, 0)).toBeCloseTo(21.2, 9);
  expect(reachMm(circles, Math.PI)).toBeCloseTo(20, 9);
  expect(drawn.worst.mm).toBeCloseTo(1.2, 9);
});

test('the boss fills the room, and everything is drawn on its scale', () => {
  expect(drawn.pxPerMm).toBe(4);
  expect(drawn.newRadius).toBe(80);
  expect(drawn.cleanUp).toEqual({ x: expect.closeTo(202.4, 9), y: 200, radius: expect.closeTo(82.4, 9) });
  expect(drawn.points).toEqual([{ x: expect.closeTo(284.8, 9), y: 200 }]);
});

test('up in the hole is up on the page', () => {
  const up = wornHole(
    { circles, newBoreMm: 40, bossOutsideMm: 80, cleanUp: { boreMm: 41, shift: { xMm: 0, yMm: 1 } } },
    { x: 0, y: 0, radius: 40 },
  );
  expect(up.cleanUp.y).toBe(-1);
});
