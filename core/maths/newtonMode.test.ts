import { expect, it } from 'vitest';
import { newtonMode } from './newtonMode.ts';

it('climbs to the top of a tilted bell and gives back its width', () => {
  // ln density of a normal with mean (0.7, -1.2) and precision [[2, 1], [1, 3]]
  const f = ([x, y]: readonly number[]) => {
    const a = x! - 0.7;
    const b = y! + 1.2;
    return -0.5 * (2 * a * a + 2 * a * b + 3 * b * b);
  };
  const mode = newtonMode(f, [0, 0]);
  expect(mode.x[0]).toBeCloseTo(0.7, 1);
  expect(mode.x[1]).toBeCloseTo(-1.2, 1);
  // axes axes^T is the inverse of the precision: [[3, -1], [-1, 2]] / 5
  const spread = (i: number, j: number) => mode.axes[i]!.reduce((sum, step, a) => sum + step * mode.axes[j]![a]!, 0);
  expect(spread(0, 0)).toBeCloseTo(0.6, 6);
  expect(spread(0, 1)).toBeCloseTo(-0.2, 6);
  expect(spread(1, 1)).toBeCloseTo(0.4, 6);
});
