import fc from 'fast-check';
import { describe, expect, it } from 'vitest';
import { risingOrder } from './risingOrder.ts';

const orderOf = (values: readonly number[]) =>
  [...risingOrder(Float64Array.from(values), values.length)].slice(0, values.length);

/** Array.prototype.sort is stable by ECMA-262, 23.1.3.30. */
const stable = (values: readonly number[]) => values.map((_, i) => i).sort((a, b) => values[a]! - values[b]!);

describe('the rising order of values', () => {
  it('is that of a stable sort, however many there are and however often the same', () => {
    const value = fc.oneof(
      fc.integer({ min: -3, max: 3 }),
      fc.integer(),
      fc.double({ min: -1e6, max: 1e6, noNaN: true }),
    );
    fc.assert(
      fc.property(fc.array(value, { maxLength: 300 }), (values) => {
        expect(orderOf(values)).toEqual(stable(values));
      }),
    );
  });

  it('stands by values that crowd at one end, and by one that is far off', () => {
    const crowded = Array.from({ length: 3000 }, (_, i) => Math.exp((((i * 7919) % 3000) - 1500) / 40));
    expect(orderOf(crowded)).toEqual(stable(crowded));
    const farOff = [...Array.from({ length: 500 }, (_, i) => ((i * 377) % 500) / 500), 1e12];
    expect(orderOf(farOff)).toEqual(stable(farOff));
    expect(orderOf([2, 2, 2])).toEqual([0, 1, 2]);
  });
});
