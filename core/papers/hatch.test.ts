import { expect, it } from 'vitest';
import { crossHatchPath, hatchPath } from './hatch.ts';

const bar = { x0: 3, x1: 40, half: 5, stepPx: 4 };
const points = (path: string) =>
  [...path.matchAll(/[ML](-?[\d.]+) (-?[\d.]+)/g)].map((m) => [Number(m[1]), Number(m[2])]);

it('hatching stays inside its bar and rises at 45 degrees', () => {
  const all = points(hatchPath(bar));
  expect(all.length).toBeGreaterThan(10);
  for (const [x, y] of all) {
    expect(x).toBeGreaterThanOrEqual(bar.x0);
    expect(x).toBeLessThanOrEqual(bar.x1);
    expect(Math.abs(y!)).toBeLessThanOrEqual(bar.half);
  }
  for (let i = 0; i < all.length; i += 2)
    expect(all[i + 1]![0]! - all[i]![0]!).toBeCloseTo(all[i]![1]! - all[i + 1]![1]!, 6);
});

it('cross-hatching adds the same lines the other way', () => {
  const single = points(hatchPath(bar));
  const crossed = points(crossHatchPath(bar));
  expect(crossed.length).toBe(2 * single.length);
  expect(crossed.slice(single.length)).toEqual(single.map(([x, y]) => [x, y === 0 ? y : -y!]));
});

it('a bar of no width has no lines', () => {
  expect(hatchPath({ ...bar, x1: 3 })).toBe('');
});
