import fc from 'fast-check';
import { expect, test } from 'vitest';
import { type Circle, enclosingCircle, reachFrom } from './enclosingCircle.ts';

const figure = fc.double({ min: -50, max: 50, noNaN: true });
const aCircle = fc.record({ x: figure, y: figure, radius: fc.double({ min: 0, max: 30, noNaN: true }) });
const some = fc.array(aCircle, { minLength: 1, maxLength: 12 });

/** Least radius needed at a place. */
const needed = (place: { x: number; y: number }, circles: readonly Circle[]): number =>
  Math.max(...circles.map((circle) => reachFrom(place, circle)));

test('it encloses every circle', () => {
  fc.assert(
    fc.property(some, (circles) => {
      const around = enclosingCircle(circles);
      expect(needed(around, circles)).toBeLessThanOrEqual(around.radius + 1e-8);
    }),
  );
});

test('no other centre needs less, near or far', () => {
  fc.assert(
    fc.property(some, figure, figure, (circles, x, y) => {
      const around = enclosingCircle(circles);
      expect(needed({ x, y }, circles)).toBeGreaterThanOrEqual(around.radius - 1e-8);
      for (const step of [1e-3, 0.1, 3])
        for (let turn = 0; turn < 12; turn++) {
          const angle = (turn * Math.PI) / 6;
          const near = { x: around.x + step * Math.cos(angle), y: around.y + step * Math.sin(angle) };
          expect(needed(near, circles)).toBeGreaterThanOrEqual(around.radius - 1e-8);
        }
    }),
  );
});

test('points on a circle, one circle, circles on one line', () => {
  const corner = [30, 100, 190, 290].map((deg) => {
    const angle = (deg * Math.PI) / 180;
    return { x: 7 + 5 * Math.cos(angle), y: -2 + 5 * Math.sin(angle), radius: 0 };
  });
  const round = enclosingCircle(corner);
  expect(round.x).toBeCloseTo(7, 10);
  expect(round.y).toBeCloseTo(-2, 10);
  expect(round.radius).toBeCloseTo(5, 10);
  expect(enclosingCircle([{ x: 1, y: 2, radius: 3 }])).toEqual({ x: 1, y: 2, radius: 3 });
  const inLine = enclosingCircle([-1, 0, 1].map((x) => ({ x, y: 0, radius: x === 0 ? 1.2 : 1 })));
  expect(inLine.radius).toBeCloseTo(2, 12);
});
