import { expect, it } from 'vitest';
import { listRange } from './listRange.ts';

const at = (middleHours: number | null, planLineHours = 0, lowHours = middleHours) => ({
  ...{ middleHours, lowHours, planLineHours },
});

it('shows every blue line, and most middles with room for their bars; one with far to go does not squeeze the others', () => {
  const middles = [300, 600, 900, 1200, 1500, 1800, 2100, 2400, 2700, 20_000];
  const { toHours } = listRange(middles.map((middle, i) => at(middle, 200 + 100 * i)));
  expect(toHours).toBeGreaterThan(2400);
  expect(toHours).toBeLessThan(5000);
  expect(toHours % 500).toBe(0);
});

it('leaves room for what has passed, but never more than a fifth of what is ahead', () => {
  const past = listRange([at(-2000, 700, -5000), at(1500, 700, 900)]);
  expect(-past.fromHours / past.toHours).toBeCloseTo(0.2);
  const none = listRange([at(1500, 700, 900)]);
  expect(-none.fromHours / none.toHours).toBeCloseTo(0.1);
});

it('stands without any forecast', () => {
  expect(listRange([]).toHours).toBeGreaterThan(0);
  expect(listRange([]).fromHours).toBeLessThan(0);
});
